"""Whether a module fits where it is put, and what it takes the place of.

A module stands under track that is there already: its hopper and its glass come in the place of blocks that
carry rails, its detector rail in the place of a plain straight one.
"""

from __future__ import annotations

from collections.abc import Container, Sequence
from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from model.grid import Cell, Heading
from model.parts import CARRIERS, RAILS, TRAITS, Part
from model.pieces import Piece, Pieces, Placed, rests_on
from model.plan import Plan
from model.wiring.laying.ground import Ground
from model.wiring.lines.coupling import couplings
from model.wiring.modules.modules import Module
from model.wording import tr

_SIGNAL_PARTS: Final = frozenset(
    {Part.DUST, Part.TORCH, Part.REPEATER, Part.COMPARATOR, Part.LEVER, Part.BUTTON, Part.DETECTOR_RAIL}
)
_DRIVEN: Final = RAILS - {Part.DETECTOR_RAIL}
"""Rails on which signals act."""
_BLOCKS: Final = frozenset({Part.SOLID_BLOCK, Part.GLASS, Part.SLAB, Part.TARGET_BLOCK})


class Fitted(Struct, frozen=True):
    """What a module does to a plan."""

    taken: tuple[Piece, ...]
    """Pieces in whose place others come."""
    placed: tuple[Piece, ...]
    """New pieces; blocks that stand there already are left out."""

    def applied(self, pieces: Pieces) -> Pieces:
        """The pieces afterwards; what comes in the place of another takes its rank, the others come last."""
        old = {piece.at: entry for piece in self.taken if (entry := pieces.placed(piece.at)) is not None}
        in_place = [Placed(old[piece.at].rank, piece) for piece in self.placed if piece.at in old]
        after = pieces.replaced(list(old.values()), in_place)
        rank = max((entry.rank for entry in after.in_order()), default=-1) + 1
        new = [piece for piece in self.placed if piece.at not in old]
        return after.replaced((), [Placed(rank + place, piece) for place, piece in enumerate(new)])


def fit(ground: Ground, module: Module) -> Fitted | str:
    """What the module does on the ground; where it does not fit, the sentence that says why."""
    taken: list[Piece] = []
    placed: list[Piece] = []
    for piece in module.pieces:
        there = ground.pieces.get(piece.at)
        if there is None:
            if problem := _problem_in_free_cell(ground, piece, module.cells):
                return problem
            placed.append(piece)
        elif (new := in_place_of(ground.pieces, there, piece)) is None:
            return tr("A {name} stands in the way at {place}.", name=_name(there), place=there.at)
        elif new != there:
            taken.append(there)
            placed.append(new)
    return problem_about(ground.pieces, placed) or Fitted(tuple(taken), tuple(placed))


def is_free_carrier(pieces: Pieces, cell: Cell) -> bool:
    """Whether a block in the cell carries rails and does nothing else: no signal part touches it."""
    piece = pieces.get(cell)
    return piece is not None and piece.part in _BLOCKS and not _has_signal_part_beside(pieces, cell)


def neighbour_directions(pieces: Pieces, rail: Cell) -> int:
    """In how many directions a rail has a neighbour: in the next column, on its level, one up or one down.

    Common practice of the trade, written from memory, no published source.
    """
    return sum(
        any(pieces.part_at(rail.step(heading, rise)) in RAILS for rise in (0, 1, -1)) for heading in Heading
    )


def in_place_of(pieces: Pieces, there: Piece, piece: Piece) -> Piece | None:
    """The module's piece as it comes in the place of another; ``there`` itself where that may stay."""
    if piece.part is Part.DETECTOR_RAIL:
        is_plain = there.part is Part.RAIL and not _is_beside_three_way(pieces, there.at)
        return replace(piece, facing=there.facing) if is_plain else None
    if piece.part not in CARRIERS or not is_free_carrier(pieces, there.at):
        return None
    if piece.part is there.part:
        above = there.at.moved(dy=1)
        turns = pieces.part_at(above) is Part.RAIL and neighbour_directions(pieces, above) == 3
        return None if turns else there
    carries_rail = pieces.part_at(there.at.moved(dy=1)) in RAILS
    return piece if carries_rail and there.part in (Part.SOLID_BLOCK, Part.GLASS, Part.SLAB) else None


def _is_beside_three_way(pieces: Pieces, rail: Cell) -> bool:
    cells = (rail.step(heading, rise) for heading in Heading for rise in (0, 1, -1))
    return any(
        pieces.part_at(cell) is Part.RAIL and neighbour_directions(pieces, cell) == 3 for cell in cells
    )


def _problem_in_free_cell(ground: Ground, piece: Piece, own: Container[Cell]) -> str | None:
    if not ground.allows(piece.at):
        return tr("{place} lies outside the box in which wiring may stand.", place=piece.at)
    if piece.part is Part.DUST:
        barred = piece.at in ground.dust_barred
    elif TRAITS[piece.part].solid:
        barred = piece.at in ground.solid_barred and not _only_heeds_itself(ground, piece.at, own)
    else:
        barred = piece.at in ground.rest_barred
    return (
        tr("A {name} at {place} would couple with what stands about it.", name=_name(piece), place=piece.at)
        if barred
        else None
    )


def _only_heeds_itself(ground: Ground, cell: Cell, own: Container[Cell]) -> bool:
    """Whether all that bars a block here is rails or pieces in whose place the module comes."""
    return all(
        beside in own or (part := ground.pieces.part_at(beside)) is None or part in RAILS or part in CARRIERS
        for beside in cell.six_beside()
    )


def problem_about(pieces: Pieces, placed: Sequence[Piece]) -> str | None:
    """What new pieces would do to parts that stand about them already, or those to them, as a sentence.

    What would be done to rails is left out: a drive is there to turn one, and a detector rail gives to those
    beside it only while a cart is on it.
    """
    found = couplings(Plan(pieces), placed)
    return next((each.why for each in found if pieces.part_at(each.other) not in _DRIVEN), None)


def _has_signal_part_beside(pieces: Pieces, cell: Cell) -> bool:
    return any(
        (piece := pieces.get(beside)) is not None
        and piece.part in _SIGNAL_PARTS
        and (piece.part is not Part.DETECTOR_RAIL or rests_on(piece) == cell)
        for beside in cell.six_beside()
    )


def _name(piece: Piece | None) -> str:
    return "piece" if piece is None else piece.part.value.replace("-", " ")


def fitted_plan(plan: Plan, fitted: Fitted) -> Plan:
    """The plan with the module in it."""
    return Plan(fitted.applied(plan.pieces), plan.details)
