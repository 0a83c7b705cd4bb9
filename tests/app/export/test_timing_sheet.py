"""The timing diagram on paper, read back from the SVG."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.export.timing_sheet import TimingSheet, timing_svg
from app.panels.timing_trace import Trace
from model.grid import Cell
from model.parts import Part
from model.pieces import new_piece
from tests.app.export.test_pages import HOSTILE, SVG, TAGS

pytestmark = pytest.mark.usefixtures("qapp")

GREYS = re.compile(r"#([0-9a-f]{2})\1\1")


def trace(part: Part, x: int, *changes: tuple[int, int], switch: str = "") -> Trace:
    made = Trace(Cell(x, 64, 0), new_piece(part, Cell(x, 64, 0)), switch)
    made.extend(changes)
    return made


def sheet(
    *traces: Trace, first: float = 0, last: float = 60, now: int = 60, title: str = "Mill"
) -> TimingSheet:
    return TimingSheet(traces, {}, first, last, now, title)


def parsed(of: TimingSheet) -> ElementTree.Element:
    return ElementTree.fromstring(timing_svg(of))


def texts(tree: ElementTree.Element) -> list[str]:
    return [element.text or "" for element in tree.iter(f"{SVG}text")]


LEVER = trace(Part.LEVER, -1, (0, 0), (10, 15), (30, 0))
DUST = trace(Part.DUST, 0, (0, 0), (10, 14), (30, 3))


def test_every_row_has_its_name_place_and_figures() -> None:
    shown = texts(parsed(sheet(LEVER, DUST, trace(Part.RAIL, 7, (0, 0), switch="S2"))))
    assert "Mill" in shown
    assert "Timing diagram of the dry run, ticks 0 to 59, 0 s to 2.95 s" in shown
    for word in ("Lever", "−1 64 0", "Dust", "0 64 0", "S2", "14", "3", "10", "0.5 s", "tick", "second"):
        assert word in shown, word


def test_the_paper_is_as_high_as_its_rows_and_as_broad_as_a4() -> None:
    heights = [int(parsed(sheet(*[LEVER] * rows)).attrib["height"].removesuffix("mm")) for rows in (1, 2, 50)]
    assert heights[1] - heights[0] == 10
    assert heights[2] - heights[0] == 490
    assert parsed(sheet(LEVER)).attrib["width"] == "297mm", "the long side of A4 (ISO 216)"


def test_it_is_black_and_grey_and_its_lines_are_two_to_one() -> None:
    """Lines of traces: ISO 128, from memory, asks for two widths of 2:1."""
    svg = timing_svg(sheet(LEVER, DUST)).decode()
    colours = {colour.lower() for colour in re.findall(r'(?:stroke|fill)="(#[0-9a-fA-F]{6})"', svg)}
    assert colours
    assert all(GREYS.fullmatch(colour) for colour in colours), colours
    lines = re.findall(r'stroke="#000000" stroke-opacity="1" stroke-width="([\d.]+)"', svg)
    assert {"0.5", "0.25"} <= set(lines)


def test_only_what_is_asked_for_is_drawn() -> None:
    shown = texts(parsed(sheet(DUST, first=15, last=25)))
    assert "Timing diagram of the dry run, ticks 15 to 25, 0.75 s to 1.25 s" in shown
    assert "14" in shown
    assert not {"3", "0", "30"} & set(shown)


def test_a_long_run_gives_no_longer_file_than_fits_on_the_paper() -> None:
    """Ten times as many changes in the same width are the same picture: one black bar."""

    def size(ticks: int) -> int:
        clock = trace(Part.TORCH, 0, *((tick, 15 * (tick % 2)) for tick in range(ticks)))
        return len(timing_svg(sheet(clock, last=ticks, now=ticks)))

    assert size(12_000) == pytest.approx(size(120_000), rel=0.05)


def test_unsure_ticks_are_marked() -> None:
    plain, unsure = sheet(LEVER), TimingSheet([LEVER], {LEVER.cell: [30]}, 0, 60, 60, "Mill")
    assert "?" not in texts(parsed(plain))
    assert "?" in texts(parsed(unsure))
    assert "stroke-dasharray" in timing_svg(unsure).decode()


@pytest.mark.parametrize("title", HOSTILE)
def test_hostile_titles_are_text(title: str) -> None:
    tree = parsed(sheet(LEVER, title=title))
    assert {element.tag.removeprefix(SVG) for element in tree.iter()} <= TAGS
    shown = "".join(char if char.isprintable() else " " for char in title)
    assert shown.replace(" ", "") in "".join(texts(tree)).replace(" ", "")


@settings(max_examples=30, deadline=None)
@given(st.text(max_size=80))
def test_it_parses_for_any_title(title: str) -> None:
    tree = parsed(sheet(LEVER, title=title))
    assert {element.tag.removeprefix(SVG) for element in tree.iter()} <= TAGS


def test_the_same_run_gives_the_same_bytes() -> None:
    assert timing_svg(sheet(LEVER, DUST)) == timing_svg(sheet(LEVER, DUST))
