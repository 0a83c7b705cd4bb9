"""Icons for tools and parts: the symbols of the canvas at 24 px in ink, at rest. There is no other set."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache, partial
from typing import Final

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QIcon, QPainter, QPen, QPixmap, QPolygonF

from app.canvas.symbols.carts import draw_cart
from app.canvas.symbols.look import Look
from app.canvas.symbols.markers import draw_marker
from app.canvas.symbols.network import (
    Passage,
    draw_head,
    draw_junction,
    draw_link,
    draw_passages,
    draw_station,
    line_path,
)
from app.canvas.symbols.pieces import paint
from app.canvas.symbols.sheet_signs import LOOKS, SWITCH, draw_sign
from app.canvas.symbols.signs import draw_inverter_gate
from app.canvas.symbols.size import screen
from app.canvas.symbols.stage import Stage
from app.canvas.symbols.ways import Ground, WayKind, draw_chevrons, draw_way, way_steps
from app.theme import Theme, current
from model.grid import Cell, Facing, Heading
from model.parts import TRAITS, Part
from model.sheet.levels import Sign
from model.track.shapes import Shape

PX: Final = 24
ORIGIN: Final = Cell(0, 0, 0)
SIGN_EM: Final = 0.42
"""Of a figure on a sign, in cells."""
RATIOS: Final = (1.0, 1.5, 2.0, 3.0)
MARKERS: Final = ("error", "warning", "note")
AT_REST: Final = {
    Part.RAIL: Look(Part.RAIL, shape=Shape.SOUTH_EAST),
    Part.DUST: Look(Part.DUST, links=frozenset({Heading.EAST, Heading.WEST})),
    Part.TORCH: Look(Part.TORCH, Facing.UP),
    Part.REPEATER: Look(Part.REPEATER, Facing.EAST),
    Part.COMPARATOR: Look(Part.COMPARATOR, Facing.EAST),
    Part.AUTO_CRAFTER: Look(Part.AUTO_CRAFTER, Facing.EAST),
}
"""How a part stands in the tray and in tables, where that is not its first facing."""


def rest_look(part: Part) -> Look:
    """A part as it stands in the tray, in tables and in legends."""
    return AT_REST.get(part) or Look(part, TRAITS[part].first_facing)


def icon(name: str) -> QIcon:
    """The icon of a tool, a part or a marker, in the window's theme.

    Names: the parts' words of files; ``select``, ``lay-track``, ``place``, ``module``, ``arm``, ``erase``,
    ``throw``, ``test-cart``, ``survey``, ``line``, ``station``, ``junction``, ``link``, ``trip``;
    ``error``, ``warning``, ``note``, also with ``-aside``;
    ``inverter``, ``way-empty``, ``way-called``; ``sign-`` and a sign of the build sheet. Raises KeyError for
    another name.
    """
    return _icon(name, current())


@lru_cache(maxsize=256)
def _icon(name: str, theme: Theme) -> QIcon:
    made = QIcon()
    for ratio in RATIOS:
        pixmap = _blank(ratio)
        _draw(name, pixmap, ratio, theme)
        made.addPixmap(pixmap)
        made.addPixmap(_faded(pixmap), QIcon.Mode.Disabled)
    return made


def _blank(ratio: float) -> QPixmap:
    pixmap = QPixmap(round(PX * ratio), round(PX * ratio))
    pixmap.fill(Qt.GlobalColor.transparent)
    pixmap.setDevicePixelRatio(ratio)
    return pixmap


def _faded(pixmap: QPixmap) -> QPixmap:
    """The icon of what cannot be used now."""
    faded = _blank(pixmap.devicePixelRatio())
    painter = QPainter(faded)
    painter.setOpacity(0.45)
    painter.drawPixmap(0, 0, pixmap)
    painter.end()
    return faded


def _draw(name: str, pixmap: QPixmap, ratio: float, theme: Theme) -> None:
    painter = QPainter(pixmap)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    severity = name.removesuffix("-aside")
    if severity in MARKERS:
        draw_marker(painter, PX / 2, PX / 2, severity, theme, aside=severity != name)
    else:
        painter.scale(1 / ratio, 1 / ratio)
        stage = Stage(painter, 0, 0, screen(PX, ratio), theme)
        if name in TOOLS:
            TOOLS[name](stage)
        else:
            _draw_part(stage, name)
    painter.end()


def _draw_part(stage: Stage, name: str) -> None:
    try:
        part = Part(name)
    except ValueError as unknown:
        raise KeyError(name) from unknown
    paint(stage, rest_look(part))


def _draw_select(stage: Stage) -> None:
    """Four brackets."""
    near, far, length, wide = 0.12, 0.88, 0.24, stage.size.wide
    for x, inner_x in ((near, near + length), (far, far - length)):
        for y, inner_y in ((near, near + length), (far, far - length)):
            stage.line([(inner_x, y), (x, y), (x, inner_y)], stage.theme.ink, wide)


def _draw_erase(stage: Stage) -> None:
    """A cell with a cross over it."""
    stage.box(0.13, 0.13, 0.87, 0.87, stage.theme.ink, None)
    for side in (-0.3, 0.3):
        stage.line([(0.2, 0.5 - side), (0.8, 0.5 + side)], stage.theme.ink, stage.size.narrow)


def _draw_test_cart(stage: Stage) -> None:
    paint(stage, Look(Part.RAIL, shape=Shape.NORTH_SOUTH))
    c = stage.size.c
    draw_cart(stage.painter, c / 2, c / 2, stage.size, 0, stage.theme, loaded=False)


def _draw_arm(stage: Stage) -> None:
    """A tag at the end of a track."""
    c, theme = stage.size.c, stage.theme
    stage.line([(0.66, 0.5), (1, 0.5)], theme.ink, stage.size.wide)
    corners = [(0.06, 0.26), (0.42, 0.26), (0.6, 0.5), (0.42, 0.74), (0.06, 0.74)]
    stage.painter.setPen(QPen(theme.ink, stage.size.narrow, j=Qt.PenJoinStyle.MiterJoin))
    stage.painter.setBrush(theme.ink)
    stage.painter.drawPolygon(QPolygonF([QPointF(x * c, y * c) for x, y in corners]))


def _draw_line(stage: Stage) -> None:
    """Dust that leads round a corner to a block; the first of it is on."""
    ink, narrow = stage.theme.ink, stage.size.narrow
    stage.line([(0.16, 0.24), (0.16, 0.74), (0.62, 0.74)], ink, narrow)
    stage.box(0.64, 0.56, 0.96, 0.92, ink, None)
    for point in ((0.16, 0.24), (0.16, 0.74)):
        stage.dot(point, 0.11, ink)


def _draw_survey(stage: Stage) -> None:
    """A level on its three legs."""
    colour, narrow = stage.theme.ink, stage.size.narrow
    for foot in (0.16, 0.5, 0.84):
        stage.line([(0.5, 0.38), (foot, 0.94)], colour, narrow)
    stage.box(0.28, 0.12, 0.72, 0.36, colour, colour)
    stage.line([(0.06, 0.24), (0.94, 0.24)], colour, narrow)


def _draw_module(stage: Stage) -> None:
    """A box that hides what is in it, with two lines in and one out."""
    ink, narrow = stage.theme.ink, stage.size.narrow
    for y in (0.34, 0.66):
        stage.line([(0.04, y), (0.26, y)], ink, narrow)
    stage.line([(0.74, 0.5), (0.96, 0.5)], ink, narrow)
    stage.box(0.26, 0.16, 0.74, 0.84, ink, stage.theme.paper)


def _draw_way(stage: Stage, kind: WayKind) -> None:
    """The band of a way over a rail, as in the key of a preview."""
    ground = Ground(stage.painter, stage.x, stage.y, stage.size, stage.theme, 0)
    steps = way_steps([ORIGIN], Heading.EAST, Heading.EAST, lambda _cell: True)
    draw_way(ground, steps, kind)
    stage.line([(0, 0.5), (1, 0.5)], stage.theme.ink, stage.size.wide)
    draw_chevrons(ground, steps, kind)


def _draw_sign(stage: Stage, sign: Sign) -> None:
    draw_sign(stage, sign, SIGN_EM * stage.size.c)


def _draw_station(stage: Stage) -> None:
    """A station with a link out of it."""
    c = stage.size.c
    stage.line([(0.5, 0.5), (1, 0.5)], stage.theme.ink, stage.size.wide)
    draw_station(stage.painter, 0.38 * c, 0.5 * c, 0.9 * c, stage.theme)


def _draw_junction(stage: Stage) -> None:
    """A junction: a way straight through, and one that a reader calls."""
    c = stage.size.c
    ahead, aside = QPointF(1, 0), QPointF(0, 1)
    left, right, below = QPointF(0.12 * c, 0.5 * c), QPointF(0.88 * c, 0.5 * c), QPointF(0.5 * c, 0.88 * c)
    ways = [Passage(left, ahead, right, ahead, "default"), Passage(left, ahead, below, aside, "unknown")]
    draw_junction(stage.painter, 0.5 * c, 0.5 * c, 0.62 * c, stage.theme)
    draw_passages(stage.painter, c, stage.theme, ways)


def _draw_network_link(stage: Stage) -> None:
    """A line with a bend, and the head that says which way it runs."""
    c = stage.size.c
    path = line_path(
        [QPointF(0.06 * c, 0.8 * c), QPointF(0.4 * c, 0.8 * c), QPointF(0.94 * c, 0.26 * c)], c / 2
    )
    draw_link(stage.painter, path, c, stage.theme.ink)
    draw_head(stage.painter, QPointF(0.68 * c, 0.52 * c), QPointF(0.7071, -0.7071), c, stage.theme.ink)


def _draw_trip(stage: Stage) -> None:
    """From a station to another one, as a way is lit."""
    ink, wide = stage.theme.ink, stage.size.wide
    for x in (0.42, 0.58):
        stage.line([(x - 0.07, 0.32), (x + 0.07, 0.5), (x - 0.07, 0.68)], ink, wide * 0.8)
    for left in (0.02, 0.72):
        stage.box(left + 0.03, 0.37, left + 0.23, 0.63, ink, ink)


TOOLS: Final[dict[str, Callable[[Stage], None]]] = {
    "select": _draw_select,
    "lay-track": lambda stage: paint(stage, rest_look(Part.RAIL)),
    "place": lambda stage: paint(stage, rest_look(Part.SOLID_BLOCK)),
    "module": _draw_module,
    "arm": _draw_arm,
    "erase": _draw_erase,
    "throw": lambda stage: paint(stage, SWITCH),
    "test-cart": _draw_test_cart,
    "survey": _draw_survey,
    "line": _draw_line,
    "inverter": draw_inverter_gate,
    "way-empty": lambda stage: _draw_way(stage, WayKind.IDLE),
    "way-called": lambda stage: _draw_way(stage, WayKind.CALLED),
    **{f"sign-{sign}": partial(_draw_sign, sign=sign) for sign in LOOKS},
    "station": _draw_station,
    "junction": _draw_junction,
    "link": _draw_network_link,
    "trip": _draw_trip,
}
