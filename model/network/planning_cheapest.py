"""The fewest waybills a week, by a mixed integer programme for each part of a task."""

from __future__ import annotations

import time
from collections.abc import Generator, Iterator
from typing import Final

import msgspec

from model.network.colouring import members
from model.network.planning_choice import Choice, choice_of, with_best_ways
from model.network.planning_narrowing import Narrowed
from model.network.planning_parts import Part, paid_anyway, paid_at_least, parts_of
from model.network.planning_programme import Programme
from model.network.planning_task import Task
from model.progress import Progress

COLUMNS_LIMIT: Final = 30_000
"""Stretches in a programme, each an unknown, at most; a larger part is left as greed has it."""


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
    if not narrowed.task.alike:
        first = Cheapest(greedy, bound + sum(least), tuple(zip(parts, least, strict=True)))
        yield first
        if first.proved:
            return
    solved_all = True
    # The other half is for the names.
    deadline = (time.monotonic() + deadline) / 2
    for number, part in enumerate(parts):
        yield Progress("defaults", number, len(parts))
        columns = sum(len(narrowed.journeys[journey].stretches) for journey in part.journeys)
        found = Programme(narrowed, part).solve(deadline) if columns <= COLUMNS_LIMIT else None
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
        choice = min(greedy, choice, key=lambda each: each.cost)
    yield Cheapest(choice, bound + sum(least), tuple(zip(parts, least, strict=True)))


def alike_in_all(
    narrowed: Narrowed, best: Cheapest, deadline: float
) -> Generator[Progress, None, dict[int, int]]:
    """Defaults that all of the cheapest choices have, where the best is proved to be one of them."""
    found: dict[int, int] = {}
    for number, (part, cost) in enumerate(best.of_parts):
        programme = Programme(narrowed, part)
        for reader in part.readers:
            yield Progress("defaults", number, len(best.of_parts))
            if best.choice is None or time.monotonic() > deadline:
                return found
            default = best.choice.defaults[reader]
            otherwise = programme.solve(deadline, {reader: 1 - default})
            if otherwise is not None and otherwise.bound > cost:
                found[reader] = default
    return found


def is_allowed(task: Task, choice: Choice) -> bool:
    """Whether no two readers that are pinned to one name need different names."""
    met = choice.conflicts(task.tracks.stretches)
    return not any(
        task.names[reader] == task.names[other]
        for reader in task.alike & set(met.readers)
        for other in task.alike & set(members(met.before[reader] & met.called))
    )
