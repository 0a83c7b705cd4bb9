"""One of the eight orientations: a small plan and how many inverters it needs."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QWidget

from app import theme as themes
from app.canvas.symbols import draw_mirror_mark
from app.panels.look import font
from app.panels.mini_plan import NOTHING, MiniPlan, paint_mini_plan
from app.panels.rows import paint_text
from app.theme import Theme
from app.translation import QT_TR_NOOP, tr
from model.grid import Turn
from model.routing.orientations import Orientation

HEIGHT: Final = 104
CIRCLE: Final = 3.2
MOST_CIRCLES: Final = 5
"""Above this the figure alone says how many."""


def tile_words(orientation: Orientation | None) -> str:
    """What stands under the small plan."""
    if orientation is None:
        return "…"
    if not orientation.buildable or orientation.inverters is None:
        return tr("not served")
    return tr("none") if orientation.inverters == 0 else str(orientation.inverters)


class OrientationTile(QAbstractButton):
    """Choosing it turns the plan."""

    def __init__(self, turn: Turn, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.turn = turn
        self._orientation: Orientation | None = None
        self._plan = NOTHING
        self._is_old = True
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setFixedHeight(HEIGHT)
        self._say()

    def show_orientation(self, orientation: Orientation | None, plan: MiniPlan | None, is_old: bool) -> None:
        """Show what was worked out, old results grey; without a small plan the one before stays."""
        if plan is not None and plan != self._plan:
            self._plan = plan
            self.update()
        if (orientation, is_old) == (self._orientation, self._is_old):
            return
        self._orientation, self._is_old = orientation, is_old
        self._say()
        self.update()

    def _say(self) -> None:
        said = self._sentence()
        self.setAccessibleName(said)
        self.setToolTip(said)

    def _sentence(self) -> str:
        plain, mirrored = QT_TR_NOOP("Orientation {number}"), QT_TR_NOOP("Orientation {number}, mirrored")
        name = tr(mirrored if self.turn.mirror else plain, number=self.turn.number)
        orientation = self._orientation
        if orientation is None:
            return tr("{name}: not worked out yet", name=name)
        if not orientation.buildable or orientation.inverters is None:
            return tr("{name}: no choice of signals serves all wanted routes", name=name)
        if not orientation.inverters:
            return tr("{name}: no inverter needed", name=name)
        needed = tr("%n inverter(s)", "", orientation.inverters)
        return tr("{name}: {inverters} needed", name=name, inverters=needed)

    @property
    def _is_present(self) -> bool:
        return self.turn == Turn()

    def paintEvent(self, event: QPaintEvent) -> None:
        theme = themes.current()
        painter = QPainter(self)
        words = tile_words(self._orientation)
        refused = words == "not served"
        grey = refused or self._is_old
        box = self.rect().adjusted(0, 0, -1, -1)
        painter.fillRect(box, theme.panel if refused else theme.edge if self.isDown() else theme.raised)
        painter.setPen(theme.edge2 if self.underMouse() else theme.edge)
        painter.drawRect(box)
        paint_text(
            painter, QRect(8, 3, 30, 18), str(self.turn.number), font(11, self._is_present), theme.ink2
        )
        if self.turn.mirror:
            draw_mirror_mark(painter, self.width() - 16, 12, 18, theme)
        room = QRectF(self.rect().adjusted(12, 20, -12, -30))
        paint_mini_plan(painter, self._plan, self.turn, room, theme.ink3 if grey else theme.ink)
        self._paint_foot(painter, words, theme)
        if self._is_present:
            self._paint_brackets(painter, theme)
        if self.hasFocus():
            painter.setPen(QPen(theme.ink, 2))
            painter.drawRect(self.rect().adjusted(1, 1, -1, -1))

    def _paint_foot(self, painter: QPainter, words: str, theme: Theme) -> None:
        foot = QRect(0, self.height() - 28, self.width(), 24)
        in_words = not words.isdigit()
        painter.setFont(font(12 if words != "not served" else 11, words not in (tr("not served"), "…")))
        painter.setPen(theme.ink2 if self._is_old or words == "not served" else theme.ink)
        if in_words:
            painter.drawText(foot, Qt.AlignmentFlag.AlignCenter, words)
            return
        circles = min(int(words), MOST_CIRCLES) if int(words) <= MOST_CIRCLES else 0
        width = circles * 11 + 8
        left = (self.width() - width - painter.fontMetrics().horizontalAdvance(words)) // 2
        middle = foot.center().y()
        painter.drawText(
            QRect(left + width, foot.top(), 40, foot.height()), Qt.AlignmentFlag.AlignVCenter, words
        )
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(theme.ink2 if self._is_old else theme.ink, 1.5))
        for number in range(circles):
            painter.drawEllipse(QPointF(left + 4 + 11 * number, middle + 1), CIRCLE, CIRCLE)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)

    def _paint_brackets(self, painter: QPainter, theme: Theme) -> None:
        painter.save()
        painter.setPen(
            QPen(theme.ink, 3, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap, Qt.PenJoinStyle.MiterJoin)
        )
        right, bottom, arm = self.width() - 2, self.height() - 2, 10
        for x, step_x in ((1, 1), (right, -1)):
            for y, step_y in ((1, 1), (bottom, -1)):
                painter.drawPolyline(
                    [QPointF(x + arm * step_x, y), QPointF(x, y), QPointF(x, y + arm * step_y)]
                )
        painter.restore()

    def sizeHint(self) -> QSize:
        return QSize(100, HEIGHT)
