"""Rails while a plan runs: notice turns them, and boosters pass their signal on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import combinations
from typing import Final

from model.dry_run.signals import Tell
from model.grid import Cell
from model.parts import Part
from model.pieces import Pieces
from model.track.layout import Layout
from model.track.rails import BACK, MASK, Overlay, found_by, pack, unpack
from model.track.settling import notice
from model.track.shapes import Shape

PASSES: Final = 8
"""Boosters to which a booster passes its own signal, along live links, to either side."""
_REACH: Final = 3
"""Columns, counted along the axes, between two rails of which one may bend what the other looks at.

A rail that gets notice looks two columns far, and writes one column far.
"""


class TrackState:
    """How the rails lie now, and which boosters have a signal."""

    def __init__(self, layout: Layout) -> None:
        self._as_built = dict(layout.rails)
        self._straight_only = frozenset(layout.straight_only)
        self.stoppers = frozenset(layout.stoppers)
        self._pieces: Pieces = layout.plan.pieces
        self.reset()

    def reset(self) -> None:
        """As built, without a signal."""
        self.rails = Overlay(self._as_built)
        self._reached: dict[int, frozenset[int]] = {}
        """By the booster that something gives a signal to: itself and those to which it passes it on."""
        self._sources: dict[int, set[int]] = {}
        """The other way round: by booster, those from which it has its signal."""
        self.driven: set[int] = set()
        """The boosters with a signal, as of the last time that some were told of."""

    def settle(self, noticed: Mapping[int, bool], unsure: Tell | None) -> dict[int, Shape]:
        """These rails get notice, each with its signal, in file order; returns the shapes that changed.

        Pairs for which the other order would end otherwise are told to ``unsure``.
        """
        order = self._in_file_order(noticed)
        bent = self._bent(order, noticed)
        if bent and unsure is not None:
            for one, other in self._pairs_that_differ(order, noticed, bent):
                unsure(unpack(one), unpack(other))
        changed = {key: shape for key, shape in bent.items() if shape != self.rails.get(key)}
        self.rails.changed.update(changed)
        return changed

    def drive(self, changed: Mapping[int, bool], bent: Iterable[int]) -> set[int]:
        """Boosters whose own signal came or went, and rails that changed shape.

        Returns the boosters that are driven now and were not, or the other way round.
        """
        near = (key for each in bent for key in _about(each))
        again = {source for key in near for source in self._sources.get(key, ())}
        touched: set[int] = set()
        for source in again | changed.keys():
            on = changed.get(source, source in self._reached)
            touched |= self._withdraw(source)
            if on:
                touched |= self._pass_on(source)
        turned = {key for key in touched if (key in self._sources) != (key in self.driven)}
        self.driven ^= turned
        return turned

    def _withdraw(self, source: int) -> frozenset[int]:
        reached = self._reached.pop(source, frozenset())
        for key in reached:
            self._sources[key].discard(source)
            if not self._sources[key]:
                del self._sources[key]
        return reached

    def _pass_on(self, source: int) -> frozenset[int]:
        reached = self._reached[source] = self._along(source)
        for key in reached:
            self._sources.setdefault(key, set()).add(source)
        return reached

    def is_booster(self, key: int) -> bool:
        """Whether a packed cell holds a booster rail."""
        return key in self._straight_only and self._pieces.part_at(unpack(key)) is Part.BOOSTER_RAIL

    def _in_file_order(self, keys: Iterable[int]) -> list[int]:
        return sorted(keys, key=lambda key: self._rank(unpack(key)))

    def _rank(self, cell: Cell) -> int:
        placed = self._pieces.placed(cell)
        assert placed is not None
        return placed.rank

    def _bent(self, order: Iterable[int], signals: Mapping[int, bool]) -> dict[int, Shape]:
        rails = Overlay(self.rails)
        for key in order:
            notice(rails, self._straight_only, key, powered=signals[key])
        return {key: shape for key, shape in rails.changed.items() if shape != self.rails.get(key)}

    def _pairs_that_differ(
        self, order: Sequence[int], signals: Mapping[int, bool], bent: Mapping[int, Shape]
    ) -> Iterator[tuple[int, int]]:
        for one, other in combinations(range(len(order)), 2):
            if _are_near(order[one], order[other]):
                turned = list(order)
                turned[one], turned[other] = turned[other], turned[one]
                if self._bent(turned, signals) != bent:
                    yield order[one], order[other]

    def _along(self, key: int) -> frozenset[int]:
        """A booster and those to which a signal of its own passes."""
        seen, ends = {key}, [key]
        for _ in range(PASSES):
            ends = [other for end in ends for other in self._linked_boosters(end) if other not in seen]
            seen.update(ends)
        return frozenset(seen)

    def _linked_boosters(self, key: int) -> Iterator[int]:
        shape = self.rails.get(key)
        assert shape is not None
        for end in shape.ends:
            other = found_by(self.rails, key, end)
            if other is None or not self.is_booster(other):
                continue
            lies = self.rails.get(other)
            if lies is not None and MASK[lies] & BACK[end.heading]:
                yield other


def _are_near(one: int, other: int) -> bool:
    a, b = unpack(one), unpack(other)
    return abs(a.x - b.x) + abs(a.z - b.z) <= _REACH


def _about(key: int) -> Iterator[int]:
    """The cell and those in the next columns whose rail it may find, or be found by."""
    cell = unpack(key)
    yield key
    for dx, dz in ((0, -1), (1, 0), (0, 1), (-1, 0)):
        for dy in range(-2, 3):
            yield pack(cell.moved(dx, dy, dz))
