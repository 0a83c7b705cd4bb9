"""The rails of a plan as runs: equal rails along a line, laid one after another.

What must come before what is given; within that the lowest level comes first, a run is as long as it can
be, and the next one begins beside the end of the last where it may.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Final, NamedTuple

from model.grid import Heading
from model.parts import Part
from model.track.rails import BACK, BIT, MASK, STEP, UP, neighbour_mask
from model.track.shapes import Shape

Followers = Mapping[int, Sequence[int]]
"""By rail: those that must be laid after it. Packed cells; a rail that none waits for may be left out."""


class Run(NamedTuple):
    """Rails that are laid one after another."""

    stage: int
    """The highest level that has been begun."""
    keys: tuple[int, ...]
    """Packed cells in the order of placing: all of one part, on one level and along a line."""
    after: int | None
    """For a run below its stage: the rail on which it had to wait."""


class Rail(NamedTuple):
    """A rail to be laid."""

    level: int
    rank: int
    key: int
    part: Part
    heading: Heading


_BESIDE: Final = tuple(step + rise for rise in (0, UP, -UP) for step in STEP)


class Yard:
    """The rails that are still to be laid."""

    def __init__(self, rails: Iterable[Rail], shapes: dict[int, Shape], followers: Followers) -> None:
        self._rails = {rail.key: rail for rail in rails}
        self._shapes = shapes
        self._followers = followers
        self._left = set(self._rails)
        self._waits = dict.fromkeys(self._rails, 0)
        for later in followers.values():
            for key in later:
                self._waits[key] += 1
        self._released_by: dict[int, int] = {}
        self._ready: list[Rail] = []
        self._stage = 0
        self._last: int | None = None
        self._alone = {
            key for key in self._rails if shapes[key].is_curve and neighbour_mask(shapes, key).bit_count() > 2
        }

    def runs(self) -> Iterator[Run]:
        """All runs in the order of laying."""
        levels: dict[int, list[Rail]] = {}
        for rail in self._rails.values():
            levels.setdefault(rail.level, []).append(rail)
        for self._stage in sorted(levels):
            self._ready = [rail for rail in levels[self._stage] if not self._waits[rail.key]]
            heapq.heapify(self._ready)
            while (start := self._next_start()) is not None:
                yield self._laid(self._longest_from(start))

    def _next_start(self) -> int | None:
        """A rail beside the last one that may be laid now, or else the lowest and earliest."""
        if self._last is not None:
            for offset in _BESIDE:
                key = self._last + offset
                if key in self._left and self._may_come(key):
                    return key
        while self._ready:
            rail = heapq.heappop(self._ready)
            if rail.key in self._left:
                return rail.key
        return None

    def _may_come(self, key: int) -> bool:
        return not self._waits[key] and self._rails[key].level <= self._stage

    def _laid(self, keys: list[int]) -> Run:
        for key in keys:
            self._left.discard(key)
            for later in self._followers.get(key, ()):
                self._waits[later] -= 1
                if not self._waits[later]:
                    self._released_by[later] = key
                    if self._rails[later].level <= self._stage:
                        heapq.heappush(self._ready, self._rails[later])
        self._last = keys[-1]
        after = None
        if self._rails[keys[0]].level < self._stage:
            after = self._released_by.get(keys[0])
        return Run(self._stage, tuple(keys), after)

    def _longest_from(self, start: int) -> list[int]:
        """The longest run through a rail, of those alike the one that begins where the last one ended.

        A curve at which more than two tracks meet is laid alone: it is what the builder has to look at.
        """
        if start in self._alone:
            return [start]
        mask = MASK[self._shapes[start]]
        ways = [heading for heading in Heading if mask & (BIT[heading] | BACK[heading])]
        return max((self._run(start, heading) for heading in ways), key=self._worth)

    def _worth(self, run: list[int]) -> tuple[int, bool, bool]:
        first = self._rails[run[0]]
        near = self._last is not None and first.key - self._last in _BESIDE
        along = len(run) > 1 and run[1] - run[0] == STEP[first.heading]
        return len(run), near, along

    def _run(self, start: int, heading: Heading) -> list[int]:
        """The run through ``start`` that is laid towards ``heading``."""
        first = start
        while (before := self._linked(first, heading.opposite)) is not None and self._may_come(before):
            first = before
        run = [first]
        freed = self._freed_by(first, {})
        while (beyond := self._linked(run[-1], heading)) is not None and self._comes_after(beyond, freed):
            run.append(beyond)
            freed = self._freed_by(beyond, freed)
        return run

    def _freed_by(self, key: int, freed: dict[int, int]) -> dict[int, int]:
        for later in self._followers.get(key, ()):
            freed[later] = freed.get(later, 0) + 1
        return freed

    def _comes_after(self, key: int, freed: Mapping[int, int]) -> bool:
        return self._waits[key] == freed.get(key, 0)

    def _linked(self, key: int, heading: Heading) -> int | None:
        """The next rail that way on the level, where it is of the same part, linked and still to be laid."""
        beyond = key + STEP[heading]
        if beyond not in self._left or beyond in self._alone:
            return None
        linked = MASK[self._shapes[key]] & BIT[heading] and MASK[self._shapes[beyond]] & BACK[heading]
        return beyond if linked and self._rails[beyond].part is self._rails[key].part else None
