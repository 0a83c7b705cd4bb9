"""Clusters: switches that bear on one another, and the states in which a cluster can come to lie.

Switches of different clusters do not see each other, so what the signals make of a plan is worked out
cluster by cluster.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import cached_property
from typing import NamedTuple

from model.routing.influence import Influence, Shapes
from model.track.shapes import Shape

State = tuple[Shape, ...]
"""The shapes of a cluster's cells, in the order of ``Cluster.cells``."""


class Wiring(NamedTuple):
    """Which switches of a cluster are wired and which powered, as masks over ``Cluster.switches``."""

    wired: int
    powered: int


class Cluster:
    """Switches that bear on one another, in file order, with all rails that they bend."""

    def __init__(
        self, influence: Influence, built: Shapes, switches: Sequence[int], cells: Iterable[int]
    ) -> None:
        self.switches = tuple(switches)
        self.cells = tuple(sorted(cells))
        self._influence = influence
        self._built = tuple(built[key] for key in self.cells)
        self._index = {key: index for index, key in enumerate(self.cells)}
        self._known: dict[tuple[State, int, bool], State] = {}

    @cached_property
    def states(self) -> dict[Wiring, int]:
        """For every wiring the number of the state in which the cluster then lies."""
        numbers = {state: number for number, state in enumerate(self.distinct)}
        return {wiring: numbers[state] for wiring, state in self._in_file_order.items()}

    @cached_property
    def distinct(self) -> tuple[State, ...]:
        """The states that come up, in the order of their numbers."""
        return tuple(dict.fromkeys(self._in_file_order.values()))

    @cached_property
    def stable(self) -> frozenset[Wiring]:
        """The wirings whose state is the same when the power changes come in reverse file order."""
        backwards = self._lain(tuple(reversed(range(len(self.switches)))))
        return frozenset(w for w, state in self._in_file_order.items() if backwards[w] == state)

    def states_with(self, cell: int) -> dict[Shape, int]:
        """For every shape of a cell the states that have it, as a mask over the numbers of states."""
        index = self._index[cell]
        masks: dict[Shape, int] = {}
        for number, state in enumerate(self.distinct):
            masks[state[index]] = masks.get(state[index], 0) | 1 << number
        return masks

    @cached_property
    def _in_file_order(self) -> dict[Wiring, State]:
        return self._lain(tuple(range(len(self.switches))))

    def _lain(self, order: Sequence[int]) -> dict[Wiring, State]:
        """The state of every wiring when the power changes come in this order."""
        cycled = {0: self._built}
        for index in order:
            for wired, state in list(cycled.items()):
                released = self._noticed(self._noticed(state, index, True), index, False)
                cycled[wired | 1 << index] = released
        lain: dict[Wiring, State] = {}
        for wired, state in cycled.items():
            powered = {0: state}
            for index in order:
                if wired >> index & 1:
                    more = {p | 1 << index: self._noticed(s, index, True) for p, s in powered.items()}
                    powered.update(more)
            lain.update({Wiring(wired, p): s for p, s in powered.items()})
        return lain

    def _noticed(self, state: State, index: int, powered: bool) -> State:
        """The state after a notice at one switch."""
        question = (state, index, powered)
        known = self._known.get(question)
        if known is None:
            reaction = self._influence.reactions[self.switches[index]][powered]
            after = list(state)
            for key, shape in reaction.written(dict(zip(self.cells, state, strict=True))).items():
                if key in self._index:
                    after[self._index[key]] = shape
            known = self._known[question] = tuple(after)
        return known


def clusters_that_bear_on(
    influence: Influence, built: Shapes, switches: Sequence[int], cells: Iterable[int]
) -> list[Cluster]:
    """The clusters of those switches that can change the shape of one of ``cells``; in file order."""
    relevant = _switches_that_bear_on(influence, switches, set(cells))
    groups: list[tuple[list[int], set[int]]] = []
    for switch in (s for s in switches if s in relevant):
        touched = influence.reads(switch) | influence.writes(switch) | {switch}
        touching = [group for group in groups if not group[1].isdisjoint(touched)]
        merged = ([s for group in touching for s in group[0]], touched.union(*(g[1] for g in touching)))
        merged[0].append(switch)
        groups = [group for group in groups if group not in touching] + [merged]
    rank = {switch: index for index, switch in enumerate(switches)}
    ordered = [(sorted(members, key=rank.__getitem__), touched) for members, touched in groups]
    ordered.sort(key=lambda group: rank[group[0][0]])
    return [Cluster(influence, built, members, touched) for members, touched in ordered]


def _switches_that_bear_on(influence: Influence, switches: Sequence[int], cells: set[int]) -> set[int]:
    """The switches that bend one of the cells, or a rail on which such a switch depends, and so on."""
    relevant: set[int] = set()
    cells = set(cells)
    grown = True
    while grown:
        news = {s for s in switches if s not in relevant and not influence.writes(s).isdisjoint(cells)}
        for switch in news:
            cells |= influence.reads(switch)
        relevant |= news
        grown = bool(news)
    return relevant
