"""The tags of arms: where they lie on the widget, drawing them, and which one is under a pixel."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final, NamedTuple

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from app.canvas.geometry import FULL_SIZE, Viewport
from app.canvas.symbols import (
    Way,
    draw_arm_tag,
    draw_joined_tag,
    joined_tag_rect,
    tag_rect,
    tag_size,
)
from app.canvas.symbols.tags import TagSize
from app.theme import Theme
from app.tools.host import Ends, Tag
from model.grid import VECTORS, Heading
from model.plan import Arm, ArmEnd

JOINED_BELOW: Final = 32
"""px a cell below which the two tags of an arm to the north or south are one."""
WAY_OF: Final = {Ends.IN: Way.IN, Ends.OUT: Way.OUT}


class ShownTag(NamedTuple):
    """A tag as it lies on the widget."""

    tag: Tag
    at: QPointF
    """The end of the track to which it belongs; between the two ends for a joined tag."""
    outward: Heading
    rect: QRectF
    in_on: Heading | None = None
    """Joined tags: the side on which carts come in."""


def widest_beside(arms: Iterable[Arm]) -> float:
    """What the longest tag takes up to the east or the west of its track, in px."""
    size = tag_size(FULL_SIZE)
    ends = ((arm.name, end) for arm in arms for end in (arm.enter, arm.leave) if end is not None)
    names = (name for name, end in ends if not end.heading.lies_north_south)
    return max((tag_rect(name, 0, 0, Heading.EAST, size).right() for name in names), default=0.0)


def shown_tags(arms: Iterable[Arm], level: int, view: Viewport) -> list[ShownTag]:
    """The tags of the arms that end on a level."""
    size = tag_size(view.scale)
    return [tag for arm in arms for tag in _tags_of(arm, level, view, size)]


def paint_tags(painter: QPainter, tags: Iterable[ShownTag], scale: int, theme: Theme) -> None:
    """Draws the tags."""
    size = tag_size(scale)
    for shown in tags:
        x, y, name = shown.at.x(), shown.at.y(), shown.tag.arm
        if shown.in_on is not None:
            draw_joined_tag(painter, x, y, shown.outward, name, shown.in_on, size, theme)
        else:
            draw_arm_tag(painter, x, y, shown.outward, name, WAY_OF[shown.tag.ends], size, theme)


def tag_under(tags: Iterable[ShownTag], pixel: QPointF) -> Tag | None:
    """The tag under a pixel."""
    return next((shown.tag for shown in tags if shown.rect.contains(pixel)), None)


def track_end(end: ArmEnd, outward: Heading, view: Viewport) -> QPointF:
    """The middle of a cell's edge, in widget pixels."""
    left, top = view.corner(end.at.x, end.at.z)
    dx, dz = VECTORS[outward]
    return QPointF(left + (0.5 + 0.5 * dx) * view.scale, top + (0.5 + 0.5 * dz) * view.scale)


def _tags_of(arm: Arm, level: int, view: Viewport, size: TagSize) -> Iterator[ShownTag]:
    singles = [
        ShownTag(Tag(arm.name, ends), at, outward, tag_rect(arm.name, at.x(), at.y(), outward, size))
        for end, outward, ends in _ends_of(arm)
        if end.at.y == level
        for at in (track_end(end, outward, view),)
    ]
    if len(singles) == 2 and singles[0].outward is singles[1].outward:
        yield from _pair(singles[0], singles[1], view.scale, size)
    else:
        yield from singles


def _ends_of(arm: Arm) -> Iterator[tuple[ArmEnd, Heading, Ends]]:
    if arm.enter is not None:
        yield arm.enter, arm.enter.heading.opposite, Ends.IN
    if arm.leave is not None:
        yield arm.leave, arm.leave.heading, Ends.OUT


def _pair(enter: ShownTag, leave: ShownTag, scale: int, size: TagSize) -> Iterator[ShownTag]:
    """Both tags of an arm that point the same way, clear of each other."""
    meet = enter.rect.intersects(leave.rect)
    if enter.outward.lies_north_south and enter.at.y() == leave.at.y() and (meet or scale < JOINED_BELOW):
        yield _joined(enter, leave, size)
    elif meet:
        yield from _stacked(enter, leave, size)
    else:
        yield from (enter, leave)


def _joined(enter: ShownTag, leave: ShownTag, size: TagSize) -> ShownTag:
    middle = (enter.at + leave.at) / 2
    rect = joined_tag_rect(enter.tag.arm, middle.x(), middle.y(), enter.outward, size)
    in_on = Heading.EAST if enter.at.x() > leave.at.x() else Heading.WEST
    return ShownTag(Tag(enter.tag.arm, Ends.BOTH), middle, enter.outward, rect, in_on)


def _stacked(enter: ShownTag, leave: ShownTag, size: TagSize) -> Iterator[ShownTag]:
    """One above the other beside a single track."""
    middle = (enter.at.y() + leave.at.y()) / 2
    upper, lower = (leave, enter) if leave.at.y() < enter.at.y() else (enter, leave)
    for shown, side in ((upper, -1), (lower, 1)):
        at = QPointF(shown.at.x(), middle + side * (size.height / 2 + 1))
        yield shown._replace(at=at, rect=tag_rect(shown.tag.arm, at.x(), at.y(), shown.outward, size))
