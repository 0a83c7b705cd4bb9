"""The cells that differ, kept so that an edit and a picture cost what they touch and show. No Qt here."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Generator, Iterable, Iterator
from typing import NamedTuple

from app.compare_words import ORDER
from model.comparing import Difference, Kind, comparison
from model.grid import Cell
from model.plan import Plan
from model.progress import Progress
from model.track.layout import Layout


class Differences:
    """At most one difference a cell, by level."""

    def __init__(self, found: Iterable[Difference] = ()) -> None:
        self.counts: Counter[Kind] = Counter()
        self._levels: dict[int, dict[Cell, Difference]] = {}
        for each in found:
            self.put(each.at, each)

    def get(self, cell: Cell) -> Difference | None:
        """What differs in a cell, or ``None``."""
        return self.on_level(cell.y).get(cell)

    def on_level(self, level: int) -> dict[Cell, Difference]:
        """What differs on a level."""
        return self._levels.get(level, {})

    def put(self, cell: Cell, found: Difference | None) -> None:
        """What differs in a cell from now on; ``None``: nothing."""
        level = self._levels.setdefault(cell.y, {})
        before = level.pop(cell, None)
        if before is not None:
            self.counts[before.kind] -= 1
        if found is not None:
            level[cell] = found
            self.counts[found.kind] += 1

    def in_order(self) -> list[Difference]:
        """Level by level from the lowest; in a level what is taken away comes first, what is placed late."""
        return sorted(self, key=lambda each: (each.at.y, ORDER[each.kind], each.at.z, each.at.x))

    def inverse(self) -> Differences:
        """The same with the two plans exchanged."""
        return Differences(each.inverse for each in self)

    def __iter__(self) -> Iterator[Difference]:
        return (each for level in self._levels.values() for each in level.values())

    def __len__(self) -> int:
        return self.counts.total()


class Compared(NamedTuple):
    """Another plan as built, and what differs from it."""

    other: Layout
    differences: Differences


def compared(read: Callable[[], Plan], here: Layout) -> Generator[Progress | None, None, Compared]:
    """A plan compared with the one that is read, which is the earlier one, in steps. Raises as ``read``."""
    yield None
    other = yield from Layout.of(read())
    return Compared(other, Differences((yield from comparison(other, here))))
