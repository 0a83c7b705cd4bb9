"""SVG and PNG pages, and what happens when a file cannot be written."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QGuiApplication, QImage, QPainter, QPen

from app.export import export_sheet
from app.export.devices import svg
from app.export.papers import PAPERS
from model.files.writer import WriteError
from model.grid import Cell, Heading
from model.parts import Part
from model.pieces import new_piece
from model.plan import Arm, ArmEnd, Details, Plan, Route, plan_of
from tests.app.export.sheets import example, example_pdf, pages
from tests.harness.disk import room_for

pytestmark = pytest.mark.usefixtures("qapp")

SVG = "{http://www.w3.org/2000/svg}"
SHAPES = {"path", "polyline", "polygon", "rect", "circle", "ellipse", "text"}
TAGS = SHAPES | {"svg", "title", "desc", "defs", "g"}

HOSTILE = (
    "</text><script>x</script>",
    "<b>&amp;\"'",
    "]]><!--",
    "&#0; &x;",
    'stroke-dasharray="1,2"',
    "<image href='file:///etc/passwd'>",
    "日本 \u202eabc",
    "\U0001f683 e\u0301",
)


def with_names(name: str) -> Plan:
    """A straight track whose every word of a user is the name."""
    pieces = [new_piece(Part.RAIL, Cell(0, 64, z), None) for z in range(4)]
    arm = Arm(name, ArmEnd(Cell(0, 64, 3), Heading.NORTH), ArmEnd(Cell(0, 64, 0), Heading.NORTH))
    return plan_of(pieces, Details(title=name, arms=(arm,), routes=(Route(name, name, name, name),)))


@pytest.mark.parametrize("name", HOSTILE)
def test_svg_parses_and_shows_hostile_names_as_text(name: str, tmp_path: Path) -> None:
    written = export_sheet(with_names(name), tmp_path / "out.svg")
    for file in written:
        tree = ElementTree.fromstring(Path(file).read_bytes())
        assert {element.tag.removeprefix(SVG) for element in tree.iter()} <= TAGS
        shown = [element.text or "" for element in tree.iter(f"{SVG}text")]
        printable = "".join(char if char.isprintable() else " " for char in name)
        assert printable.replace(" ", "") in "".join(shown).replace(" ", "")


NAMES = st.text(
    st.characters(exclude_categories=["Cc", "Cs"], exclude_characters=",/"), min_size=1, max_size=80
)


@settings(max_examples=40, deadline=None)
@given(NAMES)
def test_svg_parses_for_any_name(name: str) -> None:
    with TemporaryDirectory() as folder:
        for file in export_sheet(with_names(name), Path(folder, "out.svg")):
            tree = ElementTree.fromstring(Path(file).read_bytes())
            assert {element.tag.removeprefix(SVG) for element in tree.iter()} <= TAGS


def test_svg_pages_have_true_sizes_and_dashes(tmp_path: Path) -> None:
    """Dashes of a switch's other curve are 0.10 and 0.07 of a cell of 8 mm; SVG counts in its own units."""
    written = export_sheet(example("saltern-junction"), tmp_path / "out.svg")
    assert [Path(file).name for file in written] == [f"out-{n:02}.svg" for n in range(1, len(written) + 1)]
    assert len(written) == len(pages(example_pdf("saltern-junction")))
    page = Path(written[2]).read_text("utf-8")
    assert '<svg width="210mm" height="297mm"' in page
    dashes = re.findall(r'stroke-dasharray="([\d.,]+)" stroke-dashoffset="0" stroke-width="0.35"', page)
    assert dashes
    for found in dashes:
        assert [float(part) for part in found.split(",")] == pytest.approx([0.8, 0.56], abs=0.001)


@pytest.mark.parametrize("width", [0.25, 0.35, 0.5, 0.7, 3])
def test_dashes_and_mitres_of_any_line_are_true(qapp: QGuiApplication, width: float) -> None:
    """SVG 1.1, 11.4, from memory: dashes count in units of the drawing, and the limit is the length of the
    mitre over the width of the line: √2 at a right angle."""
    pen = QPen(QColor("black"), width, c=Qt.PenCapStyle.FlatCap, j=Qt.PenJoinStyle.MiterJoin)
    pen.setDashPattern([2, 1])
    pen.setMiterLimit(1.2)

    def draw(painter: QPainter) -> None:
        painter.setPen(pen)
        painter.drawRect(4, 4, 40, 40)

    written = svg(draw, PAPERS["A4"], "dashes").decode()
    (dashes,) = re.findall(r'stroke-dasharray="([\d.,]+)"', written)
    assert [float(part) for part in dashes.split(",")] == pytest.approx([2 * width, width], rel=1e-3)
    assert min(float(limit) for limit in re.findall(r'miterlimit="([\d.]+)"', written)) >= 2**0.5


@pytest.mark.parametrize(("paper", "mm"), [("A4", (210, 297)), ("A3", (420, 297))])
def test_png_pages_are_true_to_scale(paper: str, mm: tuple[int, int], tmp_path: Path) -> None:
    written = export_sheet(example("beacon-wye"), tmp_path / "out.png", paper)
    assert [Path(file).name for file in written] == [f"out-{n:02}.png" for n in range(1, len(written) + 1)]
    assert len(written) == len(pages(example_pdf("beacon-wye", paper)))
    for file in written:
        image = QImage(file)
        per_mm = image.dotsPerMeterX() / 1000
        assert (image.width() / per_mm, image.height() / per_mm) == pytest.approx(mm, abs=0.2)


def test_unknown_ending_and_paper_are_refused(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="must end in"):
        export_sheet(example("beacon-wye"), tmp_path / "out.txt")
    with pytest.raises(KeyError):
        export_sheet(example("beacon-wye"), tmp_path / "out.pdf", "A5")
    assert not list(tmp_path.iterdir())


FIRST_FILES = [("pdf", "out.pdf"), ("svg", "out-01.svg"), ("png", "out-01.png")]


@pytest.mark.parametrize("eighth", range(8))
@pytest.mark.parametrize(("ending", "name"), FIRST_FILES)
def test_full_disk_is_told_and_the_old_file_stays(
    ending: str, name: str, eighth: int, tmp_path: Path
) -> None:
    """At eight sizes of what is left on the disk."""
    export_sheet(example("beacon-wye"), tmp_path / f"whole.{ending}", steps=False)
    whole = (tmp_path / name.replace("out", "whole")).stat().st_size
    old = tmp_path / name
    old.write_bytes(b"the old sheet")
    before = set(tmp_path.iterdir())
    with room_for(whole * eighth // 8), pytest.raises(WriteError):
        export_sheet(example("beacon-wye"), tmp_path / f"out.{ending}", steps=False)
    assert old.read_bytes() == b"the old sheet"
    assert set(tmp_path.iterdir()) == before


def test_a_disk_full_at_a_later_page_leaves_all_old_pages(tmp_path: Path) -> None:
    pages = [Path(file) for file in export_sheet(example("saltern-junction"), tmp_path / "out.svg")]
    sizes = [page.stat().st_size for page in pages]
    largest = sizes.index(max(sizes))
    assert largest > 0, "a page before it must have been drawn and written"
    for page in pages:
        page.write_bytes(b"the old sheet")
    with room_for(sizes[largest] - 1), pytest.raises(WriteError, match=pages[largest].name):
        export_sheet(example("saltern-junction"), tmp_path / "out.svg")
    assert {page.read_bytes() for page in tmp_path.iterdir()} == {b"the old sheet"}


@pytest.mark.parametrize("ending", ["svg", "png"])
def test_same_plan_gives_the_same_bytes(ending: str, tmp_path: Path) -> None:
    """PDF is left out: it carries the time at which it was made."""
    for name in ("one", "two"):
        export_sheet(example("beacon-wye"), tmp_path / f"{name}.{ending}")
    for one in tmp_path.glob("one-*"):
        assert one.read_bytes() == one.with_name(one.name.replace("one", "two")).read_bytes()


def test_command_line_needs_no_screen(tmp_path: Path) -> None:
    plan = Path(__file__).parents[3] / "resources" / "examples" / "fen-ring.plan.json"
    bare = {key: value for key, value in os.environ.items() if key not in ("DISPLAY", "WAYLAND_DISPLAY")}
    bare.pop("QT_QPA_PLATFORM", None)
    command = [sys.executable, "-m", "app", "sheet", str(plan), "-o", str(tmp_path / "fen.pdf")]
    done = subprocess.run(command, env=bare, capture_output=True, text=True, timeout=60, check=False)
    assert done.returncode == 0, done.stderr
    assert (tmp_path / "fen.pdf").read_bytes().startswith(b"%PDF-")
