"""One task from the first greedy plan to a proved one."""

from __future__ import annotations

import time
from collections.abc import Iterator, Sequence
from fractions import Fraction

import msgspec

from model.network.network import ReaderPin
from model.network.planning_cheapest import Cheapest, cheapest
from model.network.planning_choice import greedy_choice
from model.network.planning_names import best_names
from model.network.planning_naming import Named
from model.network.planning_narrowing import Narrowed, narrowed
from model.network.planning_task import Pin, Survey, Task
from model.network.progress import Progress


class Solved(msgspec.Struct, frozen=True):
    """A plan in whole numbers."""

    task: Task
    named: Named
    cost_bound: int
    """Proved: no plan has fewer waybills a week, in units of the task."""
    unkept: tuple[Pin, ...]

    @property
    def waybills_per_week(self) -> Fraction:
        """What is carried."""
        return self.named.choice.cost * self.task.unit

    @property
    def cheapest(self) -> bool:
        """Whether no plan is known to be possible with fewer waybills a week."""
        return self.named.choice.cost <= self.cost_bound

    @property
    def proved(self) -> bool:
        """Whether nothing is better."""
        return self.cheapest and self.named.number <= self.named.bound


def solved(survey: Survey, pins: Sequence[Pin], deadline: float) -> Iterator[Progress | Solved]:
    """Plans, each better or more certain than the one before; the last one is the result.

    Pins of names that no plan can keep together are given up, the last one first.
    """
    pins = list(pins)
    given_up: list[Pin] = []
    while True:
        task = survey.task(pins)
        yield Progress("defaults", 0, 1)
        found = False
        for step in _attempt(narrowed(task), deadline):
            found = found or isinstance(step, Solved)
            if isinstance(step, Solved):
                step = msgspec.structs.replace(step, unkept=(*step.unkept, *given_up))
            yield step
        if found:
            return
        given_up.append(_last_pin_alike(task, pins))
        pins.remove(given_up[-1])


def _last_pin_alike(task: Task, pins: Sequence[Pin]) -> Pin:
    alike = {task.tracks.readers[reader].key for reader in task.alike}
    return [pin for pin in pins if isinstance(pin, ReaderPin) and pin.name and pin.reader in alike][-1]


def _attempt(open_task: Narrowed, deadline: float) -> Iterator[Progress | Solved]:
    """The plans of one task; none where pinned names allow none."""
    task = open_task.task
    greedy = greedy_choice(open_task)
    best: Cheapest | None = None
    for step in cheapest(open_task, greedy, deadline):
        if isinstance(step, Progress):
            yield step
        else:
            best = step
    if best is None or best.choice is None:
        return
    last: Named | None = None
    for named in best_names(open_task, best.choice, best.of_parts if best.proved else None):
        if last is None or (named.number, -named.bound) < (last.number, -last.bound):
            last = named
            yield Solved(task, named, best.bound, task.unkept)
        yield Progress("names", named.bound, named.number)
        if time.monotonic() > deadline:
            return
