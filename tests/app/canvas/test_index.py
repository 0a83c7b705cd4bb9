"""The index of what lies where equals a look at every piece."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from app.canvas.geometry import Area
from app.canvas.index import PieceIndex
from model.edits import erase, paste
from model.grid import Cell
from model.parts import Part
from model.pieces import Piece
from model.plan import plan_of

cells = st.builds(Cell, st.integers(-40, 40), st.integers(63, 65), st.integers(-40, 40))
batches = st.lists(st.frozensets(cells, max_size=6), max_size=6)


@given(batches, batches, cells, cells)
def test_following_changes_equals_looking_at_all(
    placed: list[frozenset[Cell]], erased: list[frozenset[Cell]], a: Cell, b: Cell
) -> None:
    plan, index = plan_of([]), PieceIndex()
    for batch in placed:
        change = paste(plan, [Piece(Part.RAIL, cell) for cell in batch])
        index.follow(change)
        plan = change.applied(plan)
    for batch in erased:
        change = erase(plan, batch)
        index.follow(change)
        plan = change.applied(plan)
    area = Area(min(a.x, b.x), min(a.z, b.z), max(a.x, b.x), max(a.z, b.z))
    found = set(index.pieces_in(area, a.y))
    assert found == {p for p in plan.pieces if p.at.y == a.y and area.holds(p.at.x, p.at.z)}
    assert {(p.at.x // 32, p.at.z // 32) for p in found} <= set(index.squares_in(area, a.y, 32))
    assert index.levels() == {piece.at.y for piece in plan.pieces}
    xs, zs = [p.at.x for p in plan.pieces], [p.at.z for p in plan.pieces]
    assert index.extent() == (Area(min(xs), min(zs), max(xs), max(zs)) if xs else None)


def test_squares_that_lie_far_apart_are_found_where_the_pieces_are() -> None:
    far = 10_000_000
    index = PieceIndex([Piece(Part.RAIL, Cell(x, 64, 0)) for x in (-far, far)])
    index.follow(paste(plan_of([]), [Piece(Part.RAIL, Cell(0, 65, 0))]))
    area = Area(-far, -far, far, far)
    assert list(index.squares_in(area, 64, 256)) == [(-far // 256, 0), (far // 256, 0)]
    assert list(index.squares_in(area, 65, 256)) == [(0, 0)]
