"""The icon of the program: a switch with its drive on a plate of paper, drawn as on the canvas.

``resources/icons/platelayer.svg`` is the same drawing for desktops; run this module to write it anew.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Final

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QIcon, QPainter, QPixmap

from app.canvas.symbols.look import Look
from app.canvas.symbols.pieces import paint
from app.canvas.symbols.size import Detail, Size
from app.canvas.symbols.stage import Stage
from app.theme import theme
from model.parts import Part
from model.track.shapes import Shape

SIDES: Final = (16, 24, 32, 48, 64, 128, 256)
"""Of the pictures in the icon, in px."""
VECTOR_SIDE: Final = 48.0
"""Of the drawing for desktops, in mm; they show it at any size."""
SWITCH: Final = Look(Part.RAIL, shape=Shape.SOUTH_EAST, other_shape=Shape.NORTH_EAST)


@cache
def program_icon() -> QIcon:
    """The icon for windows, the same in every theme: it stands on desktops of any colour."""
    made = QIcon()
    for side in SIDES:
        pixmap = QPixmap(side, side)
        pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
        draw_program(painter, side, _size(side))
        painter.end()
        made.addPixmap(pixmap)
    return made


def draw_program(painter: QPainter, side: float, size: Size) -> None:
    """A plate of ``side``, its corner at the painter's origin, and the switch of ``size`` in its middle."""
    light, hair, margin = theme("light"), size.unit, (side - size.c) / 2
    painter.fillRect(QRectF(0, 0, side, side), light.edge2)
    painter.fillRect(QRectF(hair, hair, side - 2 * hair, side - 2 * hair), light.paper)
    paint(Stage(painter, margin, margin, size, light), SWITCH)


def program_svg() -> bytes:
    """The icon as a drawing. A Qt application must be there."""
    from app.export.devices import svg  # who opens a window does not write on paper yet
    from app.export.papers import Paper

    side = VECTOR_SIDE
    size = Size(side * 5 / 6, side / 8, Detail.ALL, True, side / 48, snaps=False)
    return svg(lambda painter: draw_program(painter, side, size), Paper("icon", side, side), "Platelayer")


def _size(side: int) -> Size:
    """Heavier lines than on the canvas: an icon is looked at from afar."""
    narrow = max(1, round(side / 18))
    detail = Detail.ALL if side >= 24 else Detail.SMALL
    margin = max(1, round(side / 12))
    return Size(side - 2 * margin, 2 * narrow, detail, True, max(1, side // 48), snaps=True)


if __name__ == "__main__":
    from app.export.devices import offscreen
    from model.files.writer import write_bytes

    application = offscreen()
    target = Path(__file__).parent.parent / "resources" / "icons" / "platelayer.svg"
    write_bytes(target, program_svg())
