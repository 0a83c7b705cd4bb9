"""The fewest waybills a week, by a mixed integer programme for each part of a task."""

from __future__ import annotations

import time
from collections.abc import Iterator, Sequence
from math import ceil
from typing import Any, Final

import msgspec

from model.network.colouring import members
from model.network.planning_choice import Choice, choice_of, with_best_ways
from model.network.planning_narrowing import Narrowed
from model.network.planning_parts import Part, paid_anyway, paid_at_least, parts_of
from model.network.planning_task import Journey, Task
from model.network.progress import Progress
from model.network.ways import NO_TURN

COLUMNS_LIMIT: Final = 60_000
"""Unknowns of a programme, at most; a larger part is left as greed has it."""


class Cheapest(msgspec.Struct, frozen=True):
    """The best that was found, and how little there could be at the least."""

    choice: Choice | None
    """``None``: no choice is allowed by the pinned names, or none was found in time."""
    bound: int
    """Proved: no choice costs less."""
    of_parts: tuple[tuple[Part, int], ...]
    """What is paid in each part."""

    @property
    def proved(self) -> bool:
        """Whether nothing costs less."""
        return self.choice is not None and self.choice.cost <= self.bound


def cheapest(narrowed: Narrowed, greedy: Choice, deadline: float) -> Iterator[Progress | Cheapest]:
    """The choice with the fewest waybills a week; the last one is the result. Begins with the greedy one."""
    parts = parts_of(narrowed)
    bound = paid_anyway(narrowed, parts)
    least = [paid_at_least(narrowed, part) for part in parts]
    defaults, runs = list(greedy.defaults), list(greedy.runs)
    if not narrowed.task.alike and bound + sum(least) >= greedy.cost:
        yield Cheapest(greedy, greedy.cost, tuple(zip(parts, least, strict=True)))
        return
    solved_all = True
    for number, part in enumerate(parts):
        yield Progress("defaults", number, len(parts))
        programme = _Programme(narrowed, part)
        found = programme.solve(deadline) if programme.columns <= COLUMNS_LIMIT else None
        if found is None:
            solved_all = False
            continue
        least[number] = max(least[number], found.bound)
        for reader, default in found.defaults.items():
            defaults[reader] = default
        for journey, run in found.runs.items():
            runs[journey] = run
    if narrowed.task.alike:
        found_all = choice_of(narrowed, defaults, runs) if solved_all else greedy
        choice = found_all if is_allowed(narrowed.task, found_all) else None
    else:
        choice = with_best_ways(narrowed, defaults)
        choice = min(choice, greedy, key=lambda each: each.cost)
    yield Cheapest(choice, bound + sum(least), tuple(zip(parts, least, strict=True)))


def is_allowed(task: Task, choice: Choice) -> bool:
    """Whether no two readers that are pinned to one name need different names."""
    return not any(
        task.names[reader] == task.names[other]
        for reader in task.alike & set(choice.conflicts.readers)
        for other in task.alike & set(members(choice.conflicts.odds[reader] & choice.conflicts.called))
    )


class _Found(msgspec.Struct, frozen=True):
    """What a programme gave."""

    defaults: dict[int, int]
    runs: dict[int, tuple[int, ...]]
    bound: int


class _Programme:
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

    def solve(self, deadline: float) -> _Found | None:
        """What is cheapest, or the best in time; ``None``: nothing was found."""
        if not self._costs:
            return None if any(high < 0 for *_, high in self._rows) else _Found({}, {}, self._always)
        # scipy is slow to import, and only this needs it.
        import numpy as np
        from scipy.optimize import Bounds, milp

        seconds = max(0.1, deadline - time.monotonic())
        solved: Any = milp(
            np.array(self._costs, dtype=float),
            integrality=np.ones(self.columns),
            bounds=Bounds(0, 1),
            constraints=self._constraints(),
            options={"mip_rel_gap": 0, "time_limit": seconds},
        )
        if solved.x is None:
            return None
        holds = [value > 0.5 for value in solved.x]
        return _Found(
            {reader: int(holds[column]) for reader, column in self._default.items()},
            {number: self._run(number, holds) for number in self._runs},
            self._always + _whole_bound(solved.mip_dual_bound),
        )

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
        """Nobody passes a reader by its default with a waybill of its pinned name for a later one."""
        task = self._narrowed.task
        for number, journey in enumerate(self._narrowed.journeys):
            pinned = [each for each in journey.stretches if self._stretches[each].turn >> 1 in task.alike]
            for place, one in enumerate(pinned):
                for other in pinned[place + 1 :]:
                    here, there = self._stretches[one].turn, self._stretches[other].turn
                    if task.names[here >> 1] == task.names[there >> 1] and here >> 1 != there >> 1:
                        self._not_both(number, one, other)

    def _not_both(self, number: int, passed: int, called: int) -> None:
        """A journey does not run over two stretches, the one by default and the other called.

        Harmless where no way has both.
        """
        row: dict[int, int] = {}
        limit = -1
        for each, off in ((passed, 0), (called, 1)):
            turn = self._stretches[each].turn
            if number in self._runs:
                column = self._runs[number][each]
                row[column] = row.get(column, 0) + 1
                limit += 1
            default = self._narrowed.defaults[turn >> 1]
            if default is not None:
                if (default != turn & 1) != bool(off):
                    return
                continue
            # What must not hold as well is that the second way is the default, or that it is not.
            wanted = (turn & 1) ^ off
            column = self._default[turn >> 1]
            row[column] = row.get(column, 0) + (1 if wanted else -1)
            limit += 1 if wanted else 0
        self._rows.append((row, -float("inf"), limit))


def _whole_bound(bound: float) -> int:
    """The least whole number that a bound from floating point allows, with room for its inexactness."""
    return ceil(bound - 1e-3 - 1e-9 * abs(bound))
