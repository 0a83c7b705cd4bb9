"""Crisp lines and no gaps under fractional scaling, wherever the plan view stands in its window."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from app.canvas.whole_pixels import painter_on_whole_pixels

SIZE, TILE = 60, 96
"""Of the widget in px, of a tile in device pixels."""


class Drawing(QWidget):
    """White tiles that meet, as the plan view lays them, and a black line of two device pixels."""

    def __init__(self, moves: bool) -> None:
        super().__init__()
        self.setFixedSize(SIZE, SIZE)
        self._moves = moves

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = painter_on_whole_pixels(self, QColor("white")) if self._moves else QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ratio = painter.deviceTransform().m11()
        painter.scale(1 / ratio, 1 / ratio)
        tile = QPixmap(TILE, TILE)
        tile.fill(Qt.GlobalColor.white)
        for x in (40 - TILE, 40):
            for y in (40 - TILE, 40):
                painter.drawPixmap(QRect(x, y, TILE, TILE), tile, tile.rect())
        painter.fillRect(QRect(50, 10, 2, 30), Qt.GlobalColor.black)
        painter.end()


def colours(drawing: Drawing, ratio: float, left: int, top: int) -> set[str]:
    """What is seen of it at a place of a red window, but for the pixels that it has in part."""
    image = QImage(300, 300, QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(ratio)
    image.fill(QColor("red"))
    drawing.render(image, QPoint(left, top))
    first, last = round(ratio) + 1, int(SIZE * ratio) - 1
    return {
        QColor(image.pixel(int(left * ratio) + x, int(top * ratio) + y)).name()
        for x in range(first, last)
        for y in range(first, last)
    }


@pytest.mark.parametrize("ratio", [1.0, 1.25, 1.5, 1.75, 2.0])
def test_tiles_meet_and_lines_are_crisp(qtbot: QtBot, ratio: float) -> None:
    drawing = Drawing(moves=True)
    qtbot.addWidget(drawing)
    for left, top in ((0, 0), (35, 75), (7, 20), (31, 43)):
        assert colours(drawing, ratio, left, top) == {"#ffffff", "#000000"}, (left, top)


def test_without_it_they_are_not(qtbot: QtBot) -> None:
    """The control that must fail."""
    drawing = Drawing(moves=False)
    qtbot.addWidget(drawing)
    found = [colours(drawing, 1.5, left, top) for left, top in ((35, 75), (7, 20), (31, 43))]
    assert any(each != {"#ffffff", "#000000"} for each in found)
