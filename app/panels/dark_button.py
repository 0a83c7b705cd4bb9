"""The one dark button of a window."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QPushButton

from app import theme as themes

RING: Final = 2
"""Width of the ring that shows the focus, and its distance from the edge, in px."""


class DarkButton(QPushButton):
    """Filled with ink; as the ring of the focus is of ink, too, it lies inside and in paper."""

    def __init__(self, text: str = "") -> None:
        super().__init__(text)
        self.setProperty("look", "dark")

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if self.hasFocus():
            painter = QPainter(self)
            painter.setPen(QPen(themes.current().paper, RING))
            inset = RING * 1.5
            painter.drawRect(QRectF(self.rect()).adjusted(inset, inset, -inset, -inset))
