"""The ground for wiring: the box below the track, and where in it new dust, parts and blocks would do harm.

What would do harm follows from how signals run: dust links to dust, a source gives to dust beside it, a
strongly powered block to all dust beside it, a weakly powered one to the parts beside it. Common practice of
the trade, written from memory, no published source.
"""

from __future__ import annotations

from collections.abc import Container, Iterator
from typing import Final

from model.grid import Cell, Facing, Heading
from model.parts import RAILS, TRAITS, Part
from model.pieces import Piece, rests_on
from model.plan import Plan
from model.signals.giving import FORWARD_ONLY, SOURCES, powers_strongly
from model.wiring.laying.box import Box

_HEEDING: Final = frozenset({Part.LAMP, Part.HOPPER, Part.AUTO_CRAFTER, Part.RAIL, Part.BOOSTER_RAIL})
"""Parts that heed the power of any block beside them."""
_FEET: Final = frozenset({Part.SOLID_BLOCK, Part.GLASS, Part.SLAB})
"""Parts on which a new repeater may stand."""


class Ground:
    """A plan as whoever lays wires sees it. The sets name only cells in which nothing stands."""

    def __init__(self, plan: Plan, grow: int = 1, depth: int = 6) -> None:
        self.pieces = plan.pieces
        self.box = Box(plan, grow, depth)
        self.dust_barred: set[Cell] = set()
        """Where new dust would link to something, or get a signal."""
        self.solid_barred: set[Cell] = set()
        """Where a new solid block could be powered or bring power to something, or would cut dust."""
        self.rest_barred: set[Cell] = set()
        """Where a new repeater would be locked or give notice to a rail."""
        self.fronts: set[Cell] = set()
        """In front of repeaters and comparators: dust takes their signal there; a line may start so."""
        self.target_sides: dict[Cell, set[Cell]] = {}
        """Where dust would bend to target blocks, and power them; a line may end there."""
        self._heeded: set[Cell] = set()
        for piece in plan.pieces:
            self._bar(piece)
        for barred in (self.dust_barred, self.solid_barred, self.rest_barred, self.fronts):
            barred.difference_update([cell for cell in barred if cell in self.pieces])

    def allows(self, cell: Cell) -> bool:
        """Whether the cell lies in the box and nothing stands there."""
        return cell in self.box and cell not in self.pieces

    def carries_dust(self, cell: Cell) -> bool:
        """Whether new dust harms nothing through what it lies on: a solid block whose power nothing heeds."""
        return self.pieces.part_at(cell) is Part.SOLID_BLOCK and cell not in self._heeded

    def carries_repeater(self, cell: Cell) -> bool:
        """Whether what stands in a cell can carry a new repeater."""
        return self.pieces.part_at(cell) in _FEET and not self._touches_rail(cell)

    def takes_block(self, cell: Cell) -> bool:
        """Whether a new solid block may stand in a cell."""
        return self.allows(cell) and cell not in self.solid_barred

    def takes_line(self, cell: Cell, start: Cell, targets: Container[Cell]) -> bool:
        """Whether a cell takes dust of a line, which may lie at its start and beside its own targets."""
        below = cell.beside(Facing.DOWN)
        return (
            self.allows(cell)
            and cell not in self.dust_barred
            and (cell not in self.fronts or cell == start)
            and all(target in targets for target in self.target_sides.get(cell, ()))
            and (self.takes_block(below) or self.carries_dust(below))
        )

    def _bar(self, piece: Piece) -> None:
        at = piece.at
        if piece.part is Part.DUST:
            self._bar_about_dust(at)
        elif piece.part in FORWARD_ONLY:
            self._bar_about_repeater(piece)
        elif piece.part in SOURCES:
            self._bar_about_source(piece)
        elif piece.part is Part.TARGET_BLOCK:
            for side in Heading:
                self.target_sides.setdefault(at.step(side), set()).add(at)
        if piece.part in RAILS:
            self.dust_barred.update(at.six_beside())
            self.rest_barred.update(at.six_beside())
        if piece.part in _HEEDING:
            self.solid_barred.update(at.six_beside())
            self._heeded.update(at.six_beside())
        strong = powers_strongly(piece)
        if strong is not None and self._is_solid(strong) and not self._gives_notice(piece, strong):
            self.dust_barred.update(strong.six_beside())

    def _bar_about_dust(self, at: Cell) -> None:
        self.dust_barred.update(cell for cell, cut in _dust_beside(at) if not self._is_solid(cut))
        above = at.beside(Facing.UP)
        if any(self.pieces.part_at(above.step(side)) is Part.DUST for side in Heading):
            self.solid_barred.add(above)

    def _bar_about_repeater(self, piece: Piece) -> None:
        front, back = piece.at.beside(piece.facing), piece.at.beside(piece.facing.opposite)
        self.fronts.add(front)
        self.rest_barred.add(front)
        self.solid_barred.update((front, back))
        self._heeded.add(back)
        self.dust_barred.add(back)
        if piece.part is Part.COMPARATOR:
            self.dust_barred.update(side for turn in Heading if (side := piece.at.step(turn)) != front)

    def _bar_about_source(self, piece: Piece) -> None:
        """A torch, lever, button or detector rail."""
        self.dust_barred.update(piece.at.six_beside())
        strong, holder = powers_strongly(piece), rests_on(piece)
        self.solid_barred.update(cell for cell in (strong, holder) if cell is not None)
        if piece.part is Part.TORCH and holder is not None:
            self._heeded.add(holder)

    def _gives_notice(self, piece: Piece, holder: Cell) -> bool:
        """Whether a button is there for the switch over it; lines that end there share its signal."""
        is_target = self.pieces.part_at(holder) is Part.TARGET_BLOCK
        return is_target and piece.part is Part.BUTTON and piece.facing is Facing.DOWN

    def _touches_rail(self, cell: Cell) -> bool:
        return any(self.pieces.part_at(beside) in RAILS for beside in cell.six_beside())

    def _is_solid(self, cell: Cell) -> bool:
        part = self.pieces.part_at(cell)
        return part is not None and TRAITS[part].solid


def _dust_beside(at: Cell) -> Iterator[tuple[Cell, Cell]]:
    """The cells in which dust links to dust at ``at``, each with the one where a solid block would cut that.

    Beside it on its level nothing can cut: there the second is the first.
    """
    for side in Heading:
        beside = at.step(side)
        yield beside, beside
        yield beside.moved(dy=1), at.moved(dy=1)
        yield beside.moved(dy=-1), beside
