"""Drawings begin on a whole device pixel, wherever their widget stands."""

from __future__ import annotations

import math

from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QWidget


def painter_on_whole_pixels(widget: QWidget, ground: QColor) -> QPainter:
    """A painter for a widget, its origin moved up and to the left to the nearest whole device pixel.

    With one and a half device pixels a px, a widget at an odd place begins within a pixel: lines
    would be smeared over two, and a gap would gape between tiles. What the drawing then leaves bare
    at the right and below is of the colour of its ground.
    """
    painter = QPainter(widget)
    placed = painter.deviceTransform()
    left, up = _back(placed.dx(), placed.m11()), _back(placed.dy(), placed.m22())
    if left or up:
        painter.fillRect(widget.rect(), ground)
        painter.translate(left, up)
    return painter


def _back(at: float, ratio: float) -> float:
    """Px to the left; 0 where a place is whole but for what figures round off."""
    over = at - math.floor(at + 1e-6)
    return -over / ratio if over > 1e-6 else 0.0
