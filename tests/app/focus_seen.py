"""Where the focus is can be seen: by a ring or a line that differs enough from what was there before."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

import numpy as np
from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication, QWidget

AROUND = 5
"""px around a widget in which its ring may lie."""
ENOUGH = 3.0
"""The least contrast between the same pixels with the focus and without (WCAG 2.2, 2.4.13)."""


def pixels(picture: QImage) -> np.ndarray:
    """A row a pixel: blue, green, red and what fills the word."""
    image = picture.convertToFormat(QImage.Format.Format_RGB32)
    return np.frombuffer(image.constBits(), np.uint8).reshape(-1, 4).copy()


def luminance(colours: np.ndarray) -> np.ndarray:
    """Relative luminance of each pixel (WCAG 2.2, from sRGB)."""
    rgb = colours[:, 2::-1] / 255
    linear = np.where(rgb <= 0.04045, rgb / 12.92, ((rgb + 0.055) / 1.055) ** 2.4)
    return linear @ (0.2126, 0.7152, 0.0722)


def pixels_that_tell(before: QImage, after: QImage) -> int:
    """How many pixels have enough contrast between two pictures of one size."""
    one, two = pixels(before), pixels(after)
    differ = (one != two).any(axis=1)
    one, two = luminance(one[differ]) + 0.05, luminance(two[differ]) + 0.05
    return int(np.count_nonzero(np.maximum(one, two) / np.minimum(one, two) >= ENOUGH))


def wanted(widget: QWidget) -> int:
    """As many as in a line around it, or in 4 px along its shortest side (WCAG 2.2, 2.4.13, a draft)."""
    visible = widget.visibleRegion().boundingRect()
    return min(2 * (visible.width() + visible.height()), 4 * min(visible.width(), visible.height()))


def unseen(root: QWidget, widgets: Iterable[QWidget]) -> Iterator[QWidget]:
    """Which of these take the focus without showing it."""
    root.activateWindow()
    for widget in widgets:
        visible = widget.visibleRegion().boundingRect()
        if visible.isEmpty():
            continue
        room = QRect(widget.mapTo(root, visible.topLeft()), visible.size())
        room = room.adjusted(-AROUND, -AROUND, AROUND, AROUND).intersected(root.rect())
        if (was := QApplication.focusWidget()) is not None:
            was.clearFocus()
        before = root.grab(room).toImage()
        widget.setFocus(Qt.FocusReason.TabFocusReason)
        after = root.grab(room).toImage()
        if pixels_that_tell(before, after) < wanted(widget):
            yield widget
