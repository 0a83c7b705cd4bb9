"""Pages to bytes, all in memory: one PDF, or an SVG or PNG a page; one writer writes them."""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Final

from PySide6.QtCore import QBuffer, QIODevice, QMarginsF, QRectF, QSize, QSizeF
from PySide6.QtGui import (
    QColor,
    QGuiApplication,
    QImage,
    QPageLayout,
    QPageSize,
    QPaintDevice,
    QPainter,
    QPdfWriter,
)
from PySide6.QtSvg import QSvgGenerator

from app.export.papers import Paper
from app.numbered_pages import numbered

MM_PER_INCH: Final = 25.4
PDF_DPI: Final = 1200
PNG_DPI: Final = 200
SVG_DPI: Final = 254
"""A tenth of a mm is one unit, so that sizes in mm are whole numbers."""

QT_DASHES: Final = re.compile(
    rb'stroke-dasharray="(?P<dashes>[\d.,]+)"'
    rb'(?P<between> stroke-dashoffset="0" stroke-width=")(?P<width>[\d.]+)"'
)
"""Quotation marks in names are written as ``&quot;``, so that no name can look like these."""

QT_MITER: Final = re.compile(rb'stroke-miterlimit="(?P<limit>[\d.]+)"')

DrawPage = Callable[[QPainter], None]
"""Draws a page on a painter whose unit is the mm."""


def pdf(pages: Sequence[DrawPage], paper: Paper, title: str) -> bytes:
    """One PDF with all pages."""
    buffer = _open_buffer()
    writer = QPdfWriter(buffer)
    writer.setResolution(PDF_DPI)
    writer.setTitle(title)
    writer.setCreator("Platelayer")
    size = QPageSize(QSizeF(paper.width, paper.height), QPageSize.Unit.Millimeter, paper.name)
    writer.setPageLayout(QPageLayout(size, QPageLayout.Orientation.Portrait, QMarginsF()))
    with painting(writer) as painter:
        for number, draw in enumerate(pages):
            if number:
                writer.newPage()
            draw_in_mm(painter, PDF_DPI, draw)
    return _bytes_of(buffer)


def svg(page: DrawPage, paper: Paper, title: str) -> bytes:
    """One page as SVG, its size in mm."""
    buffer = _open_buffer()
    generator = QSvgGenerator()
    generator.setOutputDevice(buffer)
    generator.setResolution(SVG_DPI)
    size = QSize(round(paper.width * 10), round(paper.height * 10))
    generator.setSize(size)
    generator.setViewBox(QRectF(0, 0, size.width(), size.height()))
    generator.setTitle(title)
    with painting(generator) as painter:
        draw_in_mm(painter, SVG_DPI, page)
    return QT_MITER.sub(_true_miter, QT_DASHES.sub(_true_dashes, _bytes_of(buffer)))


def _true_dashes(written: re.Match[bytes]) -> bytes:
    """Qt counts dashes in widths of the line, but leaves them so where it rounds the width to none."""
    width = float(written["width"])
    if width >= 0.5:
        return written[0]
    dashes = ",".join(f"{float(dash) * width:g}" for dash in written["dashes"].split(b","))
    return b'stroke-dasharray="%s"%s%s"' % (dashes.encode(), written["between"], written["width"])


def _true_miter(written: re.Match[bytes]) -> bytes:
    """Qt measures a mitre from the middle of the line, SVG from its inner corner: twice as long."""
    return b'stroke-miterlimit="%g"' % (2 * float(written["limit"]))


def picture(page: DrawPage, paper: Paper, ground: QColor, per_mm: float) -> QImage:
    """One page as pixels, so many a mm."""
    image = QImage(round(paper.width * per_mm), round(paper.height * per_mm), QImage.Format.Format_RGB32)
    image.setDotsPerMeterX(round(1000 * per_mm))
    image.setDotsPerMeterY(round(1000 * per_mm))
    image.fill(ground)
    with painting(image) as painter:
        draw_in_mm(painter, per_mm * MM_PER_INCH, page)
    return image


def png(page: DrawPage, paper: Paper, ground: QColor) -> bytes:
    """One page as a picture."""
    buffer = _open_buffer()
    picture(page, paper, ground, PNG_DPI / MM_PER_INCH).save(buffer, "PNG")  # type: ignore[call-overload]
    return _bytes_of(buffer)


def in_files(
    pages: Sequence[DrawPage], path: Path, paper: Paper, title: str, ground: QColor
) -> dict[str | os.PathLike[str], bytes]:
    """What to write: one PDF, or numbered SVG or PNG files. Raises ValueError for another ending."""
    ending = path.suffix.lower()
    if ending == ".pdf":
        return {path: pdf(pages, paper, title)}
    makers: dict[str, Callable[[DrawPage], bytes]] = {
        ".svg": lambda page: svg(page, paper, title),
        ".png": lambda page: png(page, paper, ground),
    }
    if ending not in makers:
        raise ValueError(f"{path.name}: the name must end in .pdf, .svg or .png")
    names = numbered(path, len(pages))
    return {name: makers[ending](page) for name, page in zip(names, pages, strict=True)}


def offscreen() -> QGuiApplication:
    """An application without a screen, for the command line; drawing needs one."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    return QGuiApplication([])


@contextmanager
def painting(device: QPaintDevice) -> Iterator[QPainter]:
    """Ends the painter also where the drawing is given up: it must not outlive what it draws on."""
    painter = QPainter(device)
    try:
        yield painter
    finally:
        painter.end()


def draw_in_mm(painter: QPainter, dpi: float, draw: DrawPage) -> None:
    """Draw a page where a painter's unit is a dot, so many an inch."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    painter.scale(dpi / MM_PER_INCH, dpi / MM_PER_INCH)
    try:
        draw(painter)
    finally:
        painter.restore()


def _open_buffer() -> QBuffer:
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    return buffer


def _bytes_of(buffer: QBuffer) -> bytes:
    buffer.close()
    return bytes(buffer.data().data())
