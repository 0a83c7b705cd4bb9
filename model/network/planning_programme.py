"""A part of a task as a mixed integer programme: the fewest waybills a week in it."""

from __future__ import annotations

import time
from collections.abc import Mapping, Sequence
from itertools import combinations
from math import ceil, isfinite
from typing import Any, Final

import msgspec

from model.network.planning_narrowing import Narrowed
from model.network.planning_parts import Part
from model.network.planning_task import Journey
from model.network.ways import NO_TURN

SECONDS_LIMIT: Final = 30
"""A programme is given up after that long, since nobody can stop it."""
Terms = list[tuple[int, bool]]
"""Unknowns, and what each is to be."""


class Found(msgspec.Struct, frozen=True):
    """What a programme gave."""

    defaults: dict[int, int]
    runs: dict[int, tuple[int, ...]]
    bound: int


class Programme:
    """A part as unknowns that are 0 or 1: the default of a reader, a stretch that is taken, a call."""

    def __init__(self, narrowed: Narrowed, part: Part) -> None:
        self._narrowed, self._part = narrowed, part
        self._stretches = narrowed.task.tracks.stretches
        self._costs: list[int] = []
        self._always = 0
        self._rows: list[tuple[dict[int, int], float, float]] = []
        self._default = {reader: self._default_of(reader) for reader in part.readers}
        self._runs = {number: self._ways_of(number) for number in part.journeys}
        if narrowed.task.alike:
            self._keep_pinned_names_apart()

    @property
    def columns(self) -> int:
        """How many unknowns there are."""
        return len(self._costs)

    def solve(self, deadline: float, settled: Mapping[int, int] | None = None) -> Found | None:
        """What is cheapest with some defaults settled, or the best in time; ``None``: nothing was found."""
        # scipy is slow to import, and only this needs it.
        import numpy as np
        from scipy.optimize import milp

        seconds = min(max(0.1, deadline - time.monotonic()), SECONDS_LIMIT)
        solved: Any = milp(
            np.array(self._costs, dtype=float),
            integrality=np.ones(self.columns),
            bounds=self._bounds(settled or {}),
            constraints=self._constraints(),
            options={"mip_rel_gap": 0, "time_limit": seconds},
        )
        if solved.x is None:
            return None
        holds = [value > 0.5 for value in solved.x]
        return Found(
            {reader: int(holds[column]) for reader, column in self._default.items()},
            {number: self._run(number, holds) for number in self._runs},
            self._always + _whole_bound(solved.mip_dual_bound) if isfinite(solved.mip_dual_bound) else 0,
        )

    def _bounds(self, settled: Mapping[int, int]) -> Any:
        from scipy.optimize import Bounds

        low, high = [0] * self.columns, [1] * self.columns
        for reader, default in settled.items():
            low[self._default[reader]] = high[self._default[reader]] = default
        return Bounds(low, high)

    def _constraints(self) -> Any:
        import numpy as np
        from scipy.optimize import LinearConstraint
        from scipy.sparse import csr_array

        rows = [row for row, _, _ in self._rows]
        ends = np.cumsum([0, *map(len, rows)])
        columns = [column for row in rows for column in row]
        values = [float(value) for row in rows for value in row.values()]
        matrix: Any = csr_array((values, columns, ends), shape=(len(rows), self.columns))
        return LinearConstraint(
            matrix, lb=[low for _, low, _ in self._rows], ub=[high for *_, high in self._rows]
        )

    def _new(self, cost: int) -> int:
        self._costs.append(cost)
        return len(self._costs) - 1

    def _default_of(self, reader: int) -> int:
        """The unknown that is 1 where the second way is the default."""
        first, second = self._narrowed.tally.sure[2 * reader : 2 * reader + 2]
        self._always += second
        return self._new(first - second)

    def _ways_of(self, number: int) -> dict[int, int]:
        """The unknowns of a journey that runs from one end to the other, by stretch."""
        journey = self._narrowed.journeys[number]
        sure = {*self._narrowed.sure[number], NO_TURN}
        taken: dict[int, int] = {}
        balance: dict[int, dict[int, int]] = {}
        for each in journey.stretches:
            start, end, _, _, turn = self._stretches[each]
            cost = 0 if turn in sure else self._known_cost(turn)
            column = taken[each] = self._new(cost * journey.weight)
            balance.setdefault(start, {})[column] = 1
            balance.setdefault(end, {})[column] = -1
            if turn not in sure and turn >> 1 in self._default and journey.weight:
                self._call(turn, column, journey.weight)
        first, last = self._ends(journey)
        for place, row in balance.items():
            if place != last:
                out = 1 if place == first else 0
                self._rows.append((row, out, out))
        return taken

    def _known_cost(self, turn: int) -> int:
        default = self._narrowed.defaults[turn >> 1]
        return int(default is not None and default != turn & 1)

    def _call(self, turn: int, taken: int, weight: int) -> None:
        """Who takes a turn that is not the default calls the reader."""
        call = self._new(weight)
        row, low = self._off_default(turn)
        self._rows.append(({call: 1, taken: -1, **row}, low - 1, float("inf")))

    def _off_default(self, turn: int) -> tuple[dict[int, int], int]:
        """Minus whether a turn is off the default: a row, and what is to be added to the other side."""
        column = self._default[turn >> 1]
        return ({column: 1}, 1) if turn & 1 else ({column: -1}, 0)

    def _ends(self, journey: Journey) -> tuple[int, int]:
        return self._stretches[journey.stretches[0]].start, self._stretches[journey.stretches[-1]].end

    def _run(self, number: int, holds: Sequence[bool]) -> tuple[int, ...]:
        """The way that was found for a journey."""
        by_start = {
            self._stretches[each].start: each for each, column in self._runs[number].items() if holds[column]
        }
        place, last = self._ends(self._narrowed.journeys[number])
        run: list[int] = []
        while place != last:
            run.append(by_start[place])
            place = self._stretches[run[-1]].end
        return tuple(run)

    def _keep_pinned_names_apart(self) -> None:
        """Nobody passes a reader by its default with a waybill of its pinned name for a later one.

        Who is never called has no name, whatever is pinned.
        """
        task = self._narrowed.task
        named = {reader: self._new(0) for reader in sorted(task.alike)}
        for number, journey in enumerate(self._narrowed.journeys):
            pinned = [each for each in journey.stretches if self._stretches[each].turn >> 1 in named]
            for one in pinned:
                self._not_all(self._turned(number, one, called=True), [(named[self._reader(one)], False)])
            for one, other in combinations(pinned, 2):
                here, there = self._reader(one), self._reader(other)
                if here != there and task.names[here] == task.names[there]:
                    # Harmless where no way has both.
                    passed = self._turned(number, one, called=False)
                    called = self._turned(number, other, called=True)
                    self._not_all(passed, called, [(named[here], True)])

    def _reader(self, stretch: int) -> int:
        return self._stretches[stretch].turn >> 1

    def _turned(self, number: int, stretch: int, called: bool) -> Terms | None:
        """That a journey runs over a stretch, by default or being called; ``None``: it never does."""
        turn = self._stretches[stretch].turn
        terms = [(self._runs[number][stretch], True)] if number in self._runs else []
        default = self._narrowed.defaults[turn >> 1]
        if default is None:
            return [*terms, (self._default[turn >> 1], bool(turn & 1) != called)]
        return terms if (default != turn & 1) == called else None

    def _not_all(self, *groups: Terms | None) -> None:
        """Not all of these hold, each an unknown and whether it is to be 1."""
        row: dict[int, int] = {}
        for group in groups:
            if group is None:
                return
            row.update((column, 1 if wanted else -1) for column, wanted in group)
        self._rows.append((row, -float("inf"), sum(value > 0 for value in row.values()) - 1))


def _whole_bound(bound: float) -> int:
    """The least whole number that a bound from floating point allows, with room for its inexactness."""
    return ceil(bound - 1e-3 - 1e-9 * abs(bound))
