"""From a planned network to the files of its departure cards and of the list of readers."""

from __future__ import annotations

import os
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Final

from PySide6.QtGui import QGuiApplication, QPainter

from app.canvas.symbols.lettering import printable
from app.export.card_pages import PAPER, card_pages
from app.export.devices import in_files, offscreen
from app.export.pencil import Pencil
from app.export.reader_pages import reader_pages
from app.export.sheet import OnPage, telling
from app.theme import theme
from app.translation import QT_TR_NOOP, tr
from model.files.writer import write_together
from model.network.cards import departure_cards, reader_signs
from model.network.network import Network
from model.network.result import NetworkPlan

UNTITLED: Final = QT_TR_NOOP("Network without a title")


def export_cards(
    network: Network,
    plan: NetworkPlan,
    path: str | os.PathLike[str],
    on_page: OnPage = lambda _number, _pages: None,
) -> list[str]:
    """Write a departure card for every station, then the list of readers; return the names of the files.

    All on A4. ``path`` ends in ``.pdf``, ``.svg`` or ``.png``; the latter two give a numbered file a page.
    ``on_page`` is told of each page before it is drawn, and may raise to give it up. Raises WriteError where
    a file cannot be written, ValueError for another ending.
    """
    application = QGuiApplication.instance() or offscreen()
    title = network.title or tr(UNTITLED)
    pages: list[Callable[[Pencil], None]] = [*card_pages(departure_cards(network, plan), title)]
    pages += reader_pages(reader_signs(network, plan), title, len(pages))
    drawn = telling([partial(_draw, page) for page in pages], on_page)
    files = in_files(drawn, Path(path), PAPER, printable(title), theme("print").paper)
    del application
    write_together(files)
    return [str(file) for file in files]


def _draw(page: Callable[[Pencil], None], painter: QPainter) -> None:
    page(Pencil(painter, theme("print")))
