"""The pointer on the view in depth: a click asks for a cell, a drag moves the picture, a wheel zooms."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QMouseEvent, QWheelEvent
from PySide6.QtWidgets import QApplication

from app.canvas.navigation import NOTCH

if TYPE_CHECKING:
    from app.depth.view import DepthView


class Hands:
    """What the pointer is doing."""

    def __init__(self, view: DepthView) -> None:
        self._view = view
        self._grip: QPointF | None = None
        self._is_drag = False
        self._turned = 0

    def press(self, event: QMouseEvent) -> None:
        """Takes hold of the picture."""
        self._grip, self._is_drag = event.position(), False

    def move(self, event: QMouseEvent) -> None:
        """Moves what is held, once it is clear that it is no click; else tells what is pointed at."""
        if self._grip is None:
            self._view.hover(event.position())
            return
        step = event.position() - self._grip
        if self._is_drag or step.manhattanLength() >= QApplication.startDragDistance():
            self._is_drag = True
            self._grip = event.position()
            self._view.pan(step.x(), step.y())

    def release(self, event: QMouseEvent) -> None:
        """Lets go; after a click asks for the cell."""
        is_click = self._grip is not None and not self._is_drag
        self._grip = None
        if is_click and event.button() is Qt.MouseButton.LeftButton:
            self._view.ask_cell(event.position())

    def wheel(self, event: QWheelEvent) -> None:
        """A wheel zooms at the pointer; two fingers on a pad pan, with Ctrl they zoom."""
        step = event.pixelDelta()
        if not step.isNull() and not event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self._view.pan(step.x(), step.y())
            return
        self._turned += event.angleDelta().y()
        steps = int(self._turned / NOTCH)
        self._turned -= steps * NOTCH
        if steps:
            self._view.zoom(steps, event.position())
