"""A bar over the plan that says what went wrong, and stays until it is closed."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from app.panels.look import label, named, panel


class MessageBar(QWidget):
    """Never takes the focus away; its text can be marked and copied."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self.setAccessibleName("Message")
        self._text = label()
        self._text.setWordWrap(True)
        self._text.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
        self._text.setAccessibleName("Message")
        self.close_button = named(QPushButton("Close", self), "Close the message")
        self.close_button.clicked.connect(self.hide)
        row = QHBoxLayout(self)
        row.setContentsMargins(14, 8, 14, 8)
        row.setSpacing(12)
        row.addWidget(label("Not done", "strong"))
        row.addWidget(self._text, 1)
        row.addWidget(self.close_button)
        self.hide()

    @property
    def text(self) -> str:
        """What the bar says."""
        return self._text.text()

    def say(self, text: str) -> None:
        """Show a message, in place of an earlier one."""
        self._text.setText(text)
        self.show()
