"""What each piece looks like while a dry run is on. No Qt here.

What flashes more than three times a second can hurt (WCAG 2.2, 2.3.1), and at eight times real time a
harmless clock does. A piece that goes on or off more often than that keeps the look that it had, with a mark,
until it is calmer; so nothing on the plan view flashes, at any speed.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import Final

from app.canvas.looks import Looks
from app.canvas.symbols import Look, Mark
from model.dry_run import DryRun
from model.grid import Cell
from model.parts import RAILS, TRAITS, Part
from model.pauses import with_pauses
from model.pieces import Piece
from model.signals.giving import FORWARD_ONLY
from model.signals.items import items_in
from model.track.shapes import Shape
from model.track.switches import PowerStates, power_states

PASSIVE: Final = frozenset({Part.SOLID_BLOCK, Part.TARGET_BLOCK, Part.GLASS, Part.SLAB, Part.RAIL})
"""Parts that are drawn as ever until a signal reaches them."""
MOST_CHANGES: Final = 6
"""Changes of a piece in a second that are drawn: three flashes, each a change there and back."""
CALM: Final = 2
"""Changes in a second, at most, for which a piece that changed too often is drawn as it is again."""
SECOND: Final = 1.0

Clock = Callable[[], float]
"""Seconds on the clock on the wall."""


class Live:
    """The looks of all pieces that differ from their look at rest, or may."""

    def __init__(self, engine: DryRun, rest: Looks, clock: Clock) -> None:
        self._engine = engine
        self._rest = rest
        self._clock = clock
        self._at_rest: dict[Cell, Look] = {}
        self._power_states: dict[Cell, PowerStates] = {}
        self.looks: dict[Cell, Look] = {}
        self.added: set[Cell] = set()
        """The cells that have come into ``looks`` since somebody last emptied this."""
        self.bent: set[Cell] = set()
        """The rails that lie otherwise than when somebody last emptied this."""
        self.wavering: set[Cell] = set()
        """The cells that change too often to be drawn each time."""
        self.pulled: dict[Cell, bool] = {}
        """Levers and buttons that are on or off from the next tick on."""
        self.unsure: set[Cell] = set()
        self._unsure_known = 0
        self._out: set[Cell] = set()
        """Torches that are out: whether they are burnt out can change and they stay out."""
        self._flips: dict[Cell, deque[float]] = {}
        self._on: dict[Cell, object] = {}
        self.see_all()

    def shape(self, cell: Cell) -> Shape | None:
        """How a rail lies now."""
        return self._engine.shape(cell)

    def forget_rest(self) -> None:
        """Names and inverters of switches have changed."""
        self._at_rest.clear()

    def see_all(self) -> frozenset[Cell]:
        """Looks at every piece; returns the cells that look otherwise, or are drawn as live from now on."""
        if len(self._engine.unsure) < self._unsure_known:
            self._unsure_known = 0
            self.unsure.clear()
        self.pulled.clear()
        return self._see(piece.at for piece in self._engine.plan.pieces if not self._is_untouched(piece))

    def _is_untouched(self, piece: Piece) -> bool:
        """Whether a piece is as at rest for certain; of a large plan most are, and need no closer look."""
        if piece.part not in PASSIVE or piece.at in self.looks:
            return False
        lies = self._engine.shape(piece.at) == self._rest.layout.shape(piece.at)
        return lies and not self._engine.output(piece.at)

    def follow(self, changed: Iterable[Cell]) -> frozenset[Cell]:
        """The engine went on; returns the cells that look otherwise."""
        seen = {*changed, *self._out, *self.pulled, *self._new_unsure()}
        self.pulled.clear()
        return self._see(seen | self._in_front_of(seen))

    def pull(self, cell: Cell, on: bool) -> frozenset[Cell]:
        """A lever or button is worked in the next tick."""
        self.pulled[cell] = on
        return self._see((cell,))

    def settle(self) -> frozenset[Cell]:
        """Time has passed: what is calm again is drawn as it is."""
        return self._see(tuple(self.wavering))

    def _see(self, cells: Iterable[Cell]) -> frozenset[Cell]:
        pieces, now = self._engine.plan.pieces, self._clock()
        different = set()
        for cell in with_pauses(cells):
            piece = pieces.get(cell)
            if piece is None:
                continue
            wanted, shown = self.look(piece), self.looks.get(cell)
            rest = self._rest_look(piece)
            if wanted == shown or (shown is None and piece.part in PASSIVE and wanted == rest):
                continue
            if _state(wanted) != self._on.get(cell, _state(rest)):
                self._flips.setdefault(cell, deque(maxlen=MOST_CHANGES + 1)).append(now)
            self._on[cell] = _state(wanted)
            drawn = self._steadied(cell, wanted, shown or rest, now)
            if drawn != shown:
                self._show(cell, drawn, shown or rest)
                different.add(cell)
        return frozenset(different)

    def _show(self, cell: Cell, drawn: Look, before: Look) -> None:
        if cell not in self.looks:
            self.added.add(cell)
        if drawn.shape != before.shape:
            self.bent.add(cell)
        self.looks[cell] = drawn

    def look(self, piece: Piece) -> Look:
        """How a piece is now, however often that changes."""
        engine, cell, part = self._engine, piece.at, piece.part
        look = self._rest_look(piece)
        mark = Mark.UNSURE if cell in self.unsure else None
        on = engine.output(cell) > 0
        if part in RAILS:
            return self._rail(piece, look, mark, on)
        if part is Part.DUST:
            return replace(look, strength=engine.strength(cell), mark=mark)
        if part is Part.TORCH:
            self._note_torch(cell, on)
            return replace(look, on=on, burnt=not on and engine.is_burnt_out(cell), mark=mark)
        if part is Part.REPEATER:
            return replace(look, on=on, locked=engine.is_locked(cell), mark=mark)
        if TRAITS[part].slots:
            return replace(look, on=on, count=items_in(engine.contents(cell)), mark=mark)
        if part in PASSIVE:
            power, strong = engine.block_power(cell)
            return replace(look, power=power or None, strong=strong and power > 0, mark=mark)
        return replace(look, on=self.pulled.get(cell, on), mark=mark)

    def _rail(self, piece: Piece, look: Look, mark: Mark | None, on: bool) -> Look:
        """A rail in its present shape; the drive of a switch is filled while it has a signal."""
        shape = self._engine.shape(piece.at)
        if look.other_shape is None:
            return replace(look, shape=shape, on=on and piece.part is not Part.RAIL, mark=mark)
        states = self._power_states.get(piece.at)
        if states is None:
            states = self._power_states[piece.at] = power_states(self._rest.layout, piece.at)
        other = states.resting if shape == states.powered else states.powered
        return replace(look, shape=shape, other_shape=other, powered=on, mark=mark)

    def _rest_look(self, piece: Piece) -> Look:
        look = self._at_rest.get(piece.at)
        if look is None:
            look = self._at_rest[piece.at] = self._rest.look(piece)
        return look

    def _note_torch(self, cell: Cell, on: bool) -> None:
        if on:
            self._out.discard(cell)
        else:
            self._out.add(cell)

    def _steadied(self, cell: Cell, wanted: Look, shown: Look, now: float) -> Look:
        """What is drawn: what is wanted, unless that came and went too often in the last second."""
        flips = self._flips.get(cell)
        if flips is None:
            return wanted
        while flips and flips[0] <= now - SECOND:
            flips.popleft()
        if len(flips) > (CALM if cell in self.wavering else MOST_CHANGES):
            self.wavering.add(cell)
            return replace(shown, mark=wanted.mark or Mark.WAVERING)
        self.wavering.discard(cell)
        return wanted

    def _new_unsure(self) -> set[Cell]:
        """The cells that the engine is not sure of since the last look; they stay so until the run ends."""
        new = self._engine.unsure[self._unsure_known :]
        self._unsure_known = len(self._engine.unsure)
        cells = {cell for unsure in new for cell in unsure.at} - self.unsure
        self.unsure |= cells
        return cells

    def _in_front_of(self, cells: Iterable[Cell]) -> set[Cell]:
        """What changed repeaters and comparators face: they may lock it."""
        pieces = self._engine.plan.pieces
        found = [piece for cell in cells if (piece := pieces.get(cell)) is not None]
        return {piece.at.beside(piece.facing) for piece in found if piece.part in FORWARD_ONLY}


def _state(look: Look) -> tuple[object, ...]:
    """What is seen of a look from afar: whether it is on, and how it lies. Figures alone do not flash."""
    return look.on, bool(look.strength), bool(look.power), look.powered, look.shape
