"""The rulers beside the plan."""

from __future__ import annotations

from itertools import pairwise

import pytest
from PySide6.QtCore import QRect
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtWidgets import QApplication

from app import theme as themes
from app.canvas.geometry import Viewport
from app.canvas.rulers import LEFT, TOP, paint_rulers
from app.canvas.symbols.lettering import width
from model.grid import Cell

SIZE = QRect(0, 0, 400, 600)
ELSEWHERE = Cell(0, 64, 0)
BETWEEN_DIGITS = 4
"""px at most."""


def longest_run_of_ink(north: int) -> int:
    """Rows one below the other in which the left ruler has ink, where the cell ``north`` is at the top."""
    image = QImage(SIZE.size(), QImage.Format.Format_RGB32)
    painter = QPainter(image)
    theme = themes.theme("light")
    paint_rulers(painter, SIZE, Viewport(48, LEFT, TOP - 48 * north), ELSEWHERE, theme)
    painter.end()
    inked = [
        y
        for y in range(TOP + 1, SIZE.height())
        if any(QColor(image.pixel(x, y)).lightness() < 160 for x in range(LEFT - 2))
    ]
    longest, begin = 0, inked[0]
    for before, y in pairwise(inked):
        begin = begin if y - before <= BETWEEN_DIGITS else y
        longest = max(longest, y - begin + 1)
    return longest


@pytest.mark.parametrize(("north", "last"), [(-9_999_999, "9999999"), (123_456, "123456")])
def test_long_figures_stand_on_end_at_full_size(qapp: QApplication, north: int, last: str) -> None:
    run = longest_run_of_ink(north)
    assert run > 0.7 * width(last, 11), "The room beside its digits is no ink."
    assert run < 1.3 * width("−" + last, 11), "They do not run into one another."


def test_short_figures_lie(qapp: QApplication) -> None:
    assert longest_run_of_ink(1) < 15
