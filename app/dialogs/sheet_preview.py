"""The pages of a build sheet before they are written: one at a time, drawn when it is looked at."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPixmap, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QScrollArea, QVBoxLayout, QWidget

from app.panels.focus_frame import FocusFrame
from app.panels.look import label, named
from app.translation import tr

if TYPE_CHECKING:  # what draws on paper is loaded when it is first wanted
    from app.export.devices import DrawPage
    from app.export.papers import Paper

STEPS: Final = (1.0, 1.5, 2.0, 3.0, 4.0)
"""Of the zoom, as shares of the size at which the whole page is seen."""
AROUND: Final = 12
"""Px left free around a page."""
SMALLEST: Final = QSize(360, 400)
KEYS: Final = {
    Qt.Key.Key_PageDown: 1,
    Qt.Key.Key_PageUp: -1,
    Qt.Key.Key_Plus: 1,
    Qt.Key.Key_Minus: -1,
}
"""By how much a key turns pages, or zooms."""


class SheetPreview(QWidget):
    """A page, which of how many it is, and buttons that turn pages and zoom."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._pages: Sequence[DrawPage] = ()
        self._paper: Paper | None = None
        self._ground = QColor()
        self._number = 0
        self._step = 0
        self.page = _Page()
        self.page.turned.connect(self.turn)
        self.page.resized.connect(self._draw)
        self.page.zoomed.connect(self.zoom)
        self.said = label()
        self.said.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.before = _sign("‹", tr("Page before"), lambda: self.turn(-1))
        self.after = _sign("›", tr("Next page"), lambda: self.turn(1))
        self.smaller = _sign("−", tr("Smaller"), lambda: self.zoom(-1))
        self.larger = _sign("+", tr("Larger"), lambda: self.zoom(1))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self.page, 1)
        column.addLayout(self._foot())
        self.say(tr("Working out the pages…"))

    def _foot(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(4)
        row.addWidget(self.before)
        row.addWidget(self.said, 1)
        row.addWidget(self.after)
        row.addSpacing(16)
        row.addWidget(self.smaller)
        row.addWidget(self.larger)
        return row

    @property
    def number(self) -> int:
        """Which page is shown, from 0."""
        return self._number

    def show_pages(self, pages: Sequence[DrawPage], paper: Paper, ground: QColor) -> None:
        """Show these in place of others, at about the same place among them."""
        self._pages, self._paper, self._ground = pages, paper, ground
        self._number = min(self._number, len(pages) - 1)
        self._draw()

    def say(self, words: str) -> None:
        """Say why there is no page to be seen."""
        self._pages = ()
        self.page.show_words(words)
        self._tell()

    def turn(self, by: int) -> None:
        """Turn so many pages, no further than to the first or the last."""
        number = min(max(0, self._number + by), len(self._pages) - 1)
        if self._pages and number != self._number:
            self._number = number
            self._draw()
            self.page.verticalScrollBar().setValue(0)

    def zoom(self, by: int) -> None:
        """Show the page so many steps larger."""
        step = min(max(0, self._step + by), len(STEPS) - 1)
        if self._pages and step != self._step:
            self._step = step
            self._draw()

    def _draw(self) -> None:
        """Draw the one page that is seen, at the size at which it is seen."""
        if not self._pages or self._paper is None:
            return
        from app.export.devices import picture

        room = self.page.maximumViewportSize() - QSize(2 * AROUND, 2 * AROUND)
        whole = min(room.width() / self._paper.width, room.height() / self._paper.height)
        ratio = self.devicePixelRatio()
        image = picture(
            self._pages[self._number], self._paper, self._ground, max(0.5, whole) * STEPS[self._step] * ratio
        )
        image.setDevicePixelRatio(ratio)
        self.page.show_picture(QPixmap.fromImage(image), tr("Page {number}", number=self._number + 1))
        self._tell()

    def _tell(self) -> None:
        count = len(self._pages)
        told = tr("Page {number} of {count}", number=self._number + 1, count=count) if count else ""
        self.said.setText(told)
        self.before.setEnabled(self._number > 0 and count > 0)
        self.after.setEnabled(self._number < count - 1)
        self.smaller.setEnabled(count > 0 and self._step > 0)
        self.larger.setEnabled(count > 0 and self._step < len(STEPS) - 1)


class _Page(QScrollArea):
    """The page itself; PgUp and PgDn turn, plus and minus zoom, as do Ctrl and the wheel."""

    turned = Signal(int)
    zoomed = Signal(int)
    resized = Signal()

    def __init__(self) -> None:
        super().__init__()
        named(self, tr("Pages of the build sheet"))
        self.setProperty("look", "desk")
        self.setMinimumSize(SMALLEST)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self._shown = label()
        self._shown.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.setWidget(self._shown)
        FocusFrame(self)

    def show_picture(self, pixmap: QPixmap, name: str) -> None:
        """Show a page."""
        self._shown.setPixmap(pixmap)
        self._shown.setAccessibleName(name)
        self._shown.adjustSize()

    def show_words(self, words: str) -> None:
        """Show words in place of a page."""
        self._shown.setText(words)
        self._shown.adjustSize()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        by = KEYS.get(Qt.Key(event.key()))
        if by is None:
            super().keyPressEvent(event)
        elif event.key() in (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown):
            self.turned.emit(by)
        else:
            self.zoomed.emit(by)

    def wheelEvent(self, event: QWheelEvent) -> None:
        if not event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            super().wheelEvent(event)
            return
        self.zoomed.emit(1 if event.angleDelta().y() > 0 else -1)
        event.accept()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.resized.emit()


def _sign(sign: str, name: str, act: Callable[[], None]) -> QPushButton:
    button = named(QPushButton(sign), name)
    button.setProperty("look", "sign")
    button.setFixedWidth(32)
    button.setToolTip(name)
    button.setAutoDefault(False)
    button.clicked.connect(lambda: act())
    return button
