"""Drawings begin on a whole device pixel, wherever their widget stands."""

from __future__ import annotations

import math

from PySide6.QtGui import QPainter


def begin_on_whole_pixel(painter: QPainter) -> None:
    """Move the painter's origin up and to the left, to the nearest whole device pixel.

    With one and a half device pixels a px, a widget at an odd place begins within a pixel: lines
    would be smeared over two, and a gap would gape between tiles.
    """
    placed = painter.deviceTransform()
    painter.translate(_back(placed.dx(), placed.m11()), _back(placed.dy(), placed.m22()))


def _back(at: float, ratio: float) -> float:
    return (math.floor(at + 1e-6) - at) / ratio
