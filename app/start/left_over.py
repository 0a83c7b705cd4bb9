"""What was left over from last time: every document, each with what takes it up or throws it away."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QPushButton, QScrollArea, QVBoxLayout, QWidget

from app.panels.look import hairline, label, named
from app.recovery import LeftOver
from app.start.left_over_row import LeftOverRow
from app.translation import tr

BAR: Final = 6
"""px between the buttons and the scroll bar."""


class LeftOverList(QWidget):
    """Scrolls where there is more than there is room for."""

    take_up_asked = Signal(object)
    """The one to be taken up."""
    keep_asked = Signal()

    def __init__(self, left_over: Sequence[LeftOver]) -> None:
        super().__init__()
        self.rows = [LeftOverRow(entry) for entry in left_over]
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addLayout(self._head(len(left_over)))
        column.addWidget(hairline())
        column.addWidget(self._area(), 1)

    def _head(self, count: int) -> QHBoxLayout:
        row = QHBoxLayout()
        told = tr("Left over") if count == 1 else tr("Left over: {count}", count=count)
        row.addWidget(label(told, "section"), 1)
        keep = named(QPushButton(tr("Keep for later")), tr("Keep what was left over for later"))
        keep.setToolTip(tr("Close this; what was left over is offered again next time"))
        keep.clicked.connect(self.keep_asked)
        row.addWidget(keep)
        return row

    def _area(self) -> QScrollArea:
        rows = QWidget()
        rows.setProperty("look", "paper")
        column = QVBoxLayout(rows)
        column.setContentsMargins(0, 4, BAR, 4)
        column.setSpacing(8)
        for row in self.rows:
            row.take_up_asked.connect(lambda row=row: self.take_up_asked.emit(row.entry))
            column.addWidget(row)
        column.addStretch(1)
        area = _Area(widgetResizable=True)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setWidget(rows)
        for row in self.rows:
            for button in (row.take_up_button, row.throw_button):
                button.installEventFilter(area)
        return area


class _Area(QScrollArea):
    """Follows the focus: the keyboard reaches every row."""

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is QEvent.Type.FocusIn and isinstance(watched, QWidget):
            self.ensureWidgetVisible(watched)
        return super().eventFilter(watched, event)
