"""Paints the timing diagram on the screen: names, axis, traces, and the line of the cursor."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QPoint, QRect, QRectF, QSize
from PySide6.QtGui import QFontMetrics, QPainter

from app import theme as themes
from app.canvas.symbols import symbol_pixmap
from app.panels.look import font
from app.panels.rows import BAR, paint_text
from app.panels.timing_axis import BETWEEN_MARKS
from app.panels.timing_drawing import Manner, draw_axis, draw_trace, draw_unsure, symbol_of
from app.panels.timing_trace import seconds
from app.translation import tr

if TYPE_CHECKING:
    from app.panels.timing_view import TimingView

AXIS: Final = 34
"""Height of the axis, in pixels; so are all lengths here."""
ROW: Final = 34
NAMES: Final = 168
"""Width of the column of names."""
ABOVE, BELOW = 6, 7
"""Around a trace within its row."""
SYMBOL: Final = 24
FIGURE: Final = 11.0
TOO_CLOSE: Final = 2.0
"""Several changes within as much fall together."""
LEFT: Final = 10
TEXT_LEFT: Final = 40


def paint_diagram(painter: QPainter, view: TimingView) -> None:
    """What is seen of a view's rows, on the painter of its viewport."""
    _Diagram(painter, view).paint()


class _Diagram:
    def __init__(self, painter: QPainter, view: TimingView) -> None:
        self._painter = painter
        self._view = view
        self._theme = themes.current()
        self._manner = Manner(self._theme, narrow=1, em=FIGURE, least=TOO_CLOSE, snaps=True)
        self._size: QSize = view.viewport().size()

    def paint(self) -> None:
        painter, theme, size = self._painter, self._theme, self._size
        painter.fillRect(0, 0, size.width(), size.height(), theme.panel)
        painter.fillRect(NAMES, AXIS, size.width() - NAMES, size.height() - AXIS, theme.paper)
        self._paint_axis()
        painter.save()
        painter.setClipRect(QRect(0, AXIS, size.width(), size.height() - AXIS))
        self._paint_rows()
        painter.fillRect(NAMES - 1, AXIS, 1, size.height() - AXIS, theme.edge)
        painter.restore()
        self._paint_cursor()

    def _paint_axis(self) -> None:
        """Figures and marks, and at the left what the two lines of figures count."""
        painter, size, axis = self._painter, self._size, self._view.axis
        painter.save()
        painter.setClipRect(QRect(NAMES, 0, size.width() - NAMES, size.height()))
        box = QRectF(NAMES, 0, axis.width, AXIS - 1)
        draw_axis(painter, self._manner, box, axis, BETWEEN_MARKS, size.height())
        painter.restore()
        for row, word in enumerate((tr("tick"), tr("second"))):
            paint_text(
                painter, self._line(LEFT, row, NAMES - 20), word, font(11), self._theme.ink2, right=True
            )
        painter.fillRect(0, AXIS - 1, size.width(), 1, self._theme.edge)

    def _paint_rows(self) -> None:
        scrolled = self._view.verticalScrollBar().value()
        for row in range(scrolled // ROW, len(self._view.traces)):
            top = AXIS - scrolled + row * ROW
            if top >= self._size.height():
                break
            self._paint_name(row, top)
            self._paint_trace(row, top)
            self._painter.fillRect(0, top + ROW - 1, self._size.width(), 1, self._theme.edge)

    def _paint_name(self, row: int, top: int) -> None:
        """Symbol, name and place, and below in words what is read where the cursor stands."""
        painter, theme, view = self._painter, self._theme, self._view
        trace, is_chosen = view.traces[row], row == view.row
        if is_chosen:
            painter.fillRect(0, top, NAMES, ROW, theme.pickrow)
            painter.fillRect(0, top, BAR, ROW, theme.pickbar)
        if trace.piece is not None:
            symbol = symbol_pixmap(symbol_of(trace.piece), SYMBOL, view.devicePixelRatioF(), theme)
            painter.drawPixmap(QPoint(LEFT, top + 4), symbol)
        line = QRect(TEXT_LEFT, top + 2, NAMES - TEXT_LEFT - 6, 16)
        place = str(trace.cell)
        wide = QFontMetrics(font(11)).horizontalAdvance(place)
        paint_text(painter, line.adjusted(0, 0, -wide - 6, 0), trace.name, font(12, is_chosen), theme.ink)
        paint_text(painter, line, place, font(11), theme.ink2, right=True)
        said = trace.words(trace.value_at(view.tick))
        paint_text(painter, line.translated(0, 15), said, font(11), theme.ink2)

    def _paint_trace(self, row: int, top: int) -> None:
        painter, view = self._painter, self._view
        trace, axis = view.traces[row], view.axis
        box = QRectF(NAMES, top + ABOVE, axis.width, ROW - ABOVE - BELOW)
        painter.save()
        painter.setClipRect(QRect(NAMES, max(top, AXIS), self._size.width() - NAMES, ROW))
        draw_trace(painter, self._manner, box, axis, trace, view.now)
        draw_unsure(painter, self._manner, box, axis, view.unsure.get(trace.cell, ()))
        painter.restore()

    def _paint_cursor(self) -> None:
        """A line through all rows, its tick and second in reverse, as the rulers have it."""
        painter, theme, view = self._painter, self._theme, self._view
        middle = view.axis.middle(view.tick)
        if not view.now or not 0 <= middle <= view.axis.width:
            return
        x = NAMES + round(middle)
        painter.fillRect(x - 1, AXIS, 2, self._size.height() - AXIS, theme.ink)
        figures = (str(view.tick), seconds(view.tick))
        wide = max(QFontMetrics(font(11, True)).horizontalAdvance(figure) for figure in figures) + 8
        left = min(max(x - wide // 2, NAMES), self._size.width() - wide)
        painter.fillRect(left, 0, wide, AXIS, theme.ink)
        for row, figure in enumerate(figures):
            paint_text(painter, self._line(left + 4, row, wide - 8), figure, font(11, row == 0), theme.paper)

    @staticmethod
    def _line(left: int, row: int, width: int) -> QRect:
        """One of the two lines of the axis."""
        return QRect(left, 1 + row * (AXIS // 2 - 1), width, AXIS // 2 - 1)
