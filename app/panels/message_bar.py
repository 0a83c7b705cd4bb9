"""A bar over the plan that says what went wrong, and stays until it is closed."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from app.icons import icon
from app.panels.look import label, named, panel
from app.translation import tr

MARKER: Final = 24


class MessageBar(QWidget):
    """Never takes the focus away; its text can be marked and copied."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self.setAccessibleName(tr("Message"))
        self._marker = label()
        self._text = label()
        self._text.setWordWrap(True)
        self._text.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
        self._text.setAccessibleName(tr("Message"))
        self.offer_button = QPushButton(self)
        self.offer_button.clicked.connect(self._take_offer)
        self._offered: Callable[[], object] = self.hide
        self.close_button = named(QPushButton(tr("Close"), self), tr("Close the message"))
        self.close_button.clicked.connect(self.hide)
        row = QHBoxLayout(self)
        row.setContentsMargins(14, 8, 14, 8)
        row.setSpacing(12)
        row.addWidget(self._marker)
        row.addWidget(self._text, 1)
        row.addWidget(self.offer_button)
        row.addWidget(self.close_button)
        self.hide()

    @property
    def text(self) -> str:
        """What the bar says."""
        return self._text.text()

    def say(self, text: str) -> None:
        """Show a message, in place of an earlier one."""
        self._marker.setPixmap(icon("error").pixmap(MARKER, MARKER))
        self._text.setText(text)
        self.offer_button.hide()
        self.show()

    def offer(self, text: str, word: str, act: Callable[[], object]) -> None:
        """Show a message with a button of that word beside it, which closes the message and acts."""
        self.say(text)
        self._offered = act
        named(self.offer_button, word).setText(word)
        self.offer_button.show()

    def withdraw(self, text: str) -> None:
        """Put away a message that is true no more; another one stays."""
        if text == self.text:
            self.hide()

    def _take_offer(self) -> None:
        self.hide()
        self._offered()
