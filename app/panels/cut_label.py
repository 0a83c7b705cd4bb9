"""A line of text that gives way to what stands beside it."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QLabel, QSizePolicy

LEAST: Final = 40
"""Px that it keeps."""


class CutLabel(QLabel):
    """Takes the room that the others leave; what is too long for it loses its end."""

    def __init__(self, text: str = "", look: str = "") -> None:
        super().__init__(text, textFormat=Qt.TextFormat.PlainText)
        self.setMinimumWidth(LEAST)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        if look:
            self.setProperty("look", look)

    def paintEvent(self, event: QPaintEvent) -> None:
        room = self.contentsRect()
        shown = self.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideRight, room.width())
        self.style().drawItemText(
            QPainter(self),
            room,
            self.alignment().value,
            self.palette(),
            self.isEnabled(),
            shown,
            QPalette.ColorRole.WindowText,
        )
