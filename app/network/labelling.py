"""Which names the map shows at a zoom step, each in its room; worked out once a step, not at every pan."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QPointF, QRectF

from app.canvas.geometry import Viewport
from app.canvas.symbols.lettering import elided, printable, width
from app.network.items import Item, Kind, name_of
from app.network.labels import Label, Room, around
from app.network.painting import reach_of
from app.network.picture import Joint, Picture
from model.network.result import NetworkPlan

STATIONS_FROM: Final = 6
JUNCTIONS_FROM: Final = 8
READERS_FROM: Final = 16
"""px a square from which each has its name."""
ALL_JUNCTIONS_FROM: Final = 16
ALL_READERS_FROM: Final = 40
"""px a square below which each goes without its name where that would cover something."""
LARGE: Final = 200
"""Nodes above which names keep clear of symbols and each other only, and are left out where they cannot."""
WIDEST: Final = 160.0
"""px of a name; a longer one is cut."""
EM: Final = {True: 12.0, False: 11.0}


class Labelling:
    """The names of one picture, about the place where x = y = 0 lies at (0, 0)."""

    def __init__(self) -> None:
        self._picture: Picture | None = None
        self._plan: NetworkPlan | None = None
        self._scale = 0
        self._made: list[Label] = []

    def forget(self) -> None:
        """The picture is another one."""
        self._scale = 0

    def take(self, picture: Picture, plan: NetworkPlan | None) -> None:
        """What there is to name."""
        self._picture, self._plan, self._scale = picture, plan, 0

    def box(self, picture: Picture, scale: int) -> QRectF:
        """The room that the picture takes with its names at a scale, about x = y = 0."""
        return box_of(picture, _labels(picture, self._plan, scale), scale)

    def labels(self, view: Viewport) -> list[Label]:
        """The names where they lie on the widget."""
        if self._picture is None:
            return []
        if view.scale != self._scale:
            self._scale = view.scale
            self._made = _labels(self._picture, self._plan, view.scale)
        return [
            label._replace(rect=label.rect.translated(view.origin_x, view.origin_y)) for label in self._made
        ]


def box_of(picture: Picture, labels: list[Label], scale: int) -> QRectF:
    """The room that all nodes and names take."""
    box = QRectF()
    for item, (x, y) in picture.spots.items():
        reach = reach_of(item, scale)
        box |= QRectF(x * scale - reach, y * scale - reach, 2 * reach, 2 * reach)
    for label in labels:
        box |= label.rect
    return box


def _labels(picture: Picture, plan: NetworkPlan | None, scale: int) -> list[Label]:
    room = Room()
    for item, (x, y) in picture.spots.items():
        reach = reach_of(item, scale)
        room.take_node(QRectF(x * scale - reach, y * scale - reach, 2 * reach, 2 * reach))
    is_large = len(picture.spots) > LARGE
    for line in () if is_large else picture.routes.values():
        room.take_line([QPointF(x * scale, y * scale) for x, y in line])
    made = []
    for kind, least, all_from in (
        (Kind.STATION, STATIONS_FROM, 0),
        (Kind.JUNCTION, JUNCTIONS_FROM, ALL_JUNCTIONS_FROM),
    ):
        for item in picture.spots if scale >= least else ():
            always = scale >= all_from and not is_large
            label = _node_label(picture, item, scale, room, always) if item.kind is kind else None
            made += [label] if label is not None else []
    if scale >= READERS_FROM and plan is not None:
        for key, planned in plan.readers.items():
            link = picture.link_into(key)
            node = picture.ends_of(link)[1] if link is not None else None
            if planned.name is not None and node is not None and link is not None:
                label = _reader_label(picture.joint_in(node, link), planned.name, scale, room)
                made += [label] if label is not None else []
    return made


def _node_label(picture: Picture, item: Item, scale: int, room: Room, always: bool) -> Label | None:
    bold = item.kind is Kind.STATION
    text = elided(printable(name_of(picture.network, item)), EM[bold], WIDEST, bold)
    x, y = picture.spots[item]
    middle = QPointF(x * scale, y * scale)
    wide = width(text, EM[bold], bold) + 4
    return _best(text, around(middle, reach_of(item, scale), wide, EM[bold] + 4), room, bold, always)


def _reader_label(joint: Joint, name: str, scale: int, room: Room) -> Label | None:
    """The waybill of a reader, beside the line that comes to it."""
    text = elided(printable(name), EM[False], WIDEST)
    wide, high = width(text, EM[False]) + 4, EM[False] + 4
    dx, dy = joint.towards
    options = []
    for back in (10.0, 22.0, 34.0):
        x, y = joint.at[0] * scale - dx * back, joint.at[1] * scale - dy * back
        for side in (-1, 1):
            # To the side, far enough that the box clears the line whatever its direction.
            nx, ny = -dy * side, dx * side
            far = (abs(nx) * wide + abs(ny) * high) / 2 + 5
            options.append(QRectF(x + nx * far - wide / 2, y + ny * far - high / 2, wide, high))
    return _best(text, options, room, False, scale >= ALL_READERS_FROM)


def _best(text: str, options: list[QRectF], room: Room, bold: bool, always: bool) -> Label | None:
    """The text where it covers the least; nowhere where it covers anything, unless it must stand."""
    if always:
        return Label(text, room.best(options), bold)
    free = next((option for option in options if room.is_free(option) and not room.cost(option)), None)
    if free is None:
        return None
    room.take_label(free)
    return Label(text, free, bold)
