"""The ladder of levels: which level is drawn on, and how many pieces lie on each."""

from __future__ import annotations

from collections import Counter
from typing import Final

from PySide6.QtCore import QRect, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QContextMenuEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QMenu, QWidget

from app import theme as themes
from app.document import Document
from app.panels.look import font, panel
from app.panels.rows import paint_text
from app.panels.words import number
from app.theme import Theme
from app.translation import tr
from model.grid import Y_HIGHEST, Y_LOWEST
from model.plan import Change

WIDTH: Final = 56
STEP: Final = 50
HEAD: Final = 32
BOX: Final = 44


class LevelStrip(QWidget):
    """High levels on top. A click goes to a level, the wheel and the arrow keys one up or down."""

    level_chosen = Signal(int)
    lock_asked = Signal(int)
    """Lock that level, or unlock it."""
    hiding_asked = Signal(int)
    """Hide that level, or show it again."""

    def __init__(self, document: Document, level: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self.setFixedWidth(WIDTH)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self._document = document
        self._pieces: Counter[int] = Counter()
        self._level = level
        self._top = level + 3
        document.reset.connect(self._count_all)
        document.changed.connect(self._count_change)
        document.levels.changed.connect(self._show_pieces)
        self._count_all()
        self.show_level(level)

    def show_level(self, level: int) -> None:
        """Mark the level drawn on; the ladder moves only as far as needed to show it with its neighbours."""
        self._level = level
        rows = self._rows()
        self._top = min(max(self._top, level + 1), level + max(rows - 2, 1))
        self._show_pieces()

    def pieces_on(self, level: int) -> int:
        """How many pieces lie on a level."""
        return self._pieces[level]

    def _rows(self) -> int:
        return max(3, (self.height() - HEAD) // STEP)

    def _count_all(self) -> None:
        self._pieces = self._document.index.pieces_by_level()
        self._show_pieces()

    def _count_change(self, change: Change, _cells: object) -> None:
        self._pieces.subtract(entry.piece.at.y for entry in change.taken)
        self._pieces.update(entry.piece.at.y for entry in change.placed)
        self._say_pieces()
        for level in {cell.y for cell in change.cells}:
            self.update(self._rect_of(level))

    def _rect_of(self, level: int) -> QRect:
        """Where a level stands in the ladder, which may be out of sight."""
        return QRect(0, HEAD + (self._top - level) * STEP, WIDTH, STEP)

    def _show_pieces(self) -> None:
        self._say_pieces()
        self.update()

    def _say_pieces(self) -> None:
        counted = tr("%n piece(s)", "", self._pieces[self._level])
        said = ", ".join([counted, *self._kept_words(self._level)])
        self.setAccessibleName(tr("Level {number}: {counted}", number=number(self._level), counted=said))

    def _kept_words(self, level: int) -> list[str]:
        levels = self._document.levels
        words = {tr("locked"): level in levels.locked, tr("hidden"): level in levels.hidden}
        return [word for word, holds in words.items() if holds]

    def menu_of(self, level: int) -> QMenu:
        """What can be done with a level."""
        menu, levels = QMenu(self), self._document.levels
        menu.setTitle(tr("Level {number}", number=number(level)))
        for word, ask, kept in (
            (tr("Lock level"), self.lock_asked, levels.locked),
            (tr("Hide level"), self.hiding_asked, levels.hidden),
        ):
            action = menu.addAction(word)
            action.setCheckable(True)
            action.setChecked(level in kept)
            action.triggered.connect(lambda _checked, ask=ask: ask.emit(level))
        return menu

    def _choose(self, level: int) -> None:
        if Y_LOWEST <= level <= Y_HIGHEST:
            self.level_chosen.emit(level)

    def paintEvent(self, event: QPaintEvent) -> None:
        theme = themes.current()
        painter = QPainter(self)
        painter.fillRect(self.rect(), theme.panel)
        painter.setFont(font(11))
        painter.setPen(theme.ink2)
        painter.drawText(QRect(0, 0, WIDTH, 22), Qt.AlignmentFlag.AlignCenter, "level")
        rows = self._rows()
        painter.fillRect(WIDTH - 13, HEAD, 1, rows * STEP - 6, theme.edge2)
        for row in range(rows):
            level = self._top - row
            if Y_LOWEST <= level <= Y_HIGHEST and event.rect().intersects(self._rect_of(level)):
                self._paint_level(painter, level, HEAD + row * STEP, theme)
        painter.fillRect(WIDTH - 1, 0, 1, self.height(), theme.edge)
        if self.hasFocus():
            painter.setPen(QPen(theme.ink, 2))
            painter.drawRect(self.rect().adjusted(1, 1, -2, -1))

    def _paint_level(self, painter: QPainter, level: int, top: int, theme: Theme) -> None:
        own = level == self._level
        box = QRect(4, top + 2, WIDTH - 8, BOX)
        if own:
            painter.fillRect(box, theme.ink)
        tick = theme.paper if own else theme.edge2
        painter.fillRect(WIDTH - 17, box.center().y(), 9, 2 if own else 1, tick)
        self._paint_neighbour_line(painter, level, top, theme)
        near = abs(level - self._level) <= 1
        colour = theme.paper if own else theme.ink if near else theme.ink2
        figures = font(12, own)
        figures.setStrikeOut(level in self._document.levels.hidden)
        paint_text(painter, QRect(9, top + 9, 34, 18), number(level), figures, colour)
        if level in self._document.levels.locked:
            paint_lock(painter, WIDTH - 21, top + 28, colour)
        if self._pieces[level] > 0:
            pieces = QRect(9, top + 26, 34, 14)
            paint_text(painter, pieces, str(self._pieces[level]), font(9), theme.paper if own else theme.ink2)

    def _paint_neighbour_line(self, painter: QPainter, level: int, top: int, theme: Theme) -> None:
        """The line in which that level is drawn on the plan."""
        if abs(level - self._level) != 1 or level in self._document.levels.hidden:
            return
        dashes = Qt.PenStyle.CustomDashLine if level > self._level else Qt.PenStyle.SolidLine
        pen = QPen(theme.ink2, 1.5, dashes, Qt.PenCapStyle.FlatCap)
        if level > self._level:
            pen.setDashPattern([3, 2])
        painter.setPen(pen)
        painter.drawLine(9, top + 5, 28, top + 5)

    def _level_at(self, y: int) -> int:
        return self._top - (y - HEAD) // STEP

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() is Qt.MouseButton.LeftButton:
            self._choose(self._level_at(int(event.position().y())))

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Of the level under the pointer; by its key, of the one drawn on."""
        by_key = event.reason() is QContextMenuEvent.Reason.Keyboard
        level = self._level if by_key else self._level_at(event.pos().y())
        if Y_LOWEST <= level <= Y_HIGHEST:
            menu = self.menu_of(level)
            menu.aboutToHide.connect(menu.deleteLater)
            menu.popup(event.globalPos())

    def wheelEvent(self, event: QWheelEvent) -> None:
        if event.angleDelta().y():
            self._choose(self._level + (1 if event.angleDelta().y() > 0 else -1))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        steps = {Qt.Key.Key_Up: 1, Qt.Key.Key_Down: -1}
        if event.key() in steps:
            self._choose(self._level + steps[Qt.Key(event.key())])
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.show_level(self._level)


def paint_lock(painter: QPainter, left: int, top: int, colour: QColor) -> None:
    """A padlock, 9 × 11 px: a body, and the bow over it."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(colour, 1.5))
    painter.drawArc(QRect(left + 2, top, 5, 8), 0, 180 * 16)
    painter.fillRect(QRect(left, top + 5, 9, 6), colour)
    painter.restore()
