"""Which rails would have to lie in a shape that they cannot take, for a wanted route to arrive."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Iterator
from typing import Final, NamedTuple

from model.grid import Cell, Heading
from model.routing.control import WantedRoute
from model.routing.junction import Junction
from model.track.carts import WAY_OUT, exits_of, next_rail
from model.track.rails import STEP, neighbour_mask, pack, unpack
from model.track.shapes import CURVES, FLAT, Shape

_ALL_FOUR: Final = 0b1111

Possible = dict[int, set[Shape]]
"""The shapes in which switches and the rails that they bend can lie, by packed cell."""
_State = tuple[int, Heading]


def routes_by_bend(junction: Junction) -> dict[Cell, list[WantedRoute]]:
    """The four-way, booster and detector rails for want of whose bending wanted routes are not reached.

    Each with those routes. Of a route the fewest such rails by which it would arrive count.
    Switches may lie in any of their shapes here: what they cannot do together is a conflict, not this.
    """
    missed = [route for route in junction.wanted if route in junction.ways and not junction.reaches(route)]
    possible = _possible_shapes(junction) if missed else {}
    starts = dict.fromkeys(route.start for route in missed)
    searches = {start: _Search(junction, start, possible) for start in starts}
    by_bend: dict[Cell, list[WantedRoute]] = {}
    for route in missed:
        for cell in searches[route.start].bends_to(route.goal):
            by_bend.setdefault(cell, []).append(route)
    return by_bend


class _Step(NamedTuple):
    before: _State | None
    bent: int | None
    """The rail that had to bend on the way from there."""


class _Search:
    """The ways from one arm with the fewest bends, by a breadth-first search with steps of cost 0 and 1."""

    def __init__(self, junction: Junction, start: str, possible: Possible) -> None:
        self._layout = junction.layout
        self._exits = exits_of(junction.plan.arms)
        self._possible = possible
        self._steps: dict[_State, _Step] = {}
        self._goals: dict[str, tuple[int, ...]] = {}
        arm = junction.plan.details.arm(start)
        assert arm is not None
        assert arm.enter is not None
        self._run((pack(arm.enter.at), arm.enter.heading))

    def bends_to(self, goal: str) -> tuple[Cell, ...]:
        """The rails that would have to bend; none where the goal cannot be reached at all."""
        return tuple(unpack(key) for key in self._goals.get(goal, ()))

    def _run(self, start: _State) -> None:
        waiting: deque[tuple[_State, _Step]] = deque([(start, _Step(None, None))])
        while waiting:
            state, step = waiting.popleft()
            if state in self._steps:
                continue
            self._steps[state] = step
            for following, bent in self._following(state):
                entry = (following, _Step(state, bent))
                waiting.append(entry) if bent is not None else waiting.appendleft(entry)

    def _following(self, state: _State) -> Iterator[tuple[_State, int | None]]:
        key, heading = state
        free = {WAY_OUT[shape][heading] for shape in self._possible.get(key, (self._layout.rails[key],))}
        bent = {WAY_OUT[shape][heading] for shape in self._bendings(key)} - free
        for end in sorted(free | bent):
            cost = key if end in bent else None
            if key + STEP[end.heading] + end.rise in self._layout.stoppers:
                continue
            arm = self._exits.get((key, end.heading))
            if arm is not None:
                self._arrive(arm, state, cost)
                continue
            following = next_rail(self._layout.rails, key, end)
            if following is not None:
                yield (following, end.heading), cost

    def _arrive(self, arm: str, state: _State, bent: int | None) -> None:
        """Notes a goal; the way with the fewest bends stays."""
        bends = tuple(dict.fromkeys(key for key in (*self._bends_before(state), bent) if key is not None))
        if arm not in self._goals or len(bends) < len(self._goals[arm]):
            self._goals[arm] = bends

    def _bends_before(self, state: _State) -> list[int]:
        bends: list[int] = []
        step = self._steps[state]
        while step.before is not None:
            if step.bent is not None:
                bends.append(step.bent)
            step = self._steps[step.before]
        return bends[::-1]

    def _bendings(self, key: int) -> Iterable[Shape]:
        """The shapes that a rail would need a power for which it does not have."""
        if key in self._layout.straight_only:
            return CURVES
        return FLAT if neighbour_mask(self._layout.rails, key) == _ALL_FOUR else ()


def _possible_shapes(junction: Junction) -> Possible:
    possible: Possible = {}
    for cell, states in junction.switch_states.items():
        possible[pack(cell)] = {junction.layout.rails[pack(cell)], states.resting, states.powered}
    for powered in junction.settings.values():
        for cell, shape in junction.shapes(powered).changed.items():
            possible.setdefault(pack(cell), {junction.layout.rails[pack(cell)]}).add(shape)
    return possible
