"""All ways that a cart can take over rails of several shapes, and what each way asks of the clusters."""

from __future__ import annotations

from collections.abc import Container, Iterable, Sequence
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


class Path(NamedTuple):
    """One way to an arm: what it asks of the clusters, and how the rails of several shapes may lie on it."""

    arm: str
    box: Box
    shapes: dict[int, frozenset[Shape]]


class _Stand(NamedTuple):
    """A cart on its way."""

    key: int
    heading: Heading
    box: Box
    shapes: dict[int, frozenset[Shape]]
    seen: frozenset[tuple[int, Heading]]


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

    def paths(self, start: Cell, heading: Heading) -> list[Path]:
        """The ways from a cell to any arm, each with different states of the clusters."""
        found: list[Path] = []
        waiting = [_Stand(pack(start), heading, {}, {}, frozenset())]
        while waiting:
            self._follow(waiting.pop(), waiting, found)
        return found

    def _follow(self, stand: _Stand, waiting: list[_Stand], found: list[Path]) -> None:
        """Runs on to the next rail of several shapes, or to the end of the way."""
        key, heading = stand.key, stand.heading
        seen = set(stand.seen)
        while (key, heading) not in seen:
            seen.add((key, heading))
            here = stand._replace(key=key, heading=heading, seen=frozenset(seen))
            if key in self._masks:
                for branch, end in self._branches(here):
                    self._leave(branch, end, waiting, found)
                return
            end = WAY_OUT[self._layout.rails[key]][heading]
            following = _rail_after(self._layout, key, end)
            if following is None or (key, end.heading) in self._exits:
                self._leave(here, end, waiting, found)
                return
            key, heading = following, end.heading

    def _leave(self, stand: _Stand, end: End, waiting: list[_Stand], found: list[Path]) -> None:
        """Ends the way at an arm, or puts the cart on the next rail."""
        arm = _arm_left_by(self._layout.stoppers, self._exits, stand.key, end)
        if arm is not None:
            found.append(Path(arm, stand.box, stand.shapes))
        elif (following := _rail_after(self._layout, stand.key, end)) is not None:
            waiting.append(stand._replace(key=following, heading=end.heading))

    def _branches(self, stand: _Stand) -> Iterable[tuple[_Stand, End]]:
        """The ends by which the cart can leave, each with all shapes that lead there."""
        index, masks = self._masks[stand.key]
        leading: dict[End, list[Shape]] = {}
        for shape in masks:
            leading.setdefault(WAY_OUT[shape][stand.heading], []).append(shape)
        for end, shapes in leading.items():
            mask = reduce(or_, (masks[shape] for shape in shapes))
            allowed = stand.box.get(index, mask) & mask
            if allowed:
                lie = stand.shapes.get(stand.key, frozenset(shapes)) & frozenset(shapes)
                box = {**stand.box, index: allowed}
                yield stand._replace(box=box, shapes={**stand.shapes, stand.key: lie}), end


def cells_on_some_way(
    layout: Layout, possible: Possible, exits: Exits, starts: Iterable[tuple[Cell, Heading]]
) -> set[int]:
    """The rails of several shapes that lie on some way from a start to an arm, however the rails lie."""
    before: dict[tuple[int, Heading], set[tuple[int, Heading]]] = {}
    waiting = [(pack(cell), heading) for cell, heading in starts]
    known, arriving = set(waiting), set()
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
    return {key for key, _ in _all_before(arriving, before) if key in possible}


def _ends_possible(layout: Layout, possible: Possible, key: int, heading: Heading) -> set[End]:
    return {WAY_OUT[shape][heading] for shape in possible.get(key, (layout.rails[key],))}


def _all_before(
    arriving: set[tuple[int, Heading]], before: dict[tuple[int, Heading], set[tuple[int, Heading]]]
) -> set[tuple[int, Heading]]:
    reached, waiting = set(arriving), list(arriving)
    while waiting:
        for earlier in before.get(waiting.pop(), ()):
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
