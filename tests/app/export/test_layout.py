"""How levels are cut into pages, tables into pages, and texts into lines."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QRectF

from app.canvas.symbols.lettering import width
from app.export.arm_tags import fitted, tags_of
from app.export.checklist import checklist_tables
from app.export.flow import Strip, Table, cut, paginate
from app.export.level_pages import plan_area
from app.export.papers import PAPERS
from app.export.pencil import broken
from app.export.pencil import fitted as fitted_text
from app.export.scale import tiles
from app.export.strips import NO_BREAK, lines_of
from model.grid import Cell, Heading
from model.plan import Arm, ArmEnd
from model.sheet.checklist import Checklist, ChecklistRun
from model.sheet.footprint import Bounds

pytestmark = pytest.mark.usefixtures("qapp")

sizes = st.integers(1, 120)


@pytest.mark.parametrize(
    ("width_cells", "depth", "scale"),
    [(17, 14, 10), (18, 14, 8), (17, 17, 8), (28, 23, 6), (34, 28, 5), (35, 28, 5)],
)
def test_largest_scale_that_fits_is_taken(width_cells: int, depth: int, scale: float) -> None:
    """A4: 17 × 14 cells at 10 mm, then 8, 6 and 5 mm."""
    corners = [(0, 0), (width_cells - 1, depth - 1)]
    parts = tiles(Bounds(0, 0, width_cells - 1, depth - 1), (), plan_area(PAPERS["A4"]), corners)
    assert parts[0].window.cell == scale
    assert len(parts) == (1 if width_cells <= 34 else 2)


@given(sizes, sizes, st.sampled_from(["A4", "A3"]), st.integers(-50, 50))
def test_pages_of_a_level_cover_it_with_one_cell_of_overlap(
    wide: int, deep: int, paper: str, west: int
) -> None:
    cells = {(x, z) for x in range(west, west + wide) for z in range(3, 3 + deep)}
    parts = tiles(Bounds(west, 3, west + wide - 1, 3 + deep - 1), (), plan_area(PAPERS[paper]), cells)
    shown = {
        (x, z)
        for part in parts
        for x in range(part.window.west, part.window.west + part.window.columns)
        for z in range(part.window.north, part.window.north + part.window.rows)
    }
    assert cells <= shown
    places = {(part.column, part.row): part.window for part in parts}
    columns, rows = parts[0].window.columns, parts[0].window.rows
    assert len(parts) == max(1, -(-(wide - 1) // (columns - 1))) * max(1, -(-(deep - 1) // (rows - 1)))
    for (column, row), window in places.items():
        if (column + 1, row) in places:
            assert places[column + 1, row].west == window.west + window.columns - 1
        if (column, row + 1) in places:
            assert places[column, row + 1].north == window.north + window.rows - 1


def test_far_apart_pieces_take_a_page_each_and_no_more() -> None:
    far = 9_999_999
    corners = [(-far, -far), (far, far)]
    parts = tiles(Bounds(-far, -far, far, far), (), plan_area(PAPERS["A4"]), corners)
    assert len(parts) == 2
    for (x, z), part in zip(corners, parts, strict=True):
        assert part.window.holds(Cell(x, 64, z))


def strips(heights: list[float]) -> tuple[Strip, ...]:
    return tuple(Strip(height, lambda _pencil, _space: None) for height in heights)


@given(st.lists(st.lists(st.floats(5, 15), max_size=40), min_size=1, max_size=5))
def test_tables_keep_all_rows_in_order_under_their_head(tables: list[list[float]]) -> None:
    whole = [Table(strips([20.0, 9.0]), strips(rows)) for rows in tables]
    heads = {id(strip) for table in whole for strip in table.head}
    pages = paginate(whole, 241)
    flat = [placed.strip for page in pages for placed in page if id(placed.strip) not in heads]
    assert list(map(id, flat)) == [id(row) for table in whole for row in table.rows]
    for page in pages:
        ends = [placed.top + placed.strip.height for placed in page]
        assert all(end <= 241 + 1e-6 for end in ends)
        assert [placed.top for placed in page] == pytest.approx([0, *ends][: len(page)])
        assert not page or id(page[0].strip) in heads


@given(st.integers(0, 200), st.integers(1, 12))
def test_columns_are_cut_evenly(count: int, most: int) -> None:
    parts = [range(count)[piece] for piece in cut(count, most)]
    assert [x for part in parts for x in part] == list(range(count))
    assert max(len(part) for part in parts) <= most
    assert max(map(len, parts)) - min(map(len, parts)) <= 1


@given(st.text(st.characters(categories=["L", "N", "P", "Zs"]), max_size=120), st.floats(10, 100))
def test_fitted_text_is_no_wider_than_its_room(text: str, room: float) -> None:
    em, shown = fitted_text(text, 3.4, False, room)
    assert width(shown, em) <= room + 1e-6 or shown == "…"
    assert em >= 0.6 * 3.4 - 1e-9


def test_lines_break_at_spaces_and_lose_nothing() -> None:
    text = "Your world may run by others: try one switch before you build the rest."
    lines = broken(text, 3.0, 40.0, False, 9)
    assert " ".join(lines) == text
    assert len(lines) > 1
    assert all(width(line, 3.0) <= 40.0 for line in lines)
    assert broken(text, 3.0, 40.0, False, 2)[1].endswith("the rest.")


def test_a_place_is_not_broken_across_lines() -> None:
    text = "8 solid blocks from \u22121 63 2 to \u22121 63 9, 1 \u00d7 8"
    for room in range(20, 80, 3):
        lines = [line.replace(NO_BREAK, " ") for line in lines_of(text, 2.5, float(room))]
        assert " ".join(lines) == text
        for together in ("\u22121 63 2", "\u22121 63 9", "1 \u00d7 8"):
            assert any(together in line for line in lines)


def single_track(heading: Heading) -> Arm:
    """An arm where carts come in and leave at one end of track."""
    return Arm("Tithe Barn", ArmEnd(Cell(0, 64, 0), heading), ArmEnd(Cell(0, 64, 0), heading.opposite))


def test_what_no_run_shows_stands_under_its_half_of_a_sentence_on_every_page() -> None:
    runs = (ChecklistRun(1, "Quay", None, "Mill"),)
    tables = list(checklist_tables(Checklist(runs, 9, ("a",) * 5, ("b", "c", "d", "e")), 180.0, wanted=True))
    height = sum(table.head_height + sum(row.height for row in table.rows) for table in tables)
    pages = paginate(tables, height - 1)
    assert len(pages) == 2
    last = tables[-1]
    on_last = [placed.strip for placed in pages[1]]
    assert on_last[0] is last.head[0]
    assert on_last[1:] == list(last.rows[-len(on_last) + 1 :])
    assert tables[1].head[-1] not in on_last, "how much the runs show is said once"


@pytest.mark.parametrize("heading", Heading)
@pytest.mark.parametrize("cell", [5.0, 8.0, 10.0])
def test_tags_of_a_single_track_do_not_overlap(heading: Heading, cell: float) -> None:
    tags, size = fitted(tags_of([single_track(heading)]), cell)
    rects = [tag.rect(tag.x * cell, tag.z * cell, size) for tag in tags]
    assert len(rects) == (1 if heading.lies_north_south else 2)
    assert not any(a.intersects(b) for a in rects for b in rects if a is not b)


def test_two_tracks_side_by_side_get_smaller_or_joined_tags() -> None:
    arm = Arm("Tithe Barn", ArmEnd(Cell(0, 64, 0), Heading.SOUTH), ArmEnd(Cell(2, 64, 0), Heading.NORTH))
    for cell, count in ((5.0, 1), (20.0, 2)):
        tags, size = fitted(tags_of([arm]), cell)
        assert len(tags) == count
        rects: list[QRectF] = [tag.rect(tag.x * cell, tag.z * cell, size) for tag in tags]
        assert not any(a.intersects(b) for a in rects for b in rects if a is not b)
    (joined,) = fitted(tags_of([arm]), 5.0).tags
    assert joined.in_on is Heading.WEST
