"""Pages on a printer, true to scale where its paper is as large as the sheet."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QMarginsF, QSizeF
from PySide6.QtGui import QPageLayout, QPageSize
from PySide6.QtPrintSupport import QPrinter

from app.export.devices import DrawPage, draw_in_mm, painting
from app.export.papers import Paper


def set_up(printer: QPrinter, paper: Paper, title: str) -> None:
    """Ask the printer for the paper of the sheet, and give its work a name."""
    size = QPageSize(QSizeF(paper.width, paper.height), QPageSize.Unit.Millimeter, paper.name)
    # The sheet has its own margins; those of the printer would move and shrink it.
    printer.setFullPage(True)
    printer.setPageLayout(QPageLayout(size, QPageLayout.Orientation.Portrait, QMarginsF()))
    printer.setDocName(title)
    printer.setCreator("Platelayer")


def print_pages(printer: QPrinter, pages: Sequence[DrawPage], paper: Paper) -> None:
    """Draw the pages that the printer is asked for, smaller where its paper is.

    What a page raises ends it, and the printer is told to forget the work.
    """
    first, last = printer.fromPage() or 1, printer.toPage() or len(pages)
    on_paper = printer.pageLayout().fullRect(QPageLayout.Unit.Millimeter)
    share = min(1.0, on_paper.width() / paper.width, on_paper.height() / paper.height)
    with painting(printer) as painter:
        try:
            for number, draw in enumerate(pages[first - 1 : last]):
                if number:
                    printer.newPage()
                draw_in_mm(painter, printer.resolution() * share, draw)
        except Exception:
            printer.abort()
            raise
