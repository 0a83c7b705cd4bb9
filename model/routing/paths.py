"""All ways that a cart can take over rails of several shapes, and what each way asks of the clusters.

Where all ways to an arm run through one stand they are listed stage by stage: ways multiply with each stage,
stages only add up.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Container, Iterable, Iterator, Sequence
from functools import reduce
from operator import or_
from typing import NamedTuple

from model.grid import Cell, Heading
from model.routing.clusters import Cluster
from model.routing.influence import Possible
from model.track.carts import WAY_OUT, Exits, next_rail
from model.track.layout import Layout
from model.track.rails import STEP, pack
from model.track.shapes import End, Shape

Box = dict[int, int]
"""What a way asks: for the index of a cluster, the states that serve, as a mask. Others may lie anyhow."""


State = tuple[int, Heading]
"""The packed cell and the heading of a cart; it goes on alike however it came there."""
Goal = State | str
"""Where a stage ends: at a state, or at an arm by which the cart leaves."""


class Path(NamedTuple):
    """One way to a goal: what it asks of the clusters, and how the rails of several shapes may lie on it."""

    box: Box
    shapes: dict[int, frozenset[Shape]]


Before = dict[Goal, set[Goal]]
"""By state or arm: the states from which a cart can come there."""
Stages = list[list[Path]]
"""The ways to an arm: one of each stage must be free. A stage without a way: the arm is out of reach."""


class _Stand(NamedTuple):
    """A cart on its way, on a rail of several shapes or on the first rail of all."""

    state: State
    box: Box
    shapes: dict[int, frozenset[Shape]]
    seen: frozenset[State]


class PathFinder:
    """Follows carts through a layout, branching where a rail can lie in several shapes."""

    def __init__(self, layout: Layout, exits: Exits, clusters: Sequence[Cluster]) -> None:
        self._layout = layout
        self._exits = exits
        self._masks = {
            cell: (index, cluster.states_with(cell))
            for index, cluster in enumerate(clusters)
            for cell in cluster.cells
        }
        self._runs: dict[tuple[int, End], Goal | None] = {}

    def stages(self, start: Cell, heading: Heading, arm: str) -> Stages:
        """The ways from a cell to an arm, in each stage each with different states of the clusters."""
        first = (pack(start), heading)
        way, before = self._look_for(first, arm)
        starts = [first, *(state for state in self._passed_by_all(way) if state not in (first, arm))]
        goals: list[Goal] = [*starts[1:], arm]
        return [
            self._paths(state, goal, _all_before([goal], before, stop=state))
            for state, goal in zip(starts, goals, strict=True)
        ]

    def _look_for(self, start: State, arm: str) -> tuple[list[Goal], Before]:
        """The states of a shortest way and the arm, or nothing; and from where each state can be come to."""
        before: Before = {}
        earlier: dict[Goal, Goal | None] = {start: None}
        waiting: deque[Goal] = deque([start])
        while waiting:
            here = waiting.popleft()
            for following in self._following(here, arm):
                before.setdefault(following, set()).add(here)
                if following not in earlier:
                    earlier[following] = here
                    waiting.append(following)
        way: list[Goal] = []
        last: Goal | None = arm if arm in earlier else None
        while last is not None:
            way.append(last)
            last = earlier[last]
        return way[::-1], before

    def _passed_by_all(self, way: list[Goal]) -> Iterator[State]:
        """The states of a way to an arm through which all others run, too: nothing leads past them."""
        rank = {state: index for index, state in enumerate(way)}
        farthest = 0
        seen: set[Goal] = set()
        for index, state in enumerate(way[:-1]):
            if farthest <= index and not isinstance(state, str):
                yield state
            waiting = [state]
            while waiting:
                for following in self._following(waiting.pop(), way[-1]):
                    if following in rank:
                        farthest = max(farthest, rank[following])
                    elif following not in seen:
                        seen.add(following)
                        waiting.append(following)

    def _following(self, here: Goal, arm: Goal) -> Iterator[Goal]:
        """What a cart may come to next; of the arms only the one that is looked for."""
        if isinstance(here, str):
            return
        key, heading = here
        for end in {WAY_OUT[shape][heading] for shape in self._shapes(key)}:
            following = self._run(key, end)
            if following is not None and (following == arm or not isinstance(following, str)):
                yield following

    def _shapes(self, key: int) -> Iterable[Shape]:
        masks = self._masks.get(key)
        return (self._layout.rails[key],) if masks is None else masks[1]

    def _run(self, key: int, end: End) -> Goal | None:
        """The next rail of several shapes, or the arm, that a cart comes to; ``None`` where to neither."""
        if (key, end) not in self._runs:
            self._runs[key, end] = self._run_on(key, end)
        return self._runs[key, end]

    def _run_on(self, key: int, end: End) -> Goal | None:
        seen: set[tuple[int, End]] = set()
        while (key, end) not in seen:
            seen.add((key, end))
            arm = _arm_left_by(self._layout.stoppers, self._exits, key, end)
            following = _rail_after(self._layout, key, end)
            if arm is not None or following is None:
                return arm
            if following in self._masks:
                return following, end.heading
            key, end = following, WAY_OUT[self._layout.rails[following]][end.heading]
        return None

    def _paths(self, start: State, goal: Goal, leading: set[Goal]) -> list[Path]:
        """The ways from a state to a goal over states that lead there."""
        found: list[Path] = []
        waiting = [_Stand(start, {}, {}, frozenset())]
        while waiting:
            stand = waiting.pop()
            for branch, end in self._branches(stand._replace(seen=stand.seen | {stand.state})):
                following = self._run(stand.state[0], end)
                if following == goal:
                    found.append(Path(branch.box, branch.shapes))
                elif following in leading and following not in branch.seen and not isinstance(following, str):
                    waiting.append(branch._replace(state=following))
        return found

    def _branches(self, stand: _Stand) -> Iterable[tuple[_Stand, End]]:
        """The ends by which the cart can leave, each with all shapes that lead there."""
        key, heading = stand.state
        if key not in self._masks:
            yield stand, WAY_OUT[self._layout.rails[key]][heading]
            return
        index, masks = self._masks[key]
        leading: dict[End, list[Shape]] = {}
        for shape in masks:
            leading.setdefault(WAY_OUT[shape][heading], []).append(shape)
        for end, shapes in leading.items():
            mask = reduce(or_, (masks[shape] for shape in shapes))
            allowed = stand.box.get(index, mask) & mask
            if allowed:
                lie = stand.shapes.get(key, frozenset(shapes)) & frozenset(shapes)
                box = {**stand.box, index: allowed}
                yield stand._replace(box=box, shapes={**stand.shapes, key: lie}), end


def cells_on_some_way(
    layout: Layout, possible: Possible, exits: Exits, starts: Iterable[tuple[Cell, Heading]]
) -> set[int]:
    """The rails of several shapes that lie on some way from a start to an arm, however the rails lie."""
    before: Before = {}
    waiting = [(pack(cell), heading) for cell, heading in starts]
    known: set[State] = set(waiting)
    arriving: set[State] = set()
    while waiting:
        here = waiting.pop()
        for end in _ends_possible(layout, possible, *here):
            if _arm_left_by(layout.stoppers, exits, here[0], end) is not None:
                arriving.add(here)
            elif (following := _rail_after(layout, here[0], end)) is not None:
                there = (following, end.heading)
                before.setdefault(there, set()).add(here)
                if there not in known:
                    known.add(there)
                    waiting.append(there)
    passed = _all_before(arriving, before)
    return {state[0] for state in passed if not isinstance(state, str) and state[0] in possible}


def _ends_possible(layout: Layout, possible: Possible, key: int, heading: Heading) -> set[End]:
    return {WAY_OUT[shape][heading] for shape in possible.get(key, (layout.rails[key],))}


def _all_before(goals: Iterable[Goal], before: Before, stop: State | None = None) -> set[Goal]:
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


def _arm_left_by(stoppers: Container[int], exits: Exits, key: int, end: End) -> str | None:
    """The arm by which a cart leaves, unless something stops it there."""
    arm = exits.get((key, end.heading))
    if arm is None or key + STEP[end.heading] + end.rise in stoppers:
        return None
    return arm


def _rail_after(layout: Layout, key: int, end: End) -> int | None:
    """The rail on which a cart goes on; ``None`` where it is stopped or leaves the track."""
    if key + STEP[end.heading] + end.rise in layout.stoppers:
        return None
    return next_rail(layout.rails, key, end)
