"""All ways that a cart can take over rails of several shapes, and what each move asks of the clusters.

Where all ways to an arm run through one state they are cut there: ways multiply with each stage, stages only
add up.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator, Sequence
from functools import reduce
from operator import or_
from typing import Final, NamedTuple

from model.grid import Cell, Heading
from model.routing.clusters import Cluster
from model.routing.runs import Before, Goal, Runs, State, all_before
from model.track.carts import WAY_OUT, Exits
from model.track.layout import Layout
from model.track.rails import pack
from model.track.shapes import End, Shape


class Move(NamedTuple):
    """One way to go on from a rail of several shapes."""

    cluster: int
    states: int
    """The states of the cluster in which the rail leads there, as a mask."""
    shapes: frozenset[Shape]
    """The same as shapes of the rail."""
    following: Goal


class Stage(NamedTuple):
    """A part of the ways to an arm: from a state that all of them pass to the next such state, or the arm."""

    start: Goal
    goal: Goal
    moves: dict[State, tuple[Move, ...]]
    """By state, the moves that may lead to the goal; where the start has none the goal is out of reach."""

    @property
    def clusters(self) -> set[int]:
        """The clusters that some way passes."""
        return {move.cluster for moves in self.moves.values() for move in moves}

    @property
    def first_moves(self) -> tuple[Move, ...]:
        """The moves of which every cart takes one."""
        return () if isinstance(self.start, str) else self.moves.get(self.start, ())


OUT_OF_REACH: Final = Stage("", "-", {})
"""A stage that no cart can pass."""


class PathFinder:
    """Follows carts through a layout, branching where a rail can lie in several shapes."""

    def __init__(self, layout: Layout, exits: Exits, clusters: Sequence[Cluster]) -> None:
        self._masks = {
            cell: (index, cluster.states_with(cell))
            for index, cluster in enumerate(clusters)
            for cell in cluster.cells
        }
        self._runs = Runs(layout, exits, self._masks)
        self._known_moves: dict[State, tuple[Move, ...]] = {}

    def stages(self, start: Cell, heading: Heading, arm: str) -> tuple[Stage, ...]:
        """The ways from a cell to an arm; none are needed where every cart comes there."""
        first = self._runs.first(pack(start), heading)
        if first == arm:
            return ()
        way = [] if first is None else self._look_for(first, arm)
        if not way:
            return (OUT_OF_REACH,)
        starts = list(self._passed_by_all(way))
        goals: list[Goal] = [*starts[1:], arm]
        return tuple(self._stage(start, goal) for start, goal in zip(starts, goals, strict=True))

    def _look_for(self, start: Goal, arm: str) -> list[Goal]:
        """The states of a shortest way and the arm, or nothing."""
        earlier: dict[Goal, Goal | None] = {start: None}
        waiting: deque[Goal] = deque([start])
        while waiting:
            here = waiting.popleft()
            for following in self._following(here, arm):
                if following not in earlier:
                    earlier[following] = here
                    waiting.append(following)
        way: list[Goal] = []
        last: Goal | None = arm if arm in earlier else None
        while last is not None:
            way.append(last)
            last = earlier[last]
        return way[::-1]

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
        for move in self._moves_from(here):
            if move.following == arm or not isinstance(move.following, str):
                yield move.following

    def _stage(self, start: State, goal: Goal) -> Stage:
        """The ways from a state to the goal, over states from which carts come there and not back."""
        ahead = self._moves_ahead(start, goal)
        before: Before = {}
        for here, moves in ahead.items():
            for move in moves:
                before.setdefault(move.following, set()).add(here)
        leading = all_before([goal], before, stop=start)
        return Stage(
            start,
            goal,
            {
                here: tuple(move for move in moves if move.following in leading)
                for here, moves in ahead.items()
                if here in leading
            },
        )

    def _moves_ahead(self, start: State, goal: Goal) -> dict[State, tuple[Move, ...]]:
        """All moves that can be made on the way from a state, by state, none beyond the goal."""
        ahead: dict[State, tuple[Move, ...]] = {}
        waiting: list[Goal] = [start]
        while waiting:
            here = waiting.pop()
            if here != goal and here not in ahead and not isinstance(here, str):
                ahead[here] = self._moves_from(here)
                waiting.extend(move.following for move in ahead[here])
        return ahead

    def _moves_from(self, here: Goal) -> tuple[Move, ...]:
        """How a cart can leave a rail of several shapes, shapes that lead the same way taken together."""
        if isinstance(here, str):
            return ()
        if here not in self._known_moves:
            key, heading = here
            index, masks = self._masks[key]
            leading: dict[End, list[Shape]] = {}
            for shape in masks:
                leading.setdefault(WAY_OUT[shape][heading], []).append(shape)
            self._known_moves[here] = tuple(
                Move(index, reduce(or_, (masks[shape] for shape in shapes)), frozenset(shapes), following)
                for end, shapes in leading.items()
                if (following := self._runs.following(key, end)) is not None
            )
        return self._known_moves[here]
