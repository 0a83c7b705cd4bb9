"""Plans for the sheet, and what stands on the pages read back by programs of other makers."""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import msgspec
import pdfplumber
from pdfplumber.page import Page

from app.export import export_sheet
from model.files.plan_file import parse_plan
from model.plan import Details, Plan, plan_of

MM = 72 / 25.4
"""Points."""
EXAMPLES = ("beacon-wye", "fen-ring", "saltern-junction")


@cache
def example(name: str) -> Plan:
    """A plan of the invented Brinepan Tramway."""
    file = files("resources").joinpath("examples", f"{name}.plan.json")
    return parse_plan(file.read_bytes(), name)


def with_title(plan: Plan, title: str) -> Plan:
    """The plan under another title."""
    return Plan(plan.pieces, plan.details.replace(title=title))


def yard(columns: int, rows: int) -> Plan:
    """Many copies of a junction, too large for one page."""
    one = example("saltern-junction")
    pieces = [
        msgspec.structs.replace(piece, at=piece.at.moved(20 * column, 0, 14 * row))
        for column in range(columns)
        for row in range(rows)
        for piece in one.pieces
    ]
    return plan_of(pieces, Details(title="Yard"))


def pdf_bytes(plan: Plan, paper: str = "A4", colour: bool = False, *, steps: bool = True) -> bytes:
    """The build sheet as PDF, with or without its steps."""
    with TemporaryDirectory() as folder:
        path = Path(folder, "sheet.pdf")
        export_sheet(plan, path, paper, colour, steps=steps)
        return path.read_bytes()


@cache
def example_pdf(name: str, paper: str = "A4", colour: bool = False) -> bytes:
    """The build sheet of an example as PDF, made once."""
    return pdf_bytes(example(name), paper, colour)


@cache
def pages(data: bytes) -> list[Page]:
    """The pages as pdfplumber reads them."""
    return list(pdfplumber.open(BytesIO(data)).pages)


@cache
def texts(data: bytes) -> list[str]:
    """The text of each page."""
    return [page.extract_text() for page in pages(data)]


def cover_text(data: bytes) -> str:
    """The text of the first page, without a look at the others."""
    return str(pdfplumber.open(BytesIO(data), pages=[1]).pages[0].extract_text())


def strokes(page: Page) -> list[dict[str, Any]]:
    """All that is drawn with a pen, one entry a path."""
    return [shape for shape in (*page.lines, *page.curves, *page.rects) if shape["stroke"]]


def width_mm(shape: dict[str, Any]) -> float:
    """Of a stroke, to a hundredth of a mm."""
    return round(shape["linewidth"] / MM, 2)
