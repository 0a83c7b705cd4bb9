"""Names for a choice, and where it pays for other choices that are as cheap."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from model.network.colouring import colourings, largest_clique, with_pins_at_odds
from model.network.planning_choice import Choice
from model.network.planning_conflicts import Conflicts
from model.network.planning_naming import Named, effort, fewer_names
from model.network.planning_narrowing import Narrowed
from model.network.planning_parts import Part
from model.network.planning_task import Task

EFFORT_LIMIT: Final = 2_000_000
"""Sentences, about, that the search for fewer names among open defaults and ways may take."""


def best_names(
    narrowed: Narrowed, choice: Choice, costs: Sequence[tuple[Part, int]] | None
) -> Iterator[Named]:
    """Better and better names; the last one is the result.

    ``costs``: what each part costs at the least; ``None`` where it is not proved that the choice is the
    cheapest, or where no other is to be looked for. The bound holds for all that are the cheapest.
    """
    incomplete = narrowed.tally.any_incomplete
    settled = not (narrowed.open_readers or narrowed.open_journeys or incomplete)
    named: Named | None = None
    looks_further = not settled and not incomplete
    for named in _names_for(narrowed, choice, settled):
        yield named
        if looks_further and costs is not None and effort(narrowed, named.number) <= EFFORT_LIMIT:
            if named.bound < named.number:
                yield from fewer_names(narrowed, costs, named)
            return


def _names_for(narrowed: Narrowed, choice: Choice, settled: bool) -> Iterator[Named]:
    """Names for a choice. Where there is no other, a bound for it is a bound for all."""
    task, met = narrowed.task, choice.conflicts(narrowed.task.tracks.stretches)
    bound = 0 if settled else _sure_bound(narrowed)
    pinned = _Pinned(task, met)
    for colouring in colourings(met.odds(), pinned.colours):
        names: list[int | None] = [None] * len(choice.defaults)
        for reader, colour in zip(met.readers, colouring.colours, strict=True):
            names[reader] = pinned.name(colour)
        yield Named(choice, tuple(names), max(bound, colouring.bound) if settled else bound)


def _sure_bound(narrowed: Narrowed) -> int:
    """How many names there are at the least in any of the cheapest plans."""
    sure = narrowed.sure_conflicts()
    return len(largest_clique(with_pins_at_odds(sure.odds(), _Pinned(narrowed.task, sure).colours)))


class _Pinned:
    """The names that are pinned to readers which are called, as colours from 0 without a gap."""

    def __init__(self, task: Task, met: Conflicts) -> None:
        self._known = len(task.words)
        self._names = sorted({task.names[reader] for reader in met.readers if reader in task.names})
        colour = {name: number for number, name in enumerate(self._names)}
        self.colours = {
            place: colour[task.names[reader]]
            for place, reader in enumerate(met.readers)
            if reader in task.names
        }
        """By the place of the reader among those that are called."""

    def name(self, colour: int) -> int:
        """The number of a name; those that are pinned, called or not, come first."""
        return self._names[colour] if colour < len(self._names) else self._known + colour - len(self._names)
