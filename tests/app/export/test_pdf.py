"""The sheet as PDF, read back with pypdf, pdfplumber and pypdfium2."""

from __future__ import annotations

import re
from collections import Counter
from io import BytesIO
from pathlib import Path
from random import Random

import numpy as np
import pypdfium2
import pytest
from pypdf import PdfReader

from app.export import export_sheet
from app.names import part_name
from model.commissioning import Commissioning
from model.grid import Cell, Heading
from model.parts import Part
from model.pieces import new_piece
from model.plan import EMPTY_PLAN, Arm, ArmEnd, Plan, Route, SheetData, plan_of
from model.routing.junction import Junction
from model.rules import find_all
from model.sheet import materials
from model.steps import build_steps
from model.steps.bound import order_numbers
from tests.app.export.sheets import (
    EXAMPLES,
    MM,
    cover_text,
    example,
    example_pdf,
    pages,
    pdf_bytes,
    strokes,
    texts,
    width_mm,
    with_title,
    yard,
)
from tests.harness.plans import random_plan

pytestmark = pytest.mark.usefixtures("qapp")

ISO_216 = {"A4": (595.2756, 841.8898), "A3": (1190.5512, 841.8898)}
"""Points of A4 upright and A3 lying: ISO 216, 210 × 297 and 420 × 297 mm."""


@pytest.mark.parametrize("paper", ISO_216)
def test_pages_have_the_size_of_the_paper(paper: str) -> None:
    reader = PdfReader(BytesIO(example_pdf("fen-ring", paper)))
    for page in reader.pages:
        assert page.rotation == 0
        assert float(page.mediabox.width) == pytest.approx(ISO_216[paper][0], abs=0.5)
        assert float(page.mediabox.height) == pytest.approx(ISO_216[paper][1], abs=0.5)


@pytest.mark.parametrize("paper", ISO_216)
def test_frame_leaves_a_filing_edge(paper: str) -> None:
    """ISO 5457 (from memory): 20 mm on the left, 10 mm on the other sides, the frame's line 0.7 mm."""
    wide, high = ISO_216[paper]
    for page in pages(example_pdf("fen-ring", paper)):
        frame = max(page.rects, key=lambda rect: rect["width"] * rect["height"] if rect["stroke"] else 0)
        assert width_mm(frame) == 0.7
        edges = (frame["x0"], wide - frame["x1"], frame["top"], high - frame["bottom"])
        assert edges == pytest.approx((20 * MM, 10 * MM, 10 * MM, 10 * MM), abs=0.7)


@pytest.mark.parametrize(("name", "wide"), [("saltern-junction", 0.7), ("fen-ring", 0.5)])
def test_track_is_twice_as_wide_as_the_outlines_of_symbols(name: str, wide: float) -> None:
    """2:1 after ISO 128 (from memory): 0.7 and 0.35 mm from 8 mm a cell, below that 0.5 and 0.25 mm."""
    page = next(page for page in pages(example_pdf(name)) if "Level 64" in page.extract_text())
    within = page.within_bbox((26 * MM, 16 * MM, 194 * MM, 154 * MM))
    black = [shape for shape in strokes(within) if not any(shape["stroking_color"])]
    widths = Counter(width_mm(shape) for shape in black)
    symbols = {width for width in widths if width in (0.7, 0.5, 0.35, 0.25)} - {0.35 if wide == 0.5 else 0}
    assert symbols == {wide, wide / 2}


ALLOWED_MM = {0.7, 0.5, 0.35, 0.25, 0.18}
"""Widths after ISO 128 (from memory); besides them hatching, 0.75 of a narrow line, and arrows, 0.6 of it."""


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_other_widths_of_lines(name: str) -> None:
    shares = {round(share * narrow, 2) for share in (0.6, 0.75) for narrow in (0.35, 0.25)}
    marks = {0.56, 0.62}
    """Strokes inside the markers of cautions."""
    for page in pages(example_pdf(name)):
        widths = {width_mm(shape) for shape in strokes(page)}
        assert widths <= ALLOWED_MM | shares | marks, widths


@pytest.mark.parametrize("paper", ISO_216)
def test_sheet_has_no_hue_unless_colour_was_asked_for(paper: str) -> None:
    for colour in (False, True):
        hued = [
            bool((raster(page).max(axis=2) - raster(page).min(axis=2) > 8).any())
            for page in pypdfium2.PdfDocument(example_pdf("fen-ring", paper, colour))
        ]
        assert any(hued) is colour


def raster(page: pypdfium2.PdfPage) -> np.ndarray:
    """A page in pixels, as whole numbers that may be subtracted."""
    return page.render(scale=1.0).to_numpy()[:, :, :3].astype(int)


def test_colour_changes_no_line() -> None:
    def geometry(colour: bool) -> list[list[tuple[float, ...]]]:
        return [
            [(s["x0"], s["top"], s["x1"], s["bottom"], s["linewidth"]) for s in strokes(page)]
            for page in pages(example_pdf("beacon-wye", "A4", colour))
        ]

    assert geometry(False) == geometry(True)


def test_greys_are_dark_enough_for_marks() -> None:
    """3:1 on white (WCAG 2.2, 1.4.11) is reached by #8C8C8C; only the grid is paler, and is no mark."""
    grid = {0.18, 0.25}
    for page in pages(example_pdf("saltern-junction")):
        for shape in strokes(page):
            grey = float(np.mean(shape["stroking_color"]))
            assert grey <= 0x8C / 255 + 0.01 or width_mm(shape) in grid


@pytest.mark.parametrize("name", EXAMPLES)
def test_title_block_on_every_page(name: str) -> None:
    plan, found = example(name), texts(example_pdf(name))
    for number, text in enumerate(found, start=1):
        for words in (
            plan.details.title,
            f"{number} / {len(found)}",
            plan.details.sheet.number,
            "Build sheet",
        ):
            assert words in text
        for field in ("Legal owner", "Document type", "Created by", "Approved by", "Date of issue", "Rev."):
            assert field in text


@pytest.mark.parametrize("name", EXAMPLES)
def test_materials_on_the_cover_are_those_of_the_plan(name: str) -> None:
    """Read back from the page, against the model's list and a count over the pieces."""
    cover = texts(example_pdf(name))[0]
    listed = materials(example(name))
    for part, pieces in Counter(piece.part for piece in example(name).pieces).items():
        row = f"{part_name(part)} {pieces} {pieces // 64} + {pieces % 64}"
        assert row in cover
        assert listed.of(part) == pieces


def test_random_plans_give_sheets_with_their_materials() -> None:
    for seed in range(20):
        materials_stand_on_the_cover(random_plan(Random(seed)))


@pytest.mark.slow
@pytest.mark.timeout(3_600)
def test_many_random_plans_give_sheets_with_their_materials() -> None:
    for seed in range(20, 320):
        materials_stand_on_the_cover(random_plan(Random(seed)))


def materials_stand_on_the_cover(plan: Plan) -> None:
    """Counts over the plan, against the counts that a reader finds on the cover."""
    cover = cover_text(pdf_bytes(plan, steps=False))
    for part, pieces in Counter(piece.part for piece in plan.pieces).items():
        assert f"{part_name(part)} {pieces} {pieces // 64} + {pieces % 64}" in cover


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_page_a_level_from_the_bottom_up(name: str) -> None:
    levels = sorted({piece.at.y for piece in example(name).pieces})
    titles = [f"Level {level} —" for level in levels]
    found = [title for text in texts(example_pdf(name)) for title in titles if title in text]
    assert found == titles


@pytest.mark.parametrize("name", EXAMPLES)
def test_routes_stand_in_the_control_table(name: str) -> None:
    last = texts(example_pdf(name))[-1]
    for route in example(name).routes:
        assert f"{route.start} {route.idle} none" in last
        if route.called is not None:
            assert f"{route.start} {route.called} {route.waybill}" in last


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_checklist_has_the_fewest_runs_and_says_what_they_show(name: str) -> None:
    """A row a run, and no row more; the arm that must be left by is the wanted one."""
    commissioning = Commissioning(Junction(example(name)))
    words = " ".join(texts(example_pdf(name))[-1].split())
    table = words[words.index("Test checklist") : words.index("single faults")]
    for number, run in enumerate(commissioning.tests, start=1):
        (route,) = (route for route in example(name).routes if route.start == run.start)
        goal = route.idle if run.waybill is None else route.called
        carries = "none" if run.waybill is None else f"1 \u00d7 {run.waybill}"
        assert f" {number} {run.start} {carries} {goal} " in table
    assert f" {len(commissioning.tests) + 1} " not in table.split("These")[0]
    shown = len(commissioning.faults) - len(commissioning.hidden)
    assert f"{shown} of {len(commissioning.faults)} single faults." in words
    for fault in commissioning.hidden:
        assert f"\u2013 {fault.words}" in words


@pytest.mark.parametrize("name", EXAMPLES)
def test_all_numbers_of_placing_stand_on_the_pages(name: str) -> None:
    laid = [piece for step in build_steps(example(name)) for piece in step.place]
    wanted = {str(number) for number in order_numbers(example(name), laid).values()}
    found: set[str] = set()
    for page in pages(example_pdf(name)):
        if "Level" in page.extract_text():
            plan = page.within_bbox((26 * MM, 16 * MM, 194 * MM, 154 * MM))
            found |= {word["text"] for word in plan.extract_words(x_tolerance=0.3, keep_blank_chars=False)}
    assert wanted <= found


def test_coordinates_stand_on_all_four_sides() -> None:
    page = pages(example_pdf("saltern-junction"))[1]
    wide, high = (page.width, 150 * MM + 10 * MM)
    bands = {
        "north": (25 * MM, 10 * MM, wide, 16 * MM),
        "south": (25 * MM, high - 6 * MM, wide, high),
        "west": (20 * MM, 15 * MM, 26 * MM, high - 5 * MM),
        "east": (wide - 16 * MM, 15 * MM, wide - 10 * MM, high - 5 * MM),
    }
    found = {side: page.crop(band).extract_text().split() for side, band in bands.items()}
    assert found["north"] == found["south"] == [str(x).replace("-", "\u2212") for x in range(-8, 9)]
    assert found["west"] == found["east"]
    assert len(found["west"]) == 14


def test_empty_plan_gives_a_sheet_that_says_so() -> None:
    cover, tables = texts(pdf_bytes(EMPTY_PLAN))
    assert "Untitled plan" in cover
    assert "Nothing is placed yet." in cover
    assert "Nothing to carry." in cover
    assert "No routes are wanted yet." in tables


def test_plan_without_routes_gives_all_its_pages() -> None:
    bare = plan_of([*example("fen-ring").pieces])
    found = texts(pdf_bytes(bare))
    levels = [text for text in found if "Level 6" in text and "On this page" in text]
    assert len(levels) == 2
    assert "No routes are wanted yet." in found[-1]


LONG = SheetData(
    "Brinepan Tramway, Permanent Way Department, Saltern Depot (invented)", "SJ-" + "0123456789" * 4
)


@pytest.mark.parametrize("paper", ISO_216)
def test_long_words_stay_in_their_fields(paper: str) -> None:
    plan = with_title(
        example("saltern-junction"), "Junction of the tramway at the western end of the salt works " * 4
    )
    plan = plan_of([*plan.pieces], plan.details.replace(sheet=LONG))
    for page in pages(pdf_bytes(plan, paper, steps=False)):
        right = page.width - 10 * MM
        block_left, block_top = right - 180 * MM, page.height - 46 * MM
        words = [w for w in page.extract_words() if w["top"] > block_top and w["x0"] > block_left]
        edges = [right - reach * MM for reach in (180, 118, 58, 24, 0)]
        assert all(word["x1"] <= right + 0.5 for word in page.extract_words())
        for word in (w for w in words if w["top"] < block_top + 12 * MM):
            start = max(edge for edge in edges if edge <= word["x0"])
            end = min(edge for edge in edges if edge > word["x0"])
            assert word["x1"] <= end, (word["text"], start)
        title = [w for w in words if block_top + 16 * MM < w["top"] < block_top + 36 * MM]
        title = [w for w in title if w["x0"] < right - 58 * MM]
        assert title
        assert max(word["x1"] for word in title) <= right - 58 * MM


def test_large_level_runs_over_pages_with_match_lines() -> None:
    """Where one page sends the reader to another, that one sends him back."""
    sends: dict[int, set[int]] = {}
    for number, page in enumerate(pages(pdf_bytes(yard(3, 3), steps=False)), start=1):
        turned = "".join(char["text"] for char in page.chars if not char["upright"])
        found = f"{page.extract_text()}\n{turned}"
        sends[number] = {int(sheet) for sheet in re.findall(r"match\s+line,\s+sheet\s+(\d+)", found)}
    assert any(len(to) > 1 for to in sends.values())
    assert all(number in sends[to] for number, others in sends.items() for to in others)


def test_all_parts_can_be_drawn_and_are_named() -> None:
    row = plan_of([new_piece(part, Cell(2 * x, -3, 0)) for x, part in enumerate(Part)])
    cover, level, *_ = texts(pdf_bytes(row))
    for part in Part:
        assert f"{part_name(part)} 1 0 + 1" in cover
        assert part_name(part) in level
    assert "Level \u22123" in level


def test_a_cover_with_many_errors_leaves_out_errors_and_no_instruction(tmp_path: Path) -> None:
    plan = example("fen-ring")
    nowhere = ArmEnd(Cell(40, 64, 40), Heading.NORTH)
    arms = (*plan.arms, *(Arm(name, nowhere, nowhere) for name in ("Quay", "Mill", "Mill")))
    routes = (*plan.routes[:2], Route("Orchard", "Saltern", "Tithe Barn"), Route("Mill", "Orchard"))
    rails = [piece for piece in plan.pieces if piece.part is not Part.SOLID_BLOCK]
    broken = plan_of(rails, plan.details.replace(arms=arms, routes=routes))
    findings = find_all(Junction(broken))
    kinds = {finding.rule for finding in findings if finding.severity == "error"}
    assert len(kinds) >= 5, "fewer would have room"
    export_sheet(broken, tmp_path / "out.pdf")
    cover = texts((tmp_path / "out.pdf").read_bytes())[0]
    for instruction in ("A test cart before the first", "from memory", "in order", "orientation only"):
        assert instruction in " ".join(cover.split()), instruction
