"""Lines and letters on paper. All lengths in mm; heights of letters are those of capitals, after ISO 3098."""

from __future__ import annotations

from enum import Enum

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from app.canvas.symbols.lettering import draw_text, elided, em_for, printable, width
from app.theme import Theme

WIDE, NARROW, HAIR = 0.7, 0.35, 0.18
FIELD_NAME, RULER, LEGEND, TEXT, SECTION, TITLE, COVER = 1.5, 1.8, 2.2, 2.5, 3.5, 5.0, 7.0
"""Heights of capitals."""
LEAST_SHARE = 0.6
"""A text that is too long is shrunk to this share of its height before it is cut."""
HEADLINE_FEED = 5.5


class Align(Enum):
    """Where a text stands on its point."""

    LEFT = 0.0
    MIDDLE = 0.5
    RIGHT = 1.0


class Pencil:
    """Draws on a painter whose unit is the mm."""

    def __init__(self, painter: QPainter, theme: Theme) -> None:
        self.painter = painter
        self.theme = theme

    def line(
        self, x1: float, y1: float, x2: float, y2: float, wide: float = NARROW, colour: QColor | None = None
    ) -> None:
        """A straight line with square ends at its end points."""
        self.painter.setPen(QPen(colour or self.theme.ink, wide, c=Qt.PenCapStyle.FlatCap))
        self.painter.drawLine(QPointF(x1, y1), QPointF(x2, y2))

    def box(self, rect: QRectF, wide: float = NARROW, colour: QColor | None = None) -> None:
        """An outline, its middle line on the rectangle."""
        self.painter.setPen(QPen(colour or self.theme.ink, wide, j=Qt.PenJoinStyle.MiterJoin))
        self.painter.setBrush(Qt.BrushStyle.NoBrush)
        self.painter.drawRect(rect)

    def text(
        self,
        x: float,
        baseline: float,
        text: str,
        high: float = TEXT,
        *,
        bold: bool = False,
        align: Align = Align.LEFT,
        widest: float | None = None,
        colour: QColor | None = None,
    ) -> None:
        """A line of text, shrunk and then cut where it is wider than ``widest``."""
        em, shown = fitted(printable(text), em_for(high), bold, widest)
        left = x - align.value * width(shown, em, bold)
        draw_text(self.painter, left, baseline, shown, em, colour or self.theme.ink, bold)


def fitted(text: str, em: float, bold: bool, widest: float | None) -> tuple[float, str]:
    """The em and the text with which it fits."""
    if widest is None:
        return em, text
    wide = width(text, em, bold)
    if wide > widest:
        em *= max(LEAST_SHARE, 0.999 * widest / wide)
    return em, elided(text, em, widest, bold)


def headline(pencil: Pencil, x: float, baseline: float, text: str, widest: float) -> None:
    """Large in one line; a long one smaller in two, as nothing on paper could tell what was cut off."""
    if LEAST_SHARE * width(printable(text), em_for(COVER), True) <= widest:
        pencil.text(x, baseline, text, COVER, bold=True, widest=widest)
        return
    for number, line in enumerate(broken(printable(text), em_for(SECTION), widest, True, 2)):
        pencil.text(x, baseline - COVER / 2 + number * HEADLINE_FEED, line, SECTION, bold=True, widest=widest)


def folded(text: str, em: float, widest: float, bold: bool) -> list[str]:
    """The whole text in as many lines as it takes; a word that is too long for one goes on in the next."""
    pieces = [piece for word in text.split(" ") for piece in _pieces(word, em, widest, bold)]
    return broken(" ".join(pieces), em, widest, bold, len(pieces))


def _pieces(word: str, em: float, widest: float, bold: bool) -> list[str]:
    pieces = [""]
    for letter in word:
        if pieces[-1] and width(pieces[-1] + letter, em, bold) > widest:
            pieces.append("")
        pieces[-1] += letter
    return pieces


def broken(text: str, em: float, widest: float, bold: bool, lines: int) -> list[str]:
    """The text broken at spaces into at most so many lines; what is left over stays in the last one."""
    done: list[str] = []
    current = ""
    for word in filter(None, text.split(" ")):
        longer = f"{current} {word}" if current else word
        if current and width(longer, em, bold) > widest and len(done) < lines - 1:
            done.append(current)
            current = word
        else:
            current = longer
    return [*done, current] if current else done
