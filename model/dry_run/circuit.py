"""The circuit of a plan: its nodes and what runs into what, found once before the first tick.

Only cells about signal parts are looked at, so blocks and rails that no signal reaches cost nothing later.
"""

from __future__ import annotations

from collections.abc import Generator, Iterator
from typing import Final

from model.dry_run.nodes import (
    NOTHING,
    Button,
    Comparator,
    Detector,
    Dust,
    Node,
    Power,
    Repeater,
    StrongPower,
    Taker,
    Torch,
)
from model.dry_run.notices import Notices
from model.grid import Cell
from model.parts import RAILS, TRAITS, Part
from model.pauses import pause, with_pauses
from model.pieces import Piece, Pieces, Placed, rests_on
from model.progress import Progress, result_of
from model.signals.dust import takes_from
from model.signals.giving import FORWARD_ONLY, GIVERS, gives_to, powers_strongly
from model.wording import QT_TR_NOOP, tr

TOLD_EVERY: Final = 256
"""Parts between two words on how far it is."""
CONNECTING: Final = QT_TR_NOOP("Connecting the signal parts")
TAKERS: Final = RAILS - {Part.DETECTOR_RAIL} | {Part.LAMP, Part.HOPPER, Part.AUTO_CRAFTER}
"""Parts that are on or off by what gives to their cell, or by a powered block beside them."""
_AT_SIDES: Final = FORWARD_ONLY | {Part.DUST}
"""What counts at the sides of a comparator."""


class Circuit:
    """The nodes of a plan by cell, all at rest."""

    def __init__(self, pieces: Pieces, notices: Notices) -> None:
        self._pieces = pieces
        self.outputs: dict[Cell, Node] = {}
        """Dust, and the parts with an output of their own."""
        self.takers: dict[Cell, Taker] = {}
        """Lamps, hoppers and auto-crafters, and the rails that a signal can reach."""
        self.strong: dict[Cell, StrongPower] = {}
        self.power: dict[Cell, Power] = {}
        """The solid blocks that something can power."""
        self.readings: dict[Cell, Node] = {}
        """What a comparator reads, by the cell of the container."""
        result_of(self._find(notices))

    @classmethod
    def of(cls, pieces: Pieces, notices: Notices) -> Generator[Progress, None, Circuit]:
        """The circuit of a plan, which tells how far it is; it is what the generator returns."""
        circuit = cls(Pieces.of(()), notices)
        circuit._pieces = pieces
        yield from circuit._find(notices)
        return circuit

    def _find(self, notices: Notices) -> Generator[Progress, None, None]:
        placed = [entry for entry in self._pieces.in_order() if entry.piece.part not in _PASSIVE]
        for entry in with_pauses(placed):
            self._add(entry, notices)
        for done, entry in enumerate(placed):
            if done and not done % TOLD_EVERY:
                yield Progress(tr(CONNECTING), done, len(placed))
            self._connect(entry.piece)
        for cell, power in self.power.items():
            pause()
            self._power_beside(cell, power)
        self._close()

    def nodes(self) -> Iterator[Node]:
        """All nodes."""
        for table in (self.outputs, self.takers, self.strong, self.power, self.readings):
            yield from table.values()

    def _add(self, entry: Placed, notices: Notices) -> None:
        rank, piece = entry
        if TRAITS[piece.part].slots:
            self.readings[piece.at] = Node(piece.at, rank)
        node: Node
        if piece.part in GIVERS:
            node = self.outputs[piece.at] = _node_of(piece, rank)
        elif piece.part in TAKERS and piece.part not in RAILS:
            node = self.takers[piece.at] = Taker(piece.at, rank)
        else:
            return
        if TRAITS[piece.part].signals:
            node.noticed = notices.around(piece)

    def _connect(self, piece: Piece) -> None:
        """What a part gives to, and what a dust takes from other dust."""
        node = self.outputs.get(piece.at)
        if node is None:
            return
        cells = list(gives_to(piece, self._pieces))
        for cell in cells:
            self._give(piece, node, cell)
        strong = powers_strongly(piece)
        if strong is not None and self._is_solid(strong):
            self._strong_at(strong).ins.append(node)
        if isinstance(node, Dust):
            for cell in cells:
                if self._is_solid(cell):
                    self._power_at(cell).ins.append(node)
            others = (self.outputs[cell] for cell in takes_from(self._pieces, piece.at))
            node.takes = [other for other in others if isinstance(other, Dust)]

    def _give(self, giver: Piece, node: Node, cell: Cell) -> None:
        """The part in a cell gets the signal of a giver beside it."""
        taker = self._pieces.placed(cell)
        if taker is None:
            return
        other = self.outputs.get(cell)
        if isinstance(other, Dust):
            if giver.part is not Part.DUST:
                other.feeds.append(node)
        elif isinstance(other, Repeater):
            self._give_to_repeater(giver, node, taker.piece, other)
        elif isinstance(other, Comparator):
            if giver.at == _behind(taker.piece):
                other.back = node
            elif giver.part in _AT_SIDES and _is_beside(taker.piece, giver.at):
                other.sides.append(node)
        elif taker.piece.part in TAKERS:
            self._taker_at(taker).ins.append(node)

    @staticmethod
    def _give_to_repeater(giver: Piece, node: Node, piece: Piece, repeater: Repeater) -> None:
        if giver.at == _behind(piece):
            repeater.back = node
        elif giver.part in FORWARD_ONLY and _is_beside(piece, giver.at):
            repeater.lockers.append(node)

    def _power_beside(self, cell: Cell, power: Power) -> None:
        """What a powered block gives to: dust only when the power is strong."""
        strong = self.strong.get(cell)
        for beside in cell.six_beside():
            taker = self._pieces.placed(beside)
            if taker is None:
                continue
            other = self.outputs.get(beside)
            if isinstance(other, Dust):
                other.feeds += [strong] if strong is not None else []
            elif isinstance(other, Repeater | Comparator):
                if _behind(taker.piece) == cell:
                    other.back = power
            elif isinstance(other, Torch):
                if rests_on(taker.piece) == cell:
                    other.block = power
            elif taker.piece.part in TAKERS:
                self._taker_at(taker).ins.append(power)

    def _close(self) -> None:
        """Readings behind comparators; then, from what each node looks at, who looks at it."""
        for node in self.outputs.values():
            if isinstance(node, Comparator):
                self._read(node)
        for node in self.nodes():
            for looked_at in _looked_at(node):
                if looked_at is not NOTHING and node not in looked_at.outs:
                    looked_at.outs.append(node)
            if isinstance(node, Dust):
                for other in node.takes:
                    other.gives.append(node)

    def _read(self, node: Comparator) -> None:
        """A container directly behind counts alone; one behind a block takes the place of its power."""
        piece = self._pieces.get(node.cell)
        assert piece is not None
        behind = _behind(piece)
        if behind in self.readings:
            node.back = self.readings[behind]
        elif self._is_solid(behind):
            node.through = self.readings.get(behind.beside(piece.facing.opposite))

    def _strong_at(self, cell: Cell) -> StrongPower:
        strong = self.strong.get(cell)
        if strong is None:
            strong = self.strong[cell] = StrongPower(cell, NOTHING.rank)
            self._power_at(cell).ins.append(strong)
        return strong

    def _power_at(self, cell: Cell) -> Power:
        power = self.power.get(cell)
        if power is None:
            power = self.power[cell] = Power(cell, NOTHING.rank)
        return power

    def _taker_at(self, placed: Placed) -> Taker:
        cell = placed.piece.at
        taker = self.takers.get(cell)
        if taker is None:
            taker = self.takers[cell] = Taker(cell, placed.rank)
        return taker

    def _is_solid(self, cell: Cell) -> bool:
        part = self._pieces.part_at(cell)
        return part is not None and TRAITS[part].solid


_PASSIVE: Final = frozenset(
    {Part.SOLID_BLOCK, Part.TARGET_BLOCK, Part.GLASS, Part.SLAB, Part.RAIL, Part.BOOSTER_RAIL}
)
"""Parts that have no node before a signal reaches them."""


def _node_of(piece: Piece, rank: int) -> Node:
    if piece.part is Part.DUST:
        return Dust(piece.at, rank)
    if piece.part is Part.TORCH:
        return Torch(piece.at, rank)
    if piece.part is Part.REPEATER:
        return Repeater(piece, rank)
    if piece.part is Part.COMPARATOR:
        return Comparator(piece, rank)
    if piece.part is Part.BUTTON:
        return Button(piece, rank)
    return Detector(piece.at, rank) if piece.part is Part.DETECTOR_RAIL else Node(piece.at, rank)


def _looked_at(node: Node) -> list[Node]:
    if isinstance(node, Dust):
        return node.feeds
    if isinstance(node, Repeater):
        return [node.back, *node.lockers]
    if isinstance(node, Comparator):
        return [node.back, *node.sides, *([] if node.through is None else [node.through])]
    if isinstance(node, Torch):
        return [node.block]
    return node.ins if isinstance(node, StrongPower | Power | Taker) else []


def _behind(piece: Piece) -> Cell:
    return piece.at.beside(piece.facing.opposite)


def _is_beside(piece: Piece, cell: Cell) -> bool:
    """Whether a cell beside a repeater or comparator lies at its side: neither in front, behind nor above."""
    return cell.y == piece.at.y and cell != _behind(piece) and cell != piece.at.beside(piece.facing)
