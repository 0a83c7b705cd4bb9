"""What the picture of a step shows: the cells about what is new, long even stretches cut short. In mm."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Final

from app.export.plan_picture import Window
from model.sheet.drawn import DrawnPiece
from model.sheet.steps import StepPicture

SCALES: Final = (7.0, 6.0, 5.0)
"""The least mm a cell at which nothing is cut; cells grow until whole ones fill the width."""
SMALL_SCALES: Final = (5.0, 4.0, 3.0, 2.5, 2.0, 1.5, 1.0)
"""The least mm a cell at which even stretches are cut where they have no room."""
MARGIN: Final = 1
"""Cells shown on each side of what is new."""
FEWEST_ROWS: Final = 3
BREAK: Final = 4.0
"""mm between the two sides of a cut."""
ABOUT_A_CHANGE: Final = (6, 5, 4, 3, 2, 1)
"""Cells kept on both sides of where something changes along a cut axis: as many as have room."""
X, Z = 0, 2


@dataclass(frozen=True)
class Cutout:
    """The columns and rows that a picture shows, in one stretch or in several with a break between them."""

    columns: tuple[range, ...]
    rows: tuple[range, ...]
    cell: float
    """mm."""

    @property
    def width(self) -> float:
        """On paper, with the breaks."""
        return _length(self.columns, self.cell)

    @property
    def height(self) -> float:
        """On paper, with the breaks."""
        return _length(self.rows, self.cell)

    def windows(self, left: float, top: float) -> Iterator[Window]:
        """The parts of the picture where its north-west corner lies at a place on the page."""
        for north, rows in self._placed(self.rows, top):
            for west, columns in self._placed(self.columns, left):
                yield Window(columns[0], rows[0], len(columns), len(rows), west, north, self.cell)

    def _placed(self, stretches: tuple[range, ...], start: float) -> Iterator[tuple[float, range]]:
        for stretch in stretches:
            yield start, stretch
            start += len(stretch) * self.cell + BREAK


def cutout(picture: StepPicture, width: float, height: float) -> Cutout:
    """The cells about a step, as large as they have room; the room's whole width is used."""
    bounds = picture.bounds
    across, along = (bounds.west, bounds.east), (bounds.north, bounds.south)
    for cell in _filling(SCALES, width):
        columns, rows = _whole(across, width, cell, True), _whole(along, height, cell, False)
        if columns and rows:
            return Cutout(columns, rows, cell)
    for cell in _filling(SMALL_SCALES, width):
        columns = _whole(across, width, cell, True) or _cut(picture, X, across, width, cell)
        rows = _whole(along, height, cell, False) or _cut(picture, Z, along, height, cell)
        if columns and rows:
            return Cutout(columns, rows, cell)
    whole = (range(west - MARGIN, east + MARGIN + 1) for west, east in (across, along))
    columns, rows = ((stretch,) for stretch in whole)
    return Cutout(columns, rows, min(width / len(columns[0]), height / len(rows[0])))


def _filling(scales: tuple[float, ...], width: float) -> Iterator[float]:
    return (width / int(width / least) for least in scales)


def _whole(ends: tuple[int, int], length: float, cell: float, all_of_it: bool) -> tuple[range, ...]:
    """Everything in one stretch; nothing where it has no room."""
    first, last = ends
    room = int(length / cell + 1e-6)
    needed = last - first + 1 + 2 * MARGIN
    if needed > room:
        return ()
    shown = room if all_of_it else max(FEWEST_ROWS, needed)
    start = first - (shown - (last - first + 1)) // 2
    return (range(start, start + shown),)


def _cut(
    picture: StepPicture, axis: int, ends: tuple[int, int], room: float, cell: float
) -> tuple[range, ...]:
    """As much as has room about each place where something changes; nothing where even the least has none."""
    changes = sorted(_changes(picture, axis))
    for kept in ABOUT_A_CHANGE:
        stretches = tuple(_about(changes, kept, ends))
        if _length(stretches, cell) <= room:
            return stretches
    return ()


def _about(changes: Iterable[int], kept: int, ends: tuple[int, int]) -> Iterator[range]:
    """Stretches about the changes, those that nearly touch as one."""
    low, high = ends[0] - MARGIN, ends[1] + MARGIN
    current = range(0)
    for change in changes:
        stretch = range(max(low, change - kept), min(high, change + kept) + 1)
        if current and stretch.start <= current.stop + 2:
            current = range(current.start, stretch.stop)
            continue
        if current:
            yield current
        current = stretch
    yield current


def _changes(picture: StepPicture, axis: int) -> set[int]:
    """Where along an axis the new pieces are others than one cell before or after, or a rail is bent."""
    found = {one.piece.at[axis] for one in picture.bent}
    content: dict[int, set[object]] = {}
    for one in picture.new:
        content.setdefault(one.piece.at[axis], set()).add(_kind(one, axis))
    for place, here in content.items():
        if here != content.get(place - 1) or here != content.get(place + 1):
            found.add(place)
    return found


def _kind(one: DrawnPiece, axis: int) -> object:
    """All that is drawn of a piece, and where it lies across the axis."""
    at = one.piece.at
    return at.y, at[X + Z - axis], one.piece.part, one.piece.facing, one.piece.delay, one.rail


def _length(stretches: tuple[range, ...], cell: float) -> float:
    return sum(map(len, stretches)) * cell + BREAK * (len(stretches) - 1)
