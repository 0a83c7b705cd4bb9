"""Which switches are wired, what throws them, and how every rail then lies in each setting.

Common practice of the trade, written from memory, no published source: as built, then every wired switch is
powered and released in the order of placing, then those of the setting are powered; the same must come of it
in the reverse order.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations
from typing import TYPE_CHECKING, Final

from model.clauses import Clauses, Statement
from model.ordering.as_built import AsBuilt
from model.ordering.ground import Ground
from model.ordering.linking import Linking
from model.ordering.lying import Shapes
from model.ordering.powering import Lie
from model.ordering.sequence import Before, Notice, Series

if TYPE_CHECKING:
    import networkx as nx

IDLE: Final = -1
"""The setting in which no reader holds; reader k's own setting is k."""


class Wiring:
    """The sentences about wired switches and the shapes in each setting."""

    def __init__(
        self, clauses: Clauses, ground: Ground, linking: Linking, as_built: AsBuilt, readers: int
    ) -> None:
        self._clauses = clauses
        self._ground = ground
        self._linking = linking
        self._as_built = as_built
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
        self._partners = _partners(ground)
        self._in_setting: dict[tuple[int, int], Shapes] = {}
        self._say_groups()

    def _say_groups(self) -> None:
        import networkx as nx

        for group in nx.connected_components(self._partners):
            self._say_group(sorted(group, key=self._ground.rails.index))

    def power(self, key: int, setting: int) -> Statement:
        """A switch is powered in a setting."""
        return self.idle[key] if setting == IDLE else self._power[key, setting]

    def shapes(self, key: int, setting: int) -> Shapes:
        """How a relevant rail lies in a setting."""
        return self._in_setting.get((key, setting), self._as_built.shapes[key])

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

    def _say_group(self, group: Sequence[int]) -> None:
        """How the rails near switches that may bear on one another lie in each setting."""
        beside = self._ground.beside
        near = dict.fromkeys(key for switch in group for key in (switch, *beside[switch].values()))
        around = dict.fromkeys(key for rail in near for key in (rail, *beside[rail].values()))
        built = {key: self._as_built.ends(key) for key in around}
        by_setting = self._after_series(group, built, self._linking.before)
        backwards = {}
        if len(group) > 1:
            backwards = self._after_series(group, built, lambda one, other: self._linking.before(other, one))
        for setting, lie in by_setting.items():
            for key in near:
                shapes = self._in_setting[key, setting] = self._as_built.shapes_of(key, lie[key])
                self._clauses.exactly_one_of(list(shapes.values()))
                if backwards:
                    self._clauses.same_if([], lie[key], backwards[setting][key])

    def _after_series(self, group: Sequence[int], built: Lie, before: Before) -> dict[int, Lie]:
        """How rails lie in each setting when the switches have their turns in this order."""
        series = Series(self._clauses, self._ground, group, before)
        cycle = {key: (Notice(self.wired[key], True), Notice(self.wired[key], False)) for key in group}
        cycled = series.run(built, cycle)
        return {
            setting: series.run(cycled, {key: (Notice(self.power(key, setting), True),) for key in group})
            for setting in self.settings
        }


def _partners(ground: Ground) -> nx.Graph[int]:
    """Switches that may bear on one another: one sees a rail that a notice at the other may change."""
    import networkx as nx  # slow to import, and who draws plans need not wait for it

    graph: nx.Graph[int] = nx.Graph()
    graph.add_nodes_from(ground.three_way)
    for switch in ground.three_way:
        reach = {switch}
        for _ in range(3):
            reach |= {other for key in reach for other in ground.beside[key].values()}
        graph.add_edges_from((switch, other) for other in reach if other in graph and other != switch)
    return graph
