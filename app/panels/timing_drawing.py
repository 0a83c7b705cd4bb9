"""How traces and their axis of time are drawn, on screen and on paper alike.

What is on is a wide line over a wash, what is off a narrow line, so that it reads without colour.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from app.canvas.symbols.lettering import capital, draw_text, width
from app.canvas.symbols.look import Look
from app.icons import rest_look
from app.panels.timing_axis import TimeAxis
from app.panels.timing_trace import FULL, Span, Trace, seconds
from app.theme import Theme
from model.pieces import Piece

HIGH_ENOUGH = 1.5
"""Of the height of capitals: what is higher has room for a figure inside."""


@dataclass(frozen=True)
class Manner:
    """The measures of a diagram, in the painter's units."""

    theme: Theme
    narrow: float
    """A wide line has twice this width."""
    em: float
    """Of figures."""
    least: float
    """Several changes within as much fall together."""
    snaps: bool
    """Whether lines keep to whole pixels."""

    @property
    def wide(self) -> float:
        """Of what is on: 2:1 after ISO 128 (from memory)."""
        return 2 * self.narrow

    def pen(self, colour: QColor, line: float) -> QPen:
        """A pen with square ends."""
        return QPen(colour, line, c=Qt.PenCapStyle.FlatCap)

    def at(self, place: float, line: float) -> float:
        """The middle of a line that was meant there, its edges on whole pixels on screen."""
        return round(place - line / 2) + line / 2 if self.snaps else place


class _Row:
    """One trace in its box; gathers what is drawn alike, so that many changes cost few calls."""

    def __init__(self, manner: Manner, box: QRectF, axis: TimeAxis, steps: bool) -> None:
        self._manner, self._axis, self._steps = manner, axis, steps
        self._left, self._right = box.left(), box.left() + axis.width
        self._y = [
            manner.at(box.bottom() - value / FULL * box.height(), manner.wide) for value in range(FULL + 1)
        ]
        # Figures have one width, so that it need not be measured for each.
        self._widths = [width("0" * figures, manner.em) for figures in range(3)]
        self.washes: list[QRectF] = []
        self.on: list[QLineF] = []
        self.off: list[QLineF] = []
        self.edges: list[QLineF] = []
        self.bands: list[QRectF] = []
        self.figures: list[tuple[QPointF, str]] = []

    def add(self, span: Span, before: int | None) -> None:
        """A stretch of time; ``before`` is what was read just before it."""
        start, end, low, value = span
        left, right, y = self._x(start), self._x(end), self._y[value]
        if low != value:
            self.bands.append(QRectF(left, y, right - left, self._y[low] - y))
            return
        if before is not None and before != value:
            self.edges.append(QLineF(left, self._y[before], left, y))
        if value:
            self.washes.append(QRectF(left, y, right - left, self._y[0] - y))
            self.on.append(QLineF(left, y, right, y))
        else:
            self.off.append(QLineF(left, y, right, y))
        if self._steps:
            self._add_figure(left, right, y, str(value))

    def paint(self, painter: QPainter) -> None:
        """All that was added."""
        manner, theme = self._manner, self._manner.theme
        painter.setPen(Qt.PenStyle.NoPen)
        wash = QColor(theme.live)
        wash.setAlphaF(theme.wash)
        painter.setBrush(wash)
        painter.drawRects(self.washes)
        painter.setBrush(theme.live)
        painter.drawRects(self.bands)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for lines, colour, line in (
            (self.off, theme.ink2, manner.narrow),
            (self.edges, theme.live, manner.narrow),
            (self.on, theme.live, manner.wide),
        ):
            painter.setPen(manner.pen(colour, line))
            painter.drawLines(lines)
        for at, figure in self.figures:
            draw_text(painter, at.x(), at.y(), figure, manner.em, theme.ink)

    def _add_figure(self, left: float, right: float, y: float, figure: str) -> None:
        manner = self._manner
        em, gap = manner.em, 2 * manner.wide
        if right - left < 2 * gap + self._widths[len(figure)]:
            return
        high = capital(em)
        bottom = self._y[0]
        inside = bottom - y > high * HIGH_ENOUGH + manner.wide
        baseline = (y + bottom + high) / 2 + manner.narrow / 2 if inside else y - manner.wide
        self.figures.append((QPointF(left + gap, baseline), figure))

    def _x(self, tick: float) -> float:
        x = self._left + (tick - self._axis.first) * self._axis.scale
        return self._manner.at(min(max(x, self._left), self._right), self._manner.narrow)


def symbol_of(piece: Piece) -> Look:
    """A probed part as it stands in tables, with what is set on it."""
    return replace(rest_look(piece.part), delay=piece.delay, mode=piece.mode)


def draw_trace(
    painter: QPainter, manner: Manner, box: QRectF, axis: TimeAxis, trace: Trace, now: int
) -> None:
    """A trace in its box as far as it was read, that is up to the tick ``now``, which is still to come."""
    row = _Row(manner, box, axis, trace.has_strengths)
    before: int | None = None
    for span in trace.spans(axis.first, min(axis.last, now), manner.least / axis.scale):
        row.add(span, before)
        before = span.high if span.low == span.high else None
    row.paint(painter)


def draw_unsure(painter: QPainter, manner: Manner, box: QRectF, axis: TimeAxis, ticks: Iterable[int]) -> None:
    """A dashed line and a question mark where the order of updates inside the tick decides what comes."""
    pen = manner.pen(manner.theme.ink, manner.narrow)
    pen.setDashPattern([3, 2])
    for tick in ticks:
        if axis.first <= tick < axis.last:
            x = box.left() + manner.at(axis.x(tick), manner.narrow)
            painter.setPen(pen)
            painter.drawLine(QPointF(x, box.top()), QPointF(x, box.bottom()))
            baseline = box.top() + capital(manner.em, True)
            left = x - width("?", manner.em, True) - manner.wide
            draw_text(painter, left, baseline, "?", manner.em, manner.theme.ink, bold=True)


def draw_axis(
    painter: QPainter, manner: Manner, box: QRectF, axis: TimeAxis, apart: float, down_to: float
) -> None:
    """Marks with their tick above and the seconds below, and a line of the grid down from each."""
    theme, em = manner.theme, manner.em
    line_high = box.height() / 2
    for tick in axis.marks(apart):
        x = box.left() + manner.at(axis.x(tick), manner.narrow)
        painter.setPen(manner.pen(theme.grid4, manner.narrow))
        painter.drawLine(QPointF(x, box.bottom()), QPointF(x, down_to))
        painter.setPen(manner.pen(theme.ink2, manner.narrow))
        painter.drawLine(QPointF(x, box.bottom() - 2 * manner.wide), QPointF(x, box.bottom()))
        for row, (figure, colour) in enumerate(((str(tick), theme.ink), (seconds(tick), theme.ink2))):
            wide = width(figure, em)
            left = box.left() if tick == 0 else x - wide / 2
            if box.left() <= left <= box.right() - wide:
                baseline = box.top() + row * line_high + capital(em) + manner.wide
                draw_text(painter, left, baseline, figure, em, colour)
