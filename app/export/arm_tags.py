"""The tags of arms on paper, beyond the ends of their track. Lengths in mm."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations
from typing import Final

from PySide6.QtCore import QRectF

from app.canvas.symbols import Way, draw_arm_tag, draw_joined_tag, tag_rect
from app.canvas.symbols.lettering import em_for
from app.canvas.symbols.tags import TagSize
from app.export.pencil import NARROW, Pencil
from app.export.plan_picture import Window
from model.grid import VECTORS, Heading
from model.plan import Arm, ArmEnd
from model.sheet.footprint import Bounds

HEIGHTS: Final = (2.5, 2.2, 1.8, 1.5)
"""Heights of capitals from which the largest is taken that keeps tags apart."""


@dataclass(frozen=True)
class Tag:
    """One end of an arm: where its track ends, in cells, and which way the tag lies."""

    arm: Arm
    way: Way
    x: float
    z: float
    level: int
    outward: Heading


def tags_of(arms: Iterable[Arm]) -> tuple[Tag, ...]:
    """The tags of all ends of arms, on whatever level."""
    return tuple(tag for arm in arms for tag in _tags_of(arm))


def on_level(tags: Iterable[Tag], level: int) -> tuple[Tag, ...]:
    """Those whose track ends on a level."""
    return tuple(tag for tag in tags if tag.level == level)


def _tags_of(arm: Arm) -> Iterator[Tag]:
    if arm.enter is not None:
        yield _tag(arm, arm.enter, Way.IN, arm.enter.heading.opposite)
    if arm.leave is not None:
        yield _tag(arm, arm.leave, Way.OUT, arm.leave.heading)


def _tag(arm: Arm, end: ArmEnd, way: Way, outward: Heading) -> Tag:
    dx, dz = VECTORS[outward]
    return Tag(arm, way, end.at.x + 0.5 + dx / 2, end.at.z + 0.5 + dz / 2, end.at.y, outward)


@lru_cache(maxsize=64)
def tag_size(tags: tuple[Tag, ...], cell: float) -> TagSize:
    """The largest letters with which no two tags overlap at this size of a cell; else the smallest."""
    largest = 2.5 if cell >= 10 else 2.2 if cell >= 8 else 1.8
    sizes = [_size(high) for high in HEIGHTS if high <= largest]
    return next((size for size in sizes if not _overlap(tags, cell, size)), sizes[-1])


def _size(high: float) -> TagSize:
    return TagSize(em_for(high), NARROW)


@lru_cache(maxsize=64)
def _overlap(tags: tuple[Tag, ...], cell: float, size: TagSize) -> bool:
    rects = [tag_rect(tag.arm.name, tag.x * cell, tag.z * cell, tag.outward, size) for tag in tags]
    return any(a.intersects(b) for a, b in combinations(rects, 2))


def bounds_with_tags(bounds: Bounds, tags: tuple[Tag, ...], cell: float) -> Bounds:
    """The bounds and the whole cells beyond them that tags take."""
    size = tag_size(tags, cell)
    west, north, east, south = bounds
    for tag in tags:
        rect = tag_rect(tag.arm.name, tag.x * cell, tag.z * cell, tag.outward, size)
        west, north = min(west, int(rect.left() // cell)), min(north, int(rect.top() // cell))
        east, south = max(east, int(rect.right() // cell)), max(south, int(rect.bottom() // cell))
    return Bounds(west, north, east, south)


def tag_spaces(window: Window, tags: tuple[Tag, ...]) -> Iterator[QRectF]:
    """What the tags take on the page."""
    size = tag_size(tags, window.cell)
    for tag in tags:
        point = window.corner(tag.x, tag.z)
        yield tag_rect(tag.arm.name, point.x(), point.y(), tag.outward, size)


def draw_tags(pencil: Pencil, window: Window, tags: tuple[Tag, ...]) -> None:
    """The tags whose track ends in the window; two of one arm that would overlap are joined."""
    size = tag_size(tags, window.cell)
    left_over = list(tags)
    if _overlap(tags, window.cell, size):
        for one, other in combinations(tags, 2):
            if one in left_over and other in left_over and _can_join(one, other):
                left_over = [tag for tag in left_over if tag not in (one, other)]
                _draw_joined(pencil, window, one, other, size)
    for tag in left_over:
        point = window.corner(tag.x, tag.z)
        if window.rect.adjusted(-0.1, -0.1, 0.1, 0.1).contains(point):
            draw_arm_tag(
                pencil.painter, point.x(), point.y(), tag.outward, tag.arm.name, tag.way, size, pencil.theme
            )


def _can_join(one: Tag, other: Tag) -> bool:
    return (
        one.arm == other.arm
        and one.outward is other.outward
        and one.outward.lies_north_south
        and (one.z, one.level) == (other.z, other.level)
    )


def _draw_joined(pencil: Pencil, window: Window, one: Tag, other: Tag, size: TagSize) -> None:
    comes_in, leaves = (one, other) if one.way is Way.IN else (other, one)
    point = window.corner((one.x + other.x) / 2, one.z)
    side = Heading.EAST if comes_in.x > leaves.x else Heading.WEST
    name, outward = one.arm.name, one.outward
    draw_joined_tag(pencil.painter, point.x(), point.y(), outward, name, side, size, pencil.theme)
