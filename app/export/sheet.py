"""From a plan to the files of its build sheet."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable
from functools import partial
from pathlib import Path

from PySide6.QtGui import QGuiApplication, QPainter

from app.canvas.symbols.lettering import printable
from app.export.cover import UNTITLED, cover
from app.export.devices import DrawPage, numbered, pdf, png, svg
from app.export.frame import PageWords, draw_frame
from app.export.level_pages import level_pages
from app.export.page import Job, Page
from app.export.papers import PAPERS
from app.export.pencil import Pencil
from app.export.step_pages import step_pages
from app.export.tables import table_pages
from app.export.washes import sheet_theme, washes_of
from model.files.writer import write_together
from model.plan import Plan
from model.routing.junction import Junction
from model.rules import Finding, find_all
from model.sheet import build_sheet


def export_sheet(
    plan: Plan,
    path: str | os.PathLike[str],
    paper: str = "A4",
    colour: bool = False,
    *,
    steps: bool = True,
) -> list[str]:
    """Write the build sheet of a plan and return the names of the files written.

    ``steps``: whether the pages of the builder's steps are among it. ``path`` ends in ``.pdf``, ``.svg`` or
    ``.png``; the latter two give a numbered file a page. Raises WriteError where a file cannot be written,
    KeyError for another paper than A4 or A3, ValueError for another ending.
    """
    application = QGuiApplication.instance() or _offscreen()
    junction = Junction(plan)
    pages = sheet_pages(junction, find_all(junction), paper, colour, steps=steps)
    files = _files(pages, plan, Path(path), paper, colour)
    del application
    write_together(files)
    return [str(file) for file in files]


def sheet_pages(
    junction: Junction,
    findings: Iterable[Finding],
    paper: str = "A4",
    colour: bool = False,
    *,
    steps: bool = True,
) -> list[DrawPage]:
    """The pages of a build sheet, each to be drawn on a painter whose unit is the mm."""
    sheet = build_sheet(junction, findings)
    washes = washes_of(junction) if colour else ()
    job = Job(sheet, junction.plan.pieces, PAPERS[paper], sheet_theme(colour), washes)
    pages = [cover(job)]
    for level in sheet.levels:
        pages += level_pages(job, level, len(pages) + 1)
    pages += step_pages(job) if steps else []
    pages += table_pages(job)
    return [partial(_draw, job, page, number, len(pages)) for number, page in enumerate(pages, start=1)]


def _draw(job: Job, page: Page, number: int, pages: int, painter: QPainter) -> None:
    pencil = Pencil(painter, job.theme)
    page.draw(pencil)
    title = job.sheet.title or UNTITLED
    words = PageWords(title, page.supplement, page.footer, number, pages)
    draw_frame(pencil, job.paper, words, job.sheet.data)


def _files(
    pages: list[DrawPage], plan: Plan, path: Path, paper: str, colour: bool
) -> dict[str | os.PathLike[str], bytes]:
    title = printable(plan.details.title or UNTITLED)
    ending = path.suffix.lower()
    if ending == ".pdf":
        return {path: pdf(pages, PAPERS[paper], title)}
    makers: dict[str, Callable[[DrawPage], bytes]] = {
        ".svg": lambda page: svg(page, PAPERS[paper], title),
        ".png": lambda page: png(page, PAPERS[paper], sheet_theme(colour).paper),
    }
    if ending not in makers:
        raise ValueError(f"{path.name}: the name must end in .pdf, .svg or .png")
    names = numbered(path, len(pages))
    return {name: makers[ending](page) for name, page in zip(names, pages, strict=True)}


def _offscreen() -> QGuiApplication:
    """An application without a screen, for the command line."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    return QGuiApplication([])
