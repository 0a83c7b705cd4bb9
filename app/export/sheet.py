"""From a plan to the files of its build sheet."""

from __future__ import annotations

import os
from collections.abc import Callable, Generator, Sequence
from functools import partial
from pathlib import Path
from typing import NamedTuple

from PySide6.QtGui import QGuiApplication, QPainter

from app.canvas.symbols.lettering import printable
from app.export.cover import UNTITLED, cover
from app.export.depth_page import depth_pages
from app.export.devices import DrawPage, in_files, offscreen
from app.export.frame import PageWords, draw_frame
from app.export.level_pages import level_pages
from app.export.page import Job, Page
from app.export.papers import PAPERS
from app.export.pencil import Pencil
from app.export.step_pages import step_pages
from app.export.tables import table_pages
from app.export.washes import sheet_theme, washes_of
from app.translation import tr
from model.files.writer import write_together
from model.plan import Plan
from model.progress import Progress, result_of
from model.routing.junction import Junction
from model.rules import find_all
from model.sheet import Sheet, build_sheet

OnPage = Callable[[int, int], None]
"""Is told before each page which it is, and of how many. What it raises ends all; nothing is written then."""

OnLaying = Callable[[Progress], None]
"""Is told how far the pages are laid out. What it raises ends all, too."""


class Worked(NamedTuple):
    """What the build sheet of a plan says; nothing is drawn yet."""

    junction: Junction
    sheet: Sheet


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
    return write_sheet(result_of(working_out(plan)), path, paper, colour, steps=steps)


def working_out(plan: Plan) -> Generator[None, None, Worked]:
    """What the sheet of a plan says, in steps between which it may be dropped. Needs no screen."""
    junction = Junction(plan)
    findings = find_all(junction)
    yield None
    return Worked(junction, build_sheet(junction, findings))


def write_sheet(
    worked: Worked,
    path: str | os.PathLike[str],
    paper: str = "A4",
    colour: bool = False,
    *,
    steps: bool = True,
    on_page: OnPage = lambda _number, _pages: None,
    on_laying: OnLaying = lambda _progress: None,
) -> list[str]:
    """Draw and write what was worked out; as ``export_sheet``."""
    application = QGuiApplication.instance() or offscreen()
    pages = laid_out(worked, paper, colour, steps=steps, on_laying=on_laying)
    files = in_files(
        telling(pages, on_page), Path(path), PAPERS[paper], title_of(worked), sheet_theme(colour).paper
    )
    del application
    write_together(files)
    return [str(file) for file in files]


def title_of(worked: Worked) -> str:
    """What the file, or the work of a printer, is called."""
    return printable(worked.junction.plan.details.title or tr(UNTITLED))


def telling(pages: Sequence[DrawPage], on_page: OnPage) -> list[DrawPage]:
    """The pages, each of which tells which it is before it is drawn."""
    return [
        partial(_tell_and_draw, on_page, page, len(pages), number) for number, page in enumerate(pages, 1)
    ]


def laid_out(worked: Worked, paper: str, colour: bool, *, steps: bool, on_laying: OnLaying) -> list[DrawPage]:
    """The pages, as ``sheet_pages`` gives them; what ``on_laying`` raises ends it."""
    laying = sheet_pages(worked, paper, colour, steps=steps)
    while True:
        try:
            on_laying(next(laying))
        except StopIteration as end:
            pages: list[DrawPage] = end.value
            return pages


def sheet_pages(
    worked: Worked, paper: str, colour: bool, *, steps: bool
) -> Generator[Progress, None, list[DrawPage]]:
    """The pages, laid out in steps, each to be drawn on a painter whose unit is the mm."""
    junction, sheet = worked
    washes = washes_of(junction) if colour else ()
    job = Job(sheet, junction.plan.pieces, PAPERS[paper], sheet_theme(colour), washes)
    pages = [cover(job)]
    for done, level in enumerate(sheet.levels):
        yield Progress(tr("Laying out the levels"), done, len(sheet.levels))
        pages += level_pages(job, level, len(pages) + 1)
    pages += depth_pages(job)
    if steps:
        pages += yield from step_pages(job)
    pages += table_pages(job)
    return [partial(_draw, job, page, number, len(pages)) for number, page in enumerate(pages, start=1)]


def _draw(job: Job, page: Page, number: int, pages: int, painter: QPainter) -> None:
    pencil = Pencil(painter, job.theme)
    page.draw(pencil)
    title = job.sheet.title or tr(UNTITLED)
    words = PageWords(title, page.supplement, page.footer, number, pages)
    draw_frame(pencil, job.paper, words, job.sheet.data)


def _tell_and_draw(on_page: OnPage, draw: DrawPage, pages: int, number: int, painter: QPainter) -> None:
    on_page(number, pages)
    draw(painter)
