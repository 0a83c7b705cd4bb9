"""Letters of any height on any painter: the system's sans, measured once at a large size and scaled.

Scaling the painter instead of the font keeps letters true to size where the unit is a mm, and in PDF and SVG
they stay text that can be searched.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final

from PySide6.QtCore import QPointF
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter

MEASURED_AT = 100
"""px of the em at which letters are measured."""
ISOLATES: Final = re.compile("[\u2068\u2069]")
"""What ``model.wording`` puts around names that turn the way of writing."""


@lru_cache(maxsize=4)
def measured_font(bold: bool) -> QFont:
    """The sans at the size at which it is measured, figures of one width where the font has them."""
    font = QFont()
    font.setStyleHint(QFont.StyleHint.SansSerif)
    font.setFamilies(["DejaVu Sans", "sans-serif"])
    font.setPixelSize(MEASURED_AT)
    font.setBold(bold)
    return font


@lru_cache(maxsize=4)
def metrics(bold: bool) -> QFontMetricsF:
    """The measures of that font."""
    return QFontMetricsF(measured_font(bold))


def width(text: str, em: float, bold: bool = False) -> float:
    """How wide a text is when its em is ``em``, in the unit of ``em``."""
    return metrics(bold).horizontalAdvance(text) * em / MEASURED_AT


def capital(em: float, bold: bool = False) -> float:
    """The height of capitals for an em."""
    return metrics(bold).capHeight() * em / MEASURED_AT


def em_for(capital_height: float) -> float:
    """The em that gives capitals of a height."""
    return capital_height * MEASURED_AT / metrics(False).capHeight()


def printable(text: str) -> str:
    """The text on one line, without characters that PDF and SVG cannot hold or that turn others round."""
    # What keeps names apart on a screen leaves no gaps beside them here.
    return "".join(char if char.isprintable() else " " for char in ISOLATES.sub("", text))


def elided(text: str, em: float, widest: float, bold: bool = False) -> str:
    """The text cut to a width, with an ellipsis where something was cut."""
    if width(text, em, bold) <= widest:
        return text
    kept = text
    while kept and width(kept.rstrip() + "…", em, bold) > widest:
        kept = kept[:-1]
    return kept.rstrip() + "…"


def draw_text(
    painter: QPainter, left: float, baseline: float, text: str, em: float, colour: QColor, bold: bool = False
) -> None:
    """The text from a point on its baseline, in the painter's units."""
    if em <= 0 or not text:
        return
    painter.save()
    painter.translate(left, baseline)
    painter.scale(em / MEASURED_AT, em / MEASURED_AT)
    painter.setFont(measured_font(bold))
    painter.setPen(colour)
    painter.drawText(QPointF(0, 0), text)
    painter.restore()


def draw_centred(
    painter: QPainter,
    centre: QPointF,
    text: str,
    em: float,
    colour: QColor,
    *,
    bold: bool = False,
    widest: float | None = None,
) -> None:
    """The text about a point, by the height of its capitals; shrunk to be no wider than ``widest``."""
    wide = width(text, em, bold)
    if widest is not None and wide > widest:
        em, wide = em * widest / wide, widest
    draw_text(painter, centre.x() - wide / 2, centre.y() + capital(em, bold) / 2, text, em, colour, bold)
