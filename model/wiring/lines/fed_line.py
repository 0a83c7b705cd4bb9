"""A drag in the order in which the signal runs: how strong it is, and where repeaters keep it alive."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from itertools import islice
from typing import Final

from model.edits.lay_line import is_free_for_line, lay_line
from model.grid import FACING_OF, VECTORS, Cell, Facing, Heading
from model.parts import Part
from model.pauses import pause
from model.pieces import Piece
from model.plan import Plan
from model.signals.containers import STRONGEST
from model.wiring.lines.lines import FoundLine
from model.wiring.lines.looking import REACH
from model.wiring.lines.strengths import Strengths, near_cells

TRIES: Final = 4
"""Places at which a repeater is tried before a line is left to run out."""


Strength = dict[Cell, int]
Repeaters = Mapping[Cell, Facing]
_Tried = Callable[[Repeaters, int], Strength | None]
"""The strength with these repeaters, the last of which is new; ``None`` where one would hold itself."""


class FedLine:
    """What is new on the way of a drag, fed from that end which is on, or else from its first dust."""

    def __init__(self, plan: Plan, found: Sequence[FoundLine], cells: Sequence[Cell]) -> None:
        self._plan = plan
        self.order = tuple(dict.fromkeys(cells))
        """The cells of the drag as the signal runs."""
        self._near = tuple(near_cells(plan, cells))
        self._new = {entry.piece.at: entry.piece for entry in lay_line(plan, cells).placed}
        driven = [line for line in found if line.drivers]
        self._known = {cell: strength for line in driven for cell, strength in line.strength.items()}
        self._source: Cell | None = None
        """The first dust, where nothing drives the line."""
        taken = frozenset(cells)
        free = [cell for cell in self.order if is_free_for_line(plan, taken, cell)]
        self.skipped = taken.difference(free)
        """Where no dust can lie."""
        self.repeaters: dict[Cell, Facing] = {}
        self.strength = self._whole({}).by_cell
        """Of each new dust."""
        if free:
            self._find_source(found, free)

    def _find_source(self, found: Sequence[FoundLine], free: Sequence[Cell]) -> None:
        """Sees to it that there is a source, and turns the order round where it is at the other end."""
        undriven = {cell: each for line in found for cell, each in line.strength.items()}
        if not self._is_fed and undriven != self._known:
            # What nothing drives is as strong as its own first dust would make it.
            self._known |= undriven
            self.strength = self._whole({}).by_cell
        if not self._is_fed:
            self._source = free[0]
            self.strength = self._whole({}).by_cell
        if self.strength[free[-1]] > self.strength[free[0]]:
            self.order = self.order[::-1]

    @property
    def _is_fed(self) -> bool:
        return any(self.strength.values())

    def set_repeaters(self) -> None:
        """Sets repeaters that keep the line alive, as far as they can.

        Each is tried on the stretch that it can reach. Only where a line comes back beside itself may that
        not hold for the whole; there each is tried on the whole.
        """
        alone = self.strength
        self._set_all(self._on_stretch)
        whole = self._whole(self.repeaters)
        if whole.by_cell != self.strength or whole.holds_itself() is not None:
            self.repeaters, self.strength = {}, alone
            self._set_all(lambda repeaters, _at: self._on_whole(repeaters))

    def _set_all(self, tried: _Tried) -> None:
        while (end := self._first_dead(self.strength)) is not None and self._set_before(end, tried):
            pass

    def _first_dead(self, strength: Strength) -> int | None:
        return next((at for at, cell in enumerate(self.order) if strength.get(cell) == 0), None)

    def _set_before(self, end: int, tried: _Tried) -> bool:
        """Sets a repeater at the last place up to where the strength ends; whether there is one."""
        for at in islice(self._places_before(end), TRIES):
            pause()
            facing = self._straight_through(at)
            assert facing is not None
            repeaters = {**self.repeaters, self.order[at]: facing}
            strength = tried(repeaters, at)
            dead = None if strength is None else self._first_dead(strength)
            # Beyond what stands in the way no repeater helps.
            if strength is not None and (dead is None or dead > end):
                self.repeaters, self.strength = repeaters, strength
                return True
        return False

    def _places_before(self, end: int) -> Iterator[int]:
        """Where the line runs straight from dust that is alive, the last place first."""
        strength = self.strength
        for at in range(end, 0, -1):
            before, cell = self.order[at - 1 : at + 1]
            is_alive = strength.get(before) or self._known.get(before)
            if cell in strength and is_alive and self._straight_through(at) is not None:
                yield at

    def _straight_through(self, at: int) -> Facing | None:
        """The way the line runs through a place, where it neither bends nor climbs there."""
        if at + 1 >= len(self.order):
            return None
        before, cell, after = self.order[at - 1 : at + 2]
        step = (cell.x - before.x, cell.y - before.y, cell.z - before.z)
        onward = (after.x - cell.x, after.y - cell.y, after.z - cell.z)
        if step != onward or step[1] or (step[0], step[2]) not in VECTORS:
            return None
        return FACING_OF[Heading(VECTORS.index((step[0], step[2])))]

    def _on_whole(self, repeaters: Repeaters) -> Strength | None:
        made = self._whole(repeaters)
        return None if made.holds_itself() is not None else made.by_cell

    def _on_stretch(self, repeaters: Repeaters, at: int) -> Strength | None:
        """What becomes of the strength up to where a repeater's signal ends; what lies beyond stays."""
        start, end = max(0, at - REACH), at + STRONGEST + REACH
        cells = self.order[start:end]
        new = self._pieces(cells, repeaters)
        beside = self._pieces(
            (*self.order[max(0, start - REACH) : start], *self.order[end : end + REACH]), repeaters
        )
        near = [*self._near_to(cells), *(piece for at, piece in beside.items() if at not in new)]
        made = self._fed(new, near, self._known | self.strength)
        if made.holds_itself() is not None:
            return None
        strength = self.strength | made.by_cell
        del strength[self.order[at]]
        return strength

    def _near_to(self, cells: Collection[Cell]) -> Iterator[Piece]:
        """What the plan has about a stretch, and perhaps a little more."""
        west, east = min(cell.x for cell in cells) - REACH, max(cell.x for cell in cells) + REACH
        north, south = min(cell.z for cell in cells) - REACH, max(cell.z for cell in cells) + REACH
        for piece in self._near:
            if west <= piece.at.x <= east and north <= piece.at.z <= south:
                yield piece

    def _whole(self, repeaters: Repeaters) -> Strengths:
        return self._fed(self._pieces(self.order, repeaters), self._near, self._known)

    def _fed(self, new: Mapping[Cell, Piece], near: Iterable[Piece], known: Strength) -> Strengths:
        made = Strengths(near, new.values(), known)
        if self._source is not None and self._source in new:
            made.feed(self._source)
        return made

    def _pieces(self, cells: Iterable[Cell], repeaters: Repeaters) -> dict[Cell, Piece]:
        """What is new in these cells and under them, with repeaters in the place of dust."""
        both = (at for cell in cells for at in (cell, cell.beside(Facing.DOWN)))
        return {
            at: Piece(Part.REPEATER, at, repeaters[at]) if at in repeaters else self._new[at]
            for at in both
            if at in self._new
        }
