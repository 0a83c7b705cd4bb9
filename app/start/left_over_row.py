"""A document that was left over: it can be taken up, or thrown away until the screen closes."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from app.panels.cut_label import CutLabel
from app.panels.look import named
from app.panels.words import plain_tip
from app.recovery import LeftOver
from app.start.recent import day_words, moment_of
from app.translation import tr


class LeftOverRow(QWidget):
    """What it is, and beside it what can be done with it."""

    take_up_asked = Signal()

    def __init__(self, entry: LeftOver) -> None:
        super().__init__()
        self.entry = entry
        self.is_thrown_away = False
        """Its copy goes once the screen closes; until then this can be taken back."""
        self._title = entry.title or tr("Untitled")
        self._saved = entry.original.name if entry.original else tr("never saved")
        self._about = CutLabel("", "second")
        self.take_up_button = named(
            QPushButton(tr("Take it up")),
            tr("Take up {title}, {saved}", title=self._title, saved=self._saved),
        )
        self.take_up_button.clicked.connect(self.take_up_asked)
        self.throw_button = QPushButton()
        self.throw_button.clicked.connect(self._throw_or_bring_back)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addLayout(self._words(), 1)
        row.addLayout(self._buttons())
        self._show_fate()

    def _words(self) -> QVBoxLayout:
        name = CutLabel(self._title, "strong")
        name.setToolTip(plain_tip(self._title))
        moment = moment_of(self.entry.seconds)
        when = "" if moment is None else f"{day_words(self.entry.seconds)} {moment:%H:%M}"
        copied = CutLabel(when, "second")
        copied.setToolTip(tr("When the copy was made that is taken up"))
        words = QVBoxLayout()
        words.setSpacing(0)
        for line in (name, self._about, copied):
            words.addWidget(line)
        words.addStretch(1)
        return words

    def _buttons(self) -> QVBoxLayout:
        buttons = QVBoxLayout()
        buttons.setSpacing(4)
        for button in (self.take_up_button, self.throw_button):
            buttons.addWidget(button)
        return buttons

    def _throw_or_bring_back(self) -> None:
        # The word changes under the pointer, not the place of the button.
        self.throw_button.setMinimumWidth(self.throw_button.width())
        self.is_thrown_away = not self.is_thrown_away
        self._show_fate()

    def _show_fate(self) -> None:
        gone, title, saved = self.is_thrown_away, self._title, self._saved
        self._about.setText(tr("thrown away") if gone else saved)
        self._about.setToolTip(plain_tip(str(self.entry.original or saved)))
        self.take_up_button.setEnabled(not gone)
        self.throw_button.setText(tr("Undo") if gone else tr("Throw away"))
        self.throw_button.setToolTip(
            tr("Keep this copy after all") if gone else tr("This copy goes when this screen closes")
        )
        named(
            self.throw_button,
            tr("Bring back {title}, {saved}", title=title, saved=saved)
            if gone
            else tr("Throw away {title}, {saved}", title=title, saved=saved),
        )
