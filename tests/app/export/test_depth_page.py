"""The page in depth, read back from the PDF by pdfplumber."""

from __future__ import annotations

from collections import Counter
from functools import cache
from io import BytesIO
from math import atan2, degrees

import pdfplumber
import pypdfium2
import pytest
from pdfplumber.page import Page

from model.grid import Cell
from model.parts import Part
from model.pieces import new_piece
from model.plan import Plan, plan_of
from tests.app.export.sheets import (
    EXAMPLES,
    MM,
    example,
    pdf_bytes,
    strokes,
    width_mm,
)

pytestmark = pytest.mark.usefixtures("qapp")

TITLE = "In depth"
NOTHING = "no page in depth"


@cache
def sheet(name: str, paper: str = "A4") -> bytes:
    """The build sheet of an example without its steps."""
    return pdf_bytes(example(name), paper, steps=False)


@cache
def words(data: bytes) -> list[str]:
    """The text of each page, as pypdfium2 reads it: quicker than the other."""
    return [page.get_textpage().get_text_range() for page in pypdfium2.PdfDocument(data)]


@cache
def depth_page(data: bytes) -> Page | None:
    """The page that shows the levels pulled apart, if there is one."""
    number = next((number for number, text in enumerate(words(data), 1) if TITLE in text), None)
    return None if number is None else pdfplumber.open(BytesIO(data), pages=[number]).pages[0]


def slope(line: dict) -> float:
    """The angle of a line to the horizontal, 0 to 180 degrees, upward to the right."""
    (x0, y0), (x1, y1) = line["pts"][0], line["pts"][-1]
    return degrees(atan2(y0 - y1, x1 - x0)) % 180


def tower(*levels: int, side: int = 1) -> Plan:
    """Blocks in the corners of a square, on each of these levels."""
    corners = {(x, z) for x in (0, side - 1) for z in (0, side - 1)}
    return plan_of([new_piece(Part.SOLID_BLOCK, Cell(x, y, z)) for y in levels for x, z in sorted(corners)])


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_level_stands_on_the_page_with_its_pieces(name: str) -> None:
    page = depth_page(sheet(name))
    assert page is not None
    said = page.extract_text()
    for level, pieces in Counter(piece.at.y for piece in example(name).pieces).items():
        assert f"Level {level}\n" in said or f"Level {level} " in said
        assert f"{pieces} pieces" in said
    assert "isometric" in said
    assert "Seen from the south-east" in said


@pytest.mark.parametrize("name", EXAMPLES)
def test_lines_lie_at_30_degrees_upright_or_along_a_slope(name: str) -> None:
    """ISO 5456-3 (from memory): receding axes at 30° to the horizontal, the upright one upright.

    Level track and the outlines of the levels are straight lines along axes; hatching, which runs from corner
    to corner of the cells, comes out level.
    """
    page = depth_page(sheet(name))
    assert page is not None
    body = page.within_bbox((21 * MM, 11 * MM, page.width - 11 * MM, page.height - 47 * MM))
    track = [line for line in body.lines if width_mm(line) == 0.5]
    assert {round(slope(line)) for line in track} >= {30, 150}
    rising = [line for line in track if round(slope(line)) not in (30, 150)]
    assert len(rising) == (1 if name == "saltern-junction" else 0), "one rail leads up to the next level"


@pytest.mark.parametrize("name", EXAMPLES)
def test_track_is_twice_as_wide_as_all_else(name: str) -> None:
    """2:1 after ISO 128 (from memory), although the plane is tilted; hatching is 0.75 of a narrow line."""
    page = depth_page(sheet(name))
    assert page is not None
    body = page.within_bbox((21 * MM, 11 * MM, page.width - 26 * MM, page.height - 60 * MM))
    assert {width_mm(shape) for shape in strokes(body)} == {0.5, 0.25, 0.19}


def test_page_keeps_to_the_body_and_names_the_arms() -> None:
    page = depth_page(sheet("saltern-junction", "A3"))
    assert page is not None
    said = page.extract_text()
    assert all(arm.name in said for arm in example("saltern-junction").arms)
    drawn = [shape for shape in strokes(page) if width_mm(shape) != 0.7]
    block_top = page.height - 46 * MM
    within = [shape for shape in drawn if shape["bottom"] < block_top]
    assert within
    assert min(shape["x0"] for shape in within) >= 20 * MM
    assert max(shape["x1"] for shape in within) <= page.width - 10 * MM
    assert min(shape["top"] for shape in within) >= 10 * MM


def test_one_level_alone_needs_no_such_page() -> None:
    said = words(pdf_bytes(tower(64), steps=False))
    assert not any(TITLE in text for text in said)
    assert not any(NOTHING in text for text in said)


@pytest.mark.parametrize(("side", "is_there"), [(20, True), (150, False)])
def test_a_plan_too_large_to_be_read_says_so_on_the_cover(side: int, is_there: bool) -> None:
    data = pdf_bytes(tower(63, 64, side=side), steps=False)
    assert (depth_page(data) is not None) is is_there
    assert (NOTHING in words(data)[0]) is not is_there


def test_pieces_at_the_edges_of_the_world_have_a_sheet_without_the_page() -> None:
    """How far apart the levels are drawn is not tried out cell by cell."""
    far = 10_000_000
    plan = plan_of(new_piece(Part.SOLID_BLOCK, Cell(x, y, x)) for x, y in ((-far, 63), (far, 64)))
    text = " ".join(words(pdf_bytes(plan, "A4", steps=False)))
    assert TITLE not in text
    assert NOTHING in " ".join(text.split())
