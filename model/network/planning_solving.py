"""One task from the first greedy plan to a proved one."""

from __future__ import annotations

import time
from collections.abc import Generator, Iterator, Sequence
from fractions import Fraction
from typing import Final

import msgspec

from model.network.network import ReaderPin
from model.network.planning_cheapest import Cheapest, alike_in_all, cheapest
from model.network.planning_choice import greedy_choice
from model.network.planning_names import best_names
from model.network.planning_naming import Named
from model.network.planning_narrowing import Narrowed, narrowed
from model.network.planning_task import Pin, Survey, Task
from model.progress import Progress

EXACT_READERS: Final = 100
"""With more readers than this only the names are looked for, with defaults and ways as they are."""
SOON_READERS: Final = 1_000
"""With more readers than this there is no plan before it is as cheap as can be, since naming takes long."""


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
        last: Solved | None = None
        for step in _attempt(narrowed(task), deadline):
            if isinstance(step, Progress):
                yield step
            elif (better := _better(step, last)) != last:
                last = better
                yield msgspec.structs.replace(last, unkept=(*last.unkept, *given_up))
        if last is not None:
            return
        given_up.append(_last_pin_alike(task, pins))
        pins.remove(given_up[-1])


def _last_pin_alike(task: Task, pins: Sequence[Pin]) -> Pin:
    alike = {task.tracks.readers[reader].key for reader in task.alike}
    return [pin for pin in pins if isinstance(pin, ReaderPin) and pin.name and pin.reader in alike][-1]


def _attempt(open_task: Narrowed, deadline: float) -> Iterator[Progress | Solved]:
    """The plans of one task; none where pinned names allow none."""
    exact = len(open_task.defaults) <= EXACT_READERS
    best = yield from _cheapest(open_task, deadline)
    while exact and best.proved and (more := (yield from alike_in_all(open_task, best, deadline))):
        given = tuple(more.get(reader, default) for reader, default in enumerate(open_task.defaults))
        less_open = narrowed(msgspec.structs.replace(open_task.task, given=given))
        again = yield from _cheapest(less_open, deadline)
        if not again.proved:
            break
        open_task, best = less_open, again
    if best.choice is None:
        return
    for named in best_names(open_task, best.choice, best.of_parts if exact and best.proved else None):
        yield Solved(open_task.task, named, best.bound, open_task.task.unkept)
        yield Progress("names", named.bound, named.number)
        if time.monotonic() > deadline:
            return


def _cheapest(open_task: Narrowed, deadline: float) -> Generator[Progress | Solved, None, Cheapest]:
    """What is cheapest in the end; until then, in networks that are not very large, what greed has found."""
    last: Cheapest | None = None
    for step in cheapest(open_task, greedy_choice(open_task), deadline):
        if isinstance(step, Progress):
            yield step
            continue
        last = step
        if step.choice is not None and not step.proved and len(open_task.defaults) <= SOON_READERS:
            named = next(best_names(open_task, step.choice, None))
            yield Solved(open_task.task, named, step.bound, open_task.task.unkept)
    assert last is not None, "something is always found, if it is that nothing is allowed"
    return last


def _better(new: Solved, old: Solved | None) -> Solved:
    """The better of two plans for one network, with what is proved by either."""
    if old is None:
        return new
    plan = min(old, new, key=lambda each: (each.named.choice.cost, each.named.number))
    named = msgspec.structs.replace(plan.named, bound=max(old.named.bound, new.named.bound))
    return msgspec.structs.replace(plan, named=named, cost_bound=max(old.cost_bound, new.cost_bound))
