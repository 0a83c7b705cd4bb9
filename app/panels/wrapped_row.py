"""A row that goes on in a second line where its words are too long for one."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QMargins, QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QHBoxLayout, QLayout, QLayoutItem, QSizePolicy, QSpacerItem, QWidget

GAP: Final = 8
"""px between two widgets, where nothing else is said."""


class WrappedRow(QLayout):
    """Widgets from left to right, each as wide as it asks for; those hidden take no room."""

    def __init__(self, gap: int = GAP) -> None:
        super().__init__()
        self._items: list[QLayoutItem] = []
        self._right_from: int | None = None
        self.setSpacing(gap)
        self.setContentsMargins(0, 0, 0, 0)

    def add_right(self, widget: QWidget) -> None:
        """Add a widget; with those added after it, it stands at the right end of its line."""
        self._right_from = len(self._items)
        self.addWidget(widget)

    def add_together(self, *widgets: QWidget) -> None:
        """Add widgets that stay beside each other."""
        together = QHBoxLayout()
        together.setSpacing(GAP)
        for widget in widgets:
            together.addWidget(widget)
        self.addChildLayout(together)
        self.addItem(together)

    def add_gap(self, width: int) -> None:
        """More room, in px, between the last widget and the next."""
        self.addItem(QSpacerItem(width, 0, QSizePolicy.Policy.Fixed))

    # Qt

    def addItem(self, item: QLayoutItem) -> None:
        self._items.append(item)

    def count(self) -> int:
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        margins = self.contentsMargins()
        lines = self._lines(width - margins.left() - margins.right())
        return self._height(lines) + margins.top() + margins.bottom()

    def sizeHint(self) -> QSize:
        """All in one line."""
        shown = self._shown()
        return _around(QSize(self._width(shown), self._height([shown])), self.contentsMargins())

    def minimumSize(self) -> QSize:
        """Each in a line of its own; how high that is depends on the width."""
        sizes = [item.minimumSize() for item in self._shown()]
        widest = max((size.width() for size in sizes), default=0)
        highest = max((size.height() for size in sizes), default=0)
        return _around(QSize(widest, highest), self.contentsMargins())

    def setGeometry(self, rect: QRect) -> None:
        super().setGeometry(rect)
        inside = rect.marginsRemoved(self.contentsMargins())
        top = inside.top()
        for line in self._lines(inside.width()):
            high = self._height([line])
            self._place(line, QRect(inside.left(), top, inside.width(), high))
            top += high + self.spacing()

    def _shown(self) -> list[QLayoutItem]:
        return [item for item in self._items if item.widget() is None or not item.isEmpty()]

    def _lines(self, width: int) -> list[list[QLayoutItem]]:
        lines: list[list[QLayoutItem]] = [[]]
        for item in self._shown():
            if lines[-1] and self._width([*lines[-1], item]) > width:
                lines.append([])
            lines[-1].append(item)
        return lines

    def _place(self, line: list[QLayoutItem], room: QRect) -> None:
        left, spare = room.left(), max(0, room.width() - self._width(line))
        right = [] if self._right_from is None else self._items[self._right_from :]
        for item in line:
            if item in right:
                left, spare = left + spare, 0
            size = _hint(item).boundedTo(QSize(room.width(), room.height()))
            top = room.top() + (room.height() - size.height()) // 2
            item.setGeometry(QRect(QPoint(left, top), size))
            left += size.width() + self.spacing()

    def _width(self, line: list[QLayoutItem]) -> int:
        return sum(_hint(item).width() + self.spacing() for item in line) - self.spacing() if line else 0

    def _height(self, lines: list[list[QLayoutItem]]) -> int:
        highest = [max((_hint(item).height() for item in line), default=0) for line in lines]
        return sum(highest) + self.spacing() * (len(lines) - 1)


def _around(size: QSize, margins: QMargins) -> QSize:
    return size.grownBy(margins)


def _hint(item: QLayoutItem) -> QSize:
    """What a widget asks for; one that gives way elsewhere gives way here only to the width of the row."""
    widget = item.widget()
    if widget is not None and widget.sizePolicy().horizontalPolicy() is QSizePolicy.Policy.Ignored:
        return widget.sizeHint()
    return item.sizeHint()
