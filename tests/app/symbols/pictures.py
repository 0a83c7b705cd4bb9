"""Symbols as arrays of pixels."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QImage, QPainter

from app.canvas.symbols import Look, draw_piece
from app.theme import Theme

Pixels = npt.NDArray[np.uint8]


def drawn(look: Look, c: int, theme: Theme, margin: int = 0, ground: QColor | None = None) -> QImage:
    """The symbol with an empty margin; transparent where no ground is given."""
    side = c + 2 * margin
    image = QImage(side, side, QImage.Format.Format_ARGB32)
    image.fill(ground or QColor(Qt.GlobalColor.transparent))
    painter = QPainter(image)
    draw_piece(painter, margin, margin, c, look, theme)
    painter.end()
    return image


def pixels(image: QImage) -> Pixels:
    """Rows of (blue, green, red, alpha)."""
    data = np.frombuffer(image.constBits(), np.uint8)
    return data.reshape(image.height(), image.bytesPerLine() // 4, 4)[:, : image.width()].copy()


def grey(image: QImage) -> Pixels:
    """Rows of grey values, 0 black to 255 white."""
    image = image.convertToFormat(QImage.Format.Format_Grayscale8)
    data = np.frombuffer(image.constBits(), np.uint8)
    return data.reshape(image.height(), image.bytesPerLine())[:, : image.width()].copy()
