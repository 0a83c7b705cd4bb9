"""Which switches are wired, what throws them, and how every rail then lies in each setting.

Common practice of the trade, written from memory, no published source: as built, then every wired switch is
powered and released in the order of placing, then those of the setting are powered; the same must come of it
in the reverse order.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations
from typing import Final

import networkx as nx

from model.grid import Heading
from model.ordering.clauses import Clauses, Statement
from model.ordering.ground import Ground
from model.ordering.linking import Linking
from model.ordering.lying import Ends, Shapes, ends_as_built, shapes_of_ends
from model.ordering.powering import Lie, Powering
from model.track.rails import BIT, MASK

IDLE: Final = -1
"""The setting in which no reader holds; reader k's own setting is k."""


class Wiring:
    """The sentences about wired switches and the shapes in each setting."""

    def __init__(self, clauses: Clauses, ground: Ground, linking: Linking, readers: int) -> None:
        self._clauses = clauses
        self._ground = ground
        self._linking = linking
        self._powering = Powering(clauses, ground)
        self.settings = (IDLE, *range(readers))
        switches = ground.three_way
        self.idle = {key: clauses.new() for key in switches}
        """Powered while no reader holds."""
        self.thrown = {(key, k): clauses.new() for key in switches for k in range(readers)}
        """Thrown by a reader."""
        self._power = {pair: self._differ(self.idle[pair[0]], thrown) for pair, thrown in self.thrown.items()}
        self.wired = {key: self._wired(key, readers) for key in switches}
        for key in switches:
            self._say_room(key)
        self.built: dict[int, Ends] = {key: self._built(key) for key in ground.relevant}
        """How rails lie as built."""
        self._partners = _partners(ground)
        self._in_setting: dict[tuple[int, int], Shapes] = {}
        self._as_built = {key: self._shapes(key, ends) for key, ends in self.built.items()}
        for group in nx.connected_components(self._partners):
            self._say_group(sorted(group, key=ground.rails.index))

    def power(self, key: int, setting: int) -> Statement:
        """A switch is powered in a setting."""
        return self.idle[key] if setting == IDLE else self._power[key, setting]

    def shapes(self, key: int, setting: int) -> Shapes:
        """How a relevant rail lies in a setting."""
        return self._in_setting.get((key, setting), self._as_built[key])

    def region(self, key: int) -> tuple[int, ...]:
        """The switches on which the shape of a rail may hang: those near it, and those near these, wired."""
        near = [other for other in (key, *self._ground.beside[key].values()) if other in self.wired]
        found = dict.fromkeys(near)
        waiting = list(near)
        while waiting:
            switch = waiting.pop()
            if self._clauses.holds(self.wired[switch]):
                news = [partner for partner in self._partners[switch] if partner not in found]
                found.update(dict.fromkeys(news))
                waiting += news
        return tuple(found)

    def _wired(self, key: int, readers: int) -> Statement:
        return self._clauses.any_of([self.idle[key], *(self.thrown[key, k] for k in range(readers))])

    def _differ(self, one: Statement, other: Statement) -> Statement:
        clauses = self._clauses
        return clauses.any_of([clauses.all_of([one, -other]), clauses.all_of([-one, other])])

    def _say_room(self, key: int) -> None:
        """A rail that is wired is a switch: as built, all three neighbours have room for it."""
        for other in self._ground.beside[key].values():
            thirds = [third for third in self._ground.beside[other].values() if third != key]
            for pair in combinations(thirds, 2):
                links = (self._linking.link(other, third) for third in pair)
                self._clauses.say(-self.wired[key], *(-link for link in links))

    def _built(self, key: int) -> Ends:
        return ends_as_built(self._clauses, self._linking.reaches(key), self._linking.lies_north_south[key])

    def _shapes(self, key: int, ends: Ends) -> Shapes:
        return shapes_of_ends(self._clauses, self._ground, key, ends, self._linking.links(key))

    def _say_group(self, group: Sequence[int]) -> None:
        """How the rails near switches that may bear on one another lie in each setting."""
        near = dict.fromkeys(
            key for switch in group for key in (switch, *self._ground.beside[switch].values())
        )
        around = {other for key in near for other in self._ground.beside[key].values()}
        built = {key: self._ends_as_built(key) for key in near.keys() | around}
        mixed = self._is_mixed(group)
        orders = (group, group[::-1]) if len(group) > 1 else (group,)
        cycled = [self._cycled(built, order) for order in orders]
        for setting in self.settings:
            lies = [self._set(lie, order, setting) for lie, order in zip(cycled, orders, strict=True)]
            for key in near:
                ends = self._agreed([lie[key] for lie in lies], mixed)
                shapes = self._in_setting[key, setting] = self._shapes(key, ends)
                self._clauses.exactly_one_of(list(shapes.values()))

    def _ends_as_built(self, key: int) -> Ends:
        """Also of a rail on a plain run, which lies alike in every order."""
        if key in self.built:
            return self.built[key]
        mask = MASK[self._ground.layout.rails[key]]
        true = self._clauses.true
        return {heading: true if mask & BIT[heading] else -true for heading in Heading}

    def _cycled(self, lie: Lie, order: Sequence[int]) -> Lie:
        for switch in order:
            for powered in (True, False):
                lie = self._powering.noticed(lie, switch, self.wired[switch], powered=powered)
        return lie

    def _set(self, lie: Lie, order: Sequence[int], setting: int) -> Lie:
        for switch in order:
            lie = self._powering.noticed(lie, switch, self.power(switch, setting), powered=True)
        return lie

    def _agreed(self, ends: Sequence[Ends], mixed: Statement) -> Ends:
        """The ends that come of both orders; any where the order of placing is neither of the two."""
        clauses = self._clauses
        first = ends[0]
        for other in ends[1:]:
            for heading in Heading:
                clauses.say(mixed, -first[heading], other[heading])
                clauses.say(mixed, first[heading], -other[heading])
        if mixed == clauses.false:
            return first
        free = {heading: clauses.new() for heading in Heading}
        for heading, end in free.items():
            clauses.say(mixed, -end, first[heading])
            clauses.say(mixed, end, -first[heading])
        return free

    def _is_mixed(self, group: Sequence[int]) -> Statement:
        """Of the wired switches, partners come neither all as in the group nor all the other way round."""
        clauses = self._clauses
        rank = {key: index for index, key in enumerate(group)}
        mixed: list[Statement] = []
        for middle in group:
            for one, other in combinations(self._partners[middle], 2):
                signs = [
                    self._linking.before(*sorted((middle, partner), key=rank.__getitem__))
                    for partner in (one, other)
                ]
                wired = [self.wired[key] for key in (middle, one, other)]
                mixed.append(clauses.all_of([*wired, self._differ(*signs)]))
        return clauses.any_of(mixed)


def _partners(ground: Ground) -> nx.Graph[int]:
    """Switches that may bear on one another: beside one another, or beside one rail."""
    graph: nx.Graph[int] = nx.Graph()
    graph.add_nodes_from(ground.three_way)
    for switch in ground.three_way:
        for near in ground.beside[switch].values():
            for other in (near, *ground.beside[near].values()):
                if other in graph and other != switch:
                    graph.add_edge(switch, other)
    return graph
