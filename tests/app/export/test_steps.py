"""The pages of the steps, read back from the PDF, and how their pictures are cut out."""

from __future__ import annotations

import re
from collections import Counter
from io import BytesIO
from itertools import pairwise
from typing import Any

import pypdfium2
import pytest
from pdfplumber.page import Page
from pypdf import PdfReader

from app.export.cutout import BREAK, MARGIN, SCALES, Cutout, cutout
from app.export.flow import Strip, fill
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece
from model.plan import plan_of
from model.routing.junction import Junction
from model.sheet import build_sheet
from model.sheet.steps import StepPicture
from model.steps import Step, build_steps
from tests.app.export.sheets import (
    EXAMPLES,
    MM,
    example,
    example_pdf,
    pages,
    pdf_bytes,
    strokes,
    texts,
    width_mm,
)

pytestmark = pytest.mark.usefixtures("qapp")

CHAR = re.compile(r"\s+")


def joined(text: str) -> str:
    """The text without what stands between words: readers put in spaces, tabs or nothing."""
    return CHAR.sub("", text)


def step_texts(data: bytes) -> list[str]:
    """The text of the pages of steps in the order in which it was drawn, so that columns stay apart."""
    found = [joined(page.extract_text()) for page in PdfReader(BytesIO(data)).pages]
    return [text for text in found if "Youshouldnowsee:" in text]


def step_pages(data: bytes) -> list[Page]:
    """The same pages for pdfplumber."""
    return [
        page for page, text in zip(pages(data), texts(data), strict=True) if "You should now see:" in text
    ]


def said(step: Step) -> list[str]:
    """What must stand on the sheet of a step, in order."""
    why = [] if step.why is None else [step.why]
    return [f"{step.number:,} {step.title}", *why, f"You should now see: {step.see}"]


@pytest.mark.parametrize("paper", ["A4", "A3"])
@pytest.mark.parametrize("name", EXAMPLES)
def test_every_step_stands_whole_on_one_page_in_order(name: str, paper: str) -> None:
    texts = iter(step_texts(example_pdf(name, paper)))
    page, at = next(texts), 0
    for step in build_steps(example(name)):
        first, *others = map(joined, said(step))
        if page.find(first, at) < 0:
            page, at = next(texts), 0
        for words in (first, *others):
            at = page.index(words, at) + len(words)
    assert next(texts, None) is None


def boxes(page: Page) -> list[dict[str, Any]]:
    """Empty squares of 4 to 6 mm with an outline of their own, to tick."""
    squares = [shape for shape in page.rects if shape["stroke"] and not shape["fill"]]
    return [
        shape
        for shape in squares
        if 4 * MM <= shape["width"] <= 6 * MM and abs(shape["width"] - shape["height"]) < 0.1
    ]


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_step_has_a_box_to_tick(name: str) -> None:
    found = [box for page in step_pages(example_pdf(name)) for box in boxes(page)]
    assert len([box for box in found if width_mm(box) == 0.35]) == len(build_steps(example(name)))


@pytest.mark.parametrize("paper", ["A4", "A3"])
def test_everything_stays_within_the_frame(paper: str) -> None:
    """The frame is 20 mm from the left and 10 mm from the other edges; the footer is outside of it."""
    for page in step_pages(example_pdf("fen-ring", paper)):
        frame = (20 * MM - 1, 10 * MM - 1, page.width - 10 * MM + 1, page.height - 10 * MM + 1)
        marks = [shape for shape in strokes(page) if width_mm(shape) != 0.7]
        letters = [char for char in page.chars if char["bottom"] < frame[3]]
        for shape in (*marks, *letters):
            assert frame[0] <= shape["x0"] <= shape["x1"] <= frame[2]
            assert frame[1] <= shape["top"] <= shape["bottom"] <= frame[3]


@pytest.mark.parametrize("paper", ["A4", "A3"])
def test_nothing_of_a_step_runs_into_the_title_block(paper: str) -> None:
    """180 × 36 mm at the bottom right of the frame: ISO 7200, from memory."""
    for page in step_pages(example_pdf("fen-ring", paper)):
        left, top = page.width - 190 * MM, page.height - 46 * MM
        for shape in (shape for shape in strokes(page) if width_mm(shape) < 0.35):
            assert shape["bottom"] <= top or shape["x1"] <= left


@pytest.mark.parametrize("name", EXAMPLES)
def test_new_track_is_twice_as_wide_as_outlines(name: str) -> None:
    """2:1 after ISO 128 (from memory): 0.5 and 0.25 mm below 8 mm a cell; frames of pictures 0.35 mm."""
    for page in step_pages(example_pdf(name)):
        within = page.within_bbox((20 * MM, 27 * MM, page.width - 10 * MM, page.height - 46 * MM))
        widths = {width_mm(shape) for shape in strokes(within) if not any(shape["stroking_color"])}
        assert widths <= {0.5, 0.25, 0.35, 0.18, 0.15}, "0.15 are the arrows: 0.6 of a narrow line"
        assert {0.5, 0.25} <= widths or "rail" not in page.extract_text()


def test_steps_have_no_hue_even_in_colour() -> None:
    data = example_pdf("beacon-wye", "A4", True)
    document = pypdfium2.PdfDocument(data)
    numbers = {page.page_number for page in step_pages(data)}
    assert numbers
    for number in numbers:
        pixels = document[number - 1].render(scale=1.0).to_numpy()[:, :, :3].astype(int)
        assert (pixels.max(axis=2) - pixels.min(axis=2) <= 8).all()


def ink_squares(page: Page) -> int:
    """The outlines of blocks in ink: black squares of 0.86 of a cell of 5 to 8 mm, filled with paper."""
    return sum(
        not any(shape["stroking_color"])
        and 0.86 * 5 * MM <= shape["width"] <= 0.86 * 8 * MM
        and abs(shape["width"] - shape["height"]) < 0.1
        and width_mm(shape) == 0.25
        for shape in page.rects
        if shape["stroke"]
    )


@pytest.mark.parametrize("name", EXAMPLES)
def test_blocks_in_ink_are_those_of_the_plan(name: str) -> None:
    """Read back from the pictures: each block is new once, those in the middle of a cut line left out."""
    plan = example(name)
    hidden = sum(
        one.piece.part is Part.SOLID_BLOCK and not shows(cut_out(picture), one.piece.at)
        for picture in build_sheet(Junction(plan), ()).steps
        for one in picture.new
    )
    blocks = Counter(piece.part for piece in plan.pieces)[Part.SOLID_BLOCK]
    assert sum(map(ink_squares, step_pages(example_pdf(name)))) == blocks - hidden
    assert hidden < blocks / 4


WIDE, HIGH = 77.5, 62.0


def cut_out(picture: StepPicture) -> Cutout:
    return cutout(picture, WIDE, HIGH)


def shows(cut: Cutout, cell: Cell) -> bool:
    columns, rows = cut.columns, cut.rows
    return any(cell.x in each for each in columns) and any(cell.z in each for each in rows)


def picture_of(pieces: list[Piece]) -> StepPicture:
    """The last step of a plan."""
    return build_sheet(Junction(plan_of(pieces)), ()).steps[-1]


@pytest.mark.parametrize("along", ["x", "z"])
@pytest.mark.parametrize("length", [2, 9, 13, 14, 40, 3000])
def test_long_lines_are_cut_in_the_middle_and_keep_their_ends(length: int, along: str) -> None:
    cells = [Cell(at, 64, 0) if along == "x" else Cell(0, 64, at) for at in range(-5, length - 5)]
    cut = cut_out(picture_of([Piece(Part.GLASS, cell) for cell in cells]))
    parts = cut.columns if along == "x" else cut.rows
    assert len(parts) == (1 if all(shows(cut, cell) for cell in cells) else 2)
    assert shows(cut, cells[0])
    assert shows(cut, cells[-1])
    assert parts[0][0] <= -5 - MARGIN
    assert parts[-1][-1] >= length - 5 - 1 + MARGIN
    assert cut.cell >= min(SCALES)
    assert cut.width <= WIDE + 1e-6
    assert cut.height <= HIGH + 1e-6


def test_windows_of_a_cut_picture_stand_side_by_side() -> None:
    cut = cut_out(picture_of([Piece(Part.GLASS, Cell(x, 64, 0)) for x in range(30)]))
    windows = [*cut.windows(10.0, 20.0)]
    assert [window.west for window in windows] == [columns[0] for columns in cut.columns]
    assert {window.top for window in windows} == {20.0}
    assert windows[0].left == 10.0
    for before, after in pairwise(windows):
        assert after.left == pytest.approx(before.rect.right() + BREAK)


def test_four_blocks_far_apart_are_all_shown() -> None:
    cells = [Cell(x, 64, z) for x in (-900, 2000) for z in (0, 7000)]
    cut = cut_out(picture_of([Piece(Part.LAMP, cell) for cell in cells]))
    assert all(shows(cut, cell) for cell in cells)
    assert cut.cell >= min(SCALES)


def test_a_rail_bent_in_the_middle_of_a_long_line_is_shown() -> None:
    """A line beside which a branch ended: the rail that it meets is not hidden by the cut."""
    for picture in build_sheet(Junction(example("saltern-junction")), ()).steps:
        cut = cut_out(picture)
        assert all(shows(cut, one.piece.at) for one in picture.bent)


def test_long_coordinates_keep_their_size() -> None:
    """Figures are 1.8 mm high on every picture; where they are long only some cells have theirs."""
    plan = plan_of([Piece(Part.GLASS, Cell(-9_999_990 + x, 64, 8_888_880)) for x in range(4)])
    (page,) = step_pages(pdf_bytes(plan))
    figures = [char for char in page.chars if char["text"] in "0123456789\u2212" and char["top"] > 40 * MM]
    rows = [char for char in figures if char["top"] < 60 * MM]
    assert {round(char["size"], 1) for char in rows} == {round(1.8 / 0.729 * MM, 1)}
    words = [word["text"] for word in page.extract_words()]
    assert "8888880" in words
    assert any(word.startswith("\u22129999") for word in words)


def test_many_steps_run_over_pages_numbered_throughout() -> None:
    """Lamps and glass in turn make a step each."""
    pieces = [Piece((Part.GLASS, Part.LAMP)[x % 2], Cell(x, 2 * x, 0), Facing.NORTH) for x in range(24)]
    written = pdf_bytes(plan_of(pieces))
    spans = [re.search(r"Steps?(\d+)(?:to(\d+))?of24", text) for text in step_texts(written)]
    ends = [(int(span[1]), int(span[2] or span[1])) for span in spans if span is not None]
    assert len(ends) == len(spans) > 2
    assert (ends[0][0], ends[-1][1]) == (1, 24)
    assert all(after[0] == before[1] + 1 for before, after in pairwise(ends))
    reader = PdfReader(BytesIO(written))
    for number, page in enumerate(reader.pages, start=1):
        assert f"{number}/{len(reader.pages)}" in joined(page.extract_text())


def test_columns_are_filled_in_turn_and_no_strip_is_cut() -> None:
    strips = [Strip(height, lambda _pencil, _space: None) for height in (30, 40, 50, 20, 80, 60)]
    heights = iter([100.0, 80.0, 100.0, 80.0])
    columns = fill(strips, heights)
    assert [[placed.strip for placed in column] for column in columns] == [
        strips[:2],
        strips[2:4],
        strips[4:5],
        strips[5:],
    ]
