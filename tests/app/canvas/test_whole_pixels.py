"""Crisp lines and no gaps under fractional scaling, wherever the plan view stands in its window."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPixmap

from app.canvas.whole_pixels import begin_on_whole_pixel

SIDE = 96


def painted(ratio: float, left: int, top: int, *, moved: bool) -> QImage:
    """Four white tiles that meet, as the plan view lays them, and a black line one px wide in the last.

    On red ground, in a widget at (left, top) px.
    """
    side = round(SIDE * ratio)
    image = QImage(300, 300, QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(ratio)
    image.fill(QColor("red"))
    tile = QPixmap(side, side)
    tile.fill(Qt.GlobalColor.white)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(left, top)
    if moved:
        begin_on_whole_pixel(painter)
    painter.scale(1 / ratio, 1 / ratio)
    for x in (60 - side, 60):
        for y in (60 - side, 60):
            painter.drawPixmap(QRect(x, y, side, side), tile, tile.rect())
    painter.fillRect(QRect(90, 70, 2, 40), Qt.GlobalColor.black)
    painter.end()
    return image


def is_clean(image: QImage, ratio: float, left: int, top: int) -> bool:
    """Whether what the widget shows is white and black alone."""
    found = {
        QColor(image.pixel(x, y)).name()
        for x in range(round(left * ratio) + 1, round(left * ratio) + 120)
        for y in range(round(top * ratio) + 1, round(top * ratio) + 120)
    }
    return found == {"#ffffff", "#000000"}


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize("ratio", [1.0, 1.25, 1.5, 1.75, 2.0])
def test_tiles_meet_and_lines_are_crisp(ratio: float) -> None:
    for left, top in ((0, 0), (35, 75), (7, 20), (31, 43)):
        assert is_clean(painted(ratio, left, top, moved=True), ratio, left, top), (left, top)


@pytest.mark.usefixtures("qapp")
def test_without_it_they_are_not() -> None:
    """The control that must fail."""
    assert not is_clean(painted(1.5, 35, 75, moved=False), 1.5, 35, 75)
