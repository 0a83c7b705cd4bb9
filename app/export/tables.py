"""The pages of the control table and the test checklist."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from PySide6.QtCore import QRectF

from app.export.checklist import checklist_tables
from app.export.control_table import control_tables
from app.export.flow import Placed, draw_strips, paginate
from app.export.page import Job, Page
from app.translation import tr

PADDING: Final = 3.0


def table_pages(job: Job) -> list[Page]:
    """Control table, then checklist; on one page where both have room."""
    area = job.paper.body.adjusted(PADDING, PADDING, -PADDING, -PADDING)
    control = control_tables(job.sheet.control, area.width())
    wanted = bool(job.sheet.control.rows)
    tables = [*control, *checklist_tables(job.sheet.checklist, area.width(), wanted=wanted)]
    pages = paginate(tables, area.height())
    words = _supplements(len(pages))
    return [_page(job, placed, area, supplement) for placed, supplement in zip(pages, words, strict=True)]


def _page(job: Job, placed: list[Placed], area: QRectF, supplement: str) -> Page:
    return Page(supplement, job.footer(""), lambda pencil: draw_strips(pencil, placed, area))


def _supplements(pages: int) -> Iterator[str]:
    title = tr("Control table and test checklist")
    for number in range(1, pages + 1):
        yield (
            title
            if pages == 1
            else tr("{title} · part {number} of {pages}", title=title, number=number, pages=pages)
        )
