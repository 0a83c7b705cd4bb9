"""What is tied to what is above it."""

from __future__ import annotations

import pytest

from app.depth.ties import Tie, ties
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece, Pieces, new_piece

TOP = 64


def column(*parts: Part | None) -> Pieces:
    """Parts in one column from level 64 down; ``None`` leaves a cell empty."""
    return Pieces.of(new_piece(part, Cell(0, TOP - n, 0)) for n, part in enumerate(parts) if part is not None)


def tied(pieces: Pieces, *, switch: bool = False) -> list[tuple[int, int]]:
    """The levels of the lower and the upper end of each tie."""
    found = ties(pieces, pieces, [Cell(0, TOP, 0)] if switch else [])
    return [(tie.low.y, tie.high.y) for tie in found]


@pytest.mark.parametrize(
    ("parts", "switch", "levels"),
    [
        ((Part.RAIL, Part.SOLID_BLOCK, Part.DUST), True, [(62, 64)]),
        ((Part.RAIL, Part.SOLID_BLOCK, Part.DUST), False, []),
        ((Part.RAIL, Part.SOLID_BLOCK, Part.SOLID_BLOCK, Part.DUST), True, []),
        ((Part.RAIL, None, Part.DUST), True, []),
        ((Part.RAIL, Part.HOPPER), False, [(63, 64)]),
        ((Part.RAIL, Part.BARREL), False, []),
        ((Part.BOOSTER_RAIL, Part.SOLID_BLOCK, Part.REPEATER), False, [(62, 64)]),
        ((Part.DETECTOR_RAIL, Part.SOLID_BLOCK, Part.COMPARATOR), False, [(62, 64)]),
        ((Part.DUST, Part.SOLID_BLOCK, Part.TORCH), False, [(62, 64)]),
        ((Part.DUST, Part.GLASS, Part.TORCH), False, []),
        ((Part.RAIL, Part.SOLID_BLOCK, Part.TORCH), True, [(62, 64)]),
    ],
)
def test_ties(parts: tuple[Part | None, ...], switch: bool, levels: list[tuple[int, int]]) -> None:
    assert tied(column(*parts), switch=switch) == levels


def test_a_torch_on_a_side_is_tied_to_nothing() -> None:
    torch = Piece(Part.TORCH, Cell(0, 62, 0), Facing.EAST)
    pieces = Pieces.of(
        [torch, new_piece(Part.SOLID_BLOCK, Cell(0, 63, 0)), new_piece(Part.DUST, Cell(0, 64, 0))]
    )
    assert list(ties(pieces, pieces, [])) == []


def test_a_tie_keeps_to_its_column() -> None:
    pieces = Pieces.of([new_piece(Part.RAIL, Cell(4, 64, -2)), new_piece(Part.HOPPER, Cell(4, 63, -2))])
    assert list(ties(pieces, pieces, [])) == [Tie(Cell(4, 63, -2), Cell(4, 64, -2))]
