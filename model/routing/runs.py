"""Where a cart comes to over rails that can lie in one way only: most of a track is that."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator
from typing import TypeAlias

from model.grid import Cell, Heading
from model.routing.influence import Possible
from model.track.carts import WAY_OUT, Exits, next_rail
from model.track.layout import Layout
from model.track.rails import STEP, pack
from model.track.shapes import End

State = tuple[int, Heading]
"""The packed cell and the heading of a cart; it goes on alike however it came there."""
Goal: TypeAlias = State | str
"""What a cart comes to: a rail that can lie in several ways, or an arm by which it leaves."""
Before: TypeAlias = dict[Goal, set[Goal]]
"""By goal: the ones from which a cart can come there."""


class Runs:
    """Follows carts from one goal to the next, each way once."""

    def __init__(self, layout: Layout, exits: Exits, branching: Container[int]) -> None:
        self._rails = layout.rails
        self._stoppers = layout.stoppers
        self._exits = exits
        self._doors = {key for key, _ in exits}
        self._branching = branching
        self._known: dict[tuple[int, End], Goal | None] = {}

    def first(self, key: int, heading: Heading) -> Goal | None:
        """The first goal of a cart that enters a rail; ``None`` where it comes to none."""
        if key in self._branching:
            return key, heading
        return self.following(key, WAY_OUT[self._rails[key]][heading])

    def following(self, key: int, end: End) -> Goal | None:
        """The next goal of a cart that leaves a rail by one end; ``None`` where it comes to none."""
        if (key, end) not in self._known:
            self._known[key, end] = self._run_on(key, end)
        return self._known[key, end]

    def _run_on(self, key: int, end: End) -> Goal | None:
        rails, stoppers, branching, doors = self._rails, self._stoppers, self._branching, self._doors
        # Who goes round in a circle meets a state again that is marked ever more seldom (R. P. Brent, 1980).
        marked, steps, mark_at = (key, end), 0, 1
        while True:
            if key + STEP[end.heading] + end.rise in stoppers:
                return None
            if key in doors and (arm := self._exits.get((key, end.heading))) is not None:
                return arm
            following = next_rail(rails, key, end)
            if following is None:
                return None
            if following in branching:
                return following, end.heading
            key, end = following, WAY_OUT[rails[following]][end.heading]
            if (key, end) == marked:
                return None
            steps += 1
            if steps == mark_at:
                marked, mark_at = (key, end), 2 * mark_at


def cells_on_some_way(
    layout: Layout, possible: Possible, exits: Exits, starts: Iterable[tuple[Cell, Heading]]
) -> set[int]:
    """The rails of several shapes that lie on some way from a start to an arm, however the rails lie."""
    runs = Runs(layout, exits, possible)
    before: Before = {}
    waiting = [goal for cell, heading in starts if (goal := runs.first(pack(cell), heading)) is not None]
    known = set(waiting)
    while waiting:
        here = waiting.pop()
        for there in _goals_after(runs, possible, here):
            before.setdefault(there, set()).add(here)
            if there not in known:
                known.add(there)
                waiting.append(there)
    arms = [goal for goal in known if isinstance(goal, str)]
    return {goal[0] for goal in all_before(arms, before) if not isinstance(goal, str)}


def _goals_after(runs: Runs, possible: Possible, here: Goal) -> Iterator[Goal]:
    if not isinstance(here, str):
        key, heading = here
        for end in {WAY_OUT[shape][heading] for shape in possible[key]}:
            if (goal := runs.following(key, end)) is not None:
                yield goal


def all_before(goals: Iterable[Goal], before: Before, stop: State | None = None) -> set[Goal]:
    """The goals and all from where they can be come to, not through ``stop``."""
    reached = set(goals)
    waiting = list(reached)
    while waiting:
        here = waiting.pop()
        for earlier in () if here == stop else before.get(here, ()):
            if earlier not in reached:
                reached.add(earlier)
                waiting.append(earlier)
    return reached
