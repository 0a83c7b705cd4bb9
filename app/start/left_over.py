"""What was left over from last time: every document, each with what takes it up."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import Final

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QPushButton, QScrollArea, QVBoxLayout, QWidget

from app.panels.cut_label import CutLabel
from app.panels.look import hairline, label, named
from app.panels.words import plain_tip
from app.recovery import LeftOver
from app.start.recent import day_words
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
        self.take_up_buttons: list[QPushButton] = []
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addLayout(self._head(len(left_over)))
        column.addWidget(hairline())
        column.addWidget(self._rows(left_over), 1)

    def _head(self, count: int) -> QHBoxLayout:
        row = QHBoxLayout()
        told = tr("Left over") if count == 1 else tr("Left over: {count}", count=count)
        row.addWidget(label(told, "section"), 1)
        keep = named(QPushButton(tr("Keep for later")), tr("Keep what was left over for later"))
        keep.setToolTip(tr("Close this; what was left over is offered again next time"))
        keep.clicked.connect(self.keep_asked)
        row.addWidget(keep)
        return row

    def _rows(self, left_over: Sequence[LeftOver]) -> QScrollArea:
        rows = QWidget()
        rows.setProperty("look", "paper")
        column = QVBoxLayout(rows)
        column.setContentsMargins(0, 4, BAR, 4)
        column.setSpacing(8)
        for entry in left_over:
            column.addLayout(self._row(entry))
        column.addStretch(1)
        area = _Area(widgetResizable=True)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setWidget(rows)
        for button in self.take_up_buttons:
            button.installEventFilter(area)
        return area

    def _row(self, entry: LeftOver) -> QHBoxLayout:
        title = entry.title or tr("Untitled")
        saved = entry.original.name if entry.original else tr("never saved")
        when = f"{day_words(entry.seconds)} {datetime.fromtimestamp(entry.seconds):%H:%M}"
        name = CutLabel(title, "strong")
        name.setToolTip(plain_tip(title))
        take_up = named(
            QPushButton(tr("Take it up")), tr("Take up {title}, {saved}", title=title, saved=saved)
        )
        take_up.clicked.connect(lambda: self.take_up_asked.emit(entry))
        self.take_up_buttons.append(take_up)
        about = CutLabel(saved, "second")
        about.setToolTip(plain_tip(str(entry.original or saved)))
        words = QVBoxLayout()
        words.setSpacing(0)
        copied = CutLabel(when, "second")
        copied.setToolTip(tr("When the copy was made that is taken up"))
        for line in (name, about, copied):
            words.addWidget(line)
        row = QHBoxLayout()
        row.addLayout(words, 1)
        row.addWidget(take_up)
        return row


class _Area(QScrollArea):
    """Follows the focus: the keyboard reaches every row."""

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is QEvent.Type.FocusIn and isinstance(watched, QWidget):
            self.ensureWidgetVisible(watched)
        return super().eventFilter(watched, event)
