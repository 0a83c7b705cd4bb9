"""The tags of arms on paper, beyond the ends of their track. Lengths in mm, places in cells."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import combinations
from typing import Final, NamedTuple

from PySide6.QtCore import QRectF

from app.canvas.symbols import Way, draw_arm_tag, draw_joined_tag, joined_tag_rect, tag_rect
from app.canvas.symbols.lettering import em_for
from app.canvas.symbols.tags import TagSize
from app.export.pencil import NARROW, Pencil
from app.export.plan_picture import Window
from model.grid import VECTORS, Heading
from model.plan import Arm, ArmEnd
from model.sheet.footprint import Bounds

HEIGHTS: Final = (2.5, 2.2, 1.8, 1.5)
"""Heights of capitals from which the largest is taken that keeps tags apart."""
APART: Final = 0.3
"""Half the gap between the two tags of a single track."""


@dataclass(frozen=True)
class Tag:
    """An end of an arm, or both in one: where its track ends, and which way the tag lies."""

    name: str
    way: Way | None
    """``None`` for both ends in one tag."""
    x: float
    z: float
    level: int
    outward: Heading
    aside: int = 0
    """-1 and 1: to the north and south of the track's own line, for the two tags of a single track."""
    in_on: Heading = Heading.WEST
    """Both in one: the side on which carts come in."""

    def rect(self, x: float, y: float, size: TagSize) -> QRectF:
        """The space on the page that it takes when its track ends at (x, y)."""
        if self.way is None:
            return joined_tag_rect(self.name, x, y, self.outward, size)
        return tag_rect(self.name, x, y + self._shift(size), self.outward, size)

    def draw(self, pencil: Pencil, x: float, y: float, size: TagSize) -> None:
        """The tag of a track that ends at (x, y)."""
        painter, theme = pencil.painter, pencil.theme
        if self.way is None:
            draw_joined_tag(painter, x, y, self.outward, self.name, self.in_on, size, theme)
        else:
            draw_arm_tag(painter, x, y + self._shift(size), self.outward, self.name, self.way, size, theme)

    def _shift(self, size: TagSize) -> float:
        return self.aside * (size.height / 2 + APART)


class Fitted(NamedTuple):
    """The tags as they are drawn at some size of a cell."""

    tags: tuple[Tag, ...]
    size: TagSize


def tags_of(arms: Iterable[Arm]) -> tuple[Tag, ...]:
    """The tags of all ends of arms, on whatever level."""
    return tuple(tag for arm in arms for tag in _tags_of(arm))


def on_level(tags: Iterable[Tag], level: int) -> tuple[Tag, ...]:
    """Those whose track ends on a level."""
    return tuple(tag for tag in tags if tag.level == level)


@lru_cache(maxsize=64)
def fitted(tags: tuple[Tag, ...], cell: float) -> Fitted:
    """The largest letters with which no two tags overlap; with the smallest, pairs of one arm are joined."""
    largest = 2.5 if cell >= 10 else 2.2 if cell >= 8 else 1.8
    sizes = [TagSize(em_for(high), NARROW) for high in HEIGHTS if high <= largest]
    apart = next((size for size in sizes if not _overlap(tags, cell, size)), None)
    return Fitted(tuple(_joined(tags)), sizes[-1]) if apart is None else Fitted(tags, apart)


def bounds_with_tags(bounds: Bounds, tags: tuple[Tag, ...], cell: float) -> Bounds:
    """The bounds and the whole cells beyond them that tags take."""
    west, north, east, south = bounds
    shown, size = fitted(tags, cell)
    for tag in shown:
        rect = tag.rect(tag.x * cell, tag.z * cell, size)
        west, north = min(west, int(rect.left() // cell)), min(north, int(rect.top() // cell))
        east, south = max(east, int(rect.right() // cell)), max(south, int(rect.bottom() // cell))
    return Bounds(west, north, east, south)


def tag_spaces(window: Window, tags: tuple[Tag, ...]) -> Iterator[QRectF]:
    """What the tags take on the page."""
    shown, size = fitted(tags, window.cell)
    for tag in shown:
        point = window.corner(tag.x, tag.z)
        yield tag.rect(point.x(), point.y(), size)


def draw_tags(pencil: Pencil, window: Window, tags: tuple[Tag, ...]) -> None:
    """The tags whose track ends in the window."""
    shown, size = fitted(tags, window.cell)
    edge = window.rect.adjusted(-0.1, -0.1, 0.1, 0.1)
    for tag in shown:
        point = window.corner(tag.x, tag.z)
        if edge.contains(point):
            tag.draw(pencil, point.x(), point.y(), size)


def _tags_of(arm: Arm) -> Iterator[Tag]:
    ends = []
    if arm.enter is not None:
        ends.append(_tag(arm, arm.enter, Way.IN, arm.enter.heading.opposite))
    if arm.leave is not None:
        ends.append(_tag(arm, arm.leave, Way.OUT, arm.leave.heading))
    if len(ends) < 2 or replace(ends[0], way=Way.OUT) != ends[1]:
        yield from ends
    elif ends[0].outward.lies_north_south:
        yield replace(ends[0], way=None)
    else:
        yield from (replace(ends[0], aside=-1), replace(ends[1], aside=1))


def _tag(arm: Arm, end: ArmEnd, way: Way, outward: Heading) -> Tag:
    dx, dz = VECTORS[outward]
    return Tag(arm.name, way, end.at.x + 0.5 + dx / 2, end.at.z + 0.5 + dz / 2, end.at.y, outward)


def _overlap(tags: Iterable[Tag], cell: float, size: TagSize) -> bool:
    rects = [tag.rect(tag.x * cell, tag.z * cell, size) for tag in tags]
    return any(a.intersects(b) for a, b in combinations(rects, 2))


def _joined(tags: Iterable[Tag]) -> Iterator[Tag]:
    """The two tags of an arm side by side to the north or south, in one; others as they are."""
    waiting: dict[tuple[str, float, int, Heading], Tag] = {}
    for tag in tags:
        place = (tag.name, tag.z, tag.level, tag.outward)
        if tag.way is None or not tag.outward.lies_north_south:
            yield tag
        elif (other := waiting.pop(place, None)) is None:
            waiting[place] = tag
        else:
            comes_in, leaves = (tag, other) if tag.way is Way.IN else (other, tag)
            side = Heading.EAST if comes_in.x > leaves.x else Heading.WEST
            yield replace(tag, way=None, x=(tag.x + other.x) / 2, in_on=side)
    yield from waiting.values()
