"""Hostile names in drawings: an SVG parses, holds nothing but listed shapes, and shows names as text.

Outside checks: the XML reader of the standard library, and SVG 1.1 for what may run or load (scripts, links,
images, foreign objects, styles, event attributes), from memory.
"""

from __future__ import annotations

from typing import Final
from xml.etree import ElementTree

import pytest
from PySide6.QtGui import QPainter

from app.canvas.symbols.lettering import printable
from app.export.devices import svg
from app.export.papers import PAPERS
from app.export.pencil import TEXT, Pencil
from app.export.timing_sheet import TimingSheet, timing_svg
from app.panels.timing_trace import Trace
from app.theme import theme
from model.grid import Cell
from model.parts import Part
from model.pieces import new_piece
from tests.harness.names import hostile_names

pytestmark = pytest.mark.usefixtures("qapp")

SVG: Final = "{http://www.w3.org/2000/svg}"
TAGS: Final = {
    "svg", "title", "desc", "defs", "g", "path", "polyline", "polygon", "rect", "circle", "ellipse", "text",
}  # fmt: skip
ATTRIBUTES: Final = {
    "width", "height", "viewBox", "version", "baseProfile", "fill", "fill-opacity", "fill-rule", "stroke",
    "stroke-opacity", "stroke-width", "stroke-linecap", "stroke-linejoin", "stroke-miterlimit", "opacity",
    "stroke-dasharray", "stroke-dashoffset", "transform", "font-family", "font-size", "font-weight",
    "font-style", "d", "points", "x", "y", "cx", "cy", "r", "rx", "ry", "vector-effect", "text-anchor",
    "{http://www.w3.org/XML/1998/namespace}space",
}  # fmt: skip
A_PAGE: Final = 50


def problems(written: bytes) -> set[str]:
    """Tags and attributes that no drawing needs; raises ParseError where it is no XML."""
    tree = ElementTree.fromstring(written)
    tags = {element.tag.removeprefix(SVG) for element in tree.iter()} - TAGS
    keys = {key for element in tree.iter() for key in element.attrib} - ATTRIBUTES
    return tags | keys


def shown(written: bytes) -> str:
    """All text of a drawing."""
    return "".join(element.text or "" for element in ElementTree.fromstring(written).iter(f"{SVG}text"))


def page_of(names: list[str]) -> bytes:
    """The names one below the other, as every page writes its words; the first is the title, too."""

    def draw(painter: QPainter) -> None:
        pencil = Pencil(painter, theme("print"))
        for number, name in enumerate(names):
            pencil.text(5, 5 + 5 * number, name, TEXT)

    return svg(draw, PAPERS["A4"], printable(names[0]))


def check(count: int, seed: int) -> None:
    names = hostile_names(count, seed, as_arms=True)
    for start in range(0, count, A_PAGE):
        some = names[start : start + A_PAGE]
        written = page_of(some)
        assert not problems(written)
        words = shown(written)
        assert all(as_shown(name) in words.replace(" ", "") for name in some)


def as_shown(name: str) -> str:
    """What cannot be seen gives way to a space, and spaces may be lost at ends."""
    return "".join(char if char.isprintable() else " " for char in name).replace(" ", "")


def test_2_000_names_are_text_and_nothing_else() -> None:
    check(2_000, 11)


@pytest.mark.slow
@pytest.mark.timeout(900)
def test_20_000_names_are_text_and_nothing_else() -> None:
    check(20_000, 12)


def test_titles_of_timing_diagrams_are_text() -> None:
    trace = Trace(Cell(0, 64, 0), new_piece(Part.LEVER, Cell(0, 64, 0)), "")
    trace.extend([(0, 0), (10, 15)])
    for name in hostile_names(60, 13):
        assert not problems(timing_svg(TimingSheet([trace], {}, 0, 60, 60, name)))


@pytest.mark.parametrize(
    "written",
    [
        '<svg xmlns="http://www.w3.org/2000/svg"><script>1</script></svg>',
        '<svg xmlns="http://www.w3.org/2000/svg"><image href="file:///etc/passwd"/></svg>',
        '<svg xmlns="http://www.w3.org/2000/svg"><rect onclick="1"/></svg>',
        '<svg xmlns="http://www.w3.org/2000/svg"><rect style="fill:url(http://example.invalid)"/></svg>',
    ],
)
def test_what_could_run_or_load_is_seen(written: str) -> None:
    """Controls that must fail."""
    assert problems(written.encode())


def test_a_name_that_is_written_raw_is_seen() -> None:
    """The control that must fail: a writer that puts names between tags as they are."""
    with pytest.raises((ElementTree.ParseError, AssertionError)):
        write_raw()


def write_raw() -> None:
    for name in hostile_names(20, 1):
        assert not problems(f'<svg xmlns="http://www.w3.org/2000/svg"><text>{name}</text></svg>'.encode())
