"""A network and its plan as the rules look at them: what leads where, worked out once."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property
from typing import TYPE_CHECKING

from model.network.network import JunctionSpec, Network, ReaderSpec, end_of, junction_and_arm
from model.network.result import NetworkPlan, Planned
from model.network.riding import first_links

if TYPE_CHECKING:
    import networkx as nx


class Sight:
    """Where several things bear one name the first is meant; that they do is a finding of its own.

    ``plan``: ``None`` while there is none yet; what follows from it is then not found.
    """

    def __init__(self, network: Network, plan: NetworkPlan | None) -> None:
        self.network, self.plan = network, plan

    @cached_property
    def stations(self) -> dict[str, int]:
        """By name, the place."""
        return _first_places([station.name for station in self.network.stations])

    @cached_property
    def junctions(self) -> dict[str, int]:
        """By name, the place."""
        return _first_places([junction.name for junction in self.network.junctions])

    @cached_property
    def readers(self) -> dict[str, ReaderSpec]:
        """What is said of carts that enter, by where: ``Mill/East``."""
        return {
            end_of(junction.name, reader.start): reader
            for junction in self._junctions()
            for reader in junction.readers
        }

    @cached_property
    def left_by(self) -> frozenset[str]:
        """The arms by which carts leave, whether or not a link begins there: ``Mill/South``."""
        return frozenset(
            end_of(junction.name, way)
            for junction in self._junctions()
            for reader in junction.readers
            for way in reader.ways
        )

    @cached_property
    def arms(self) -> frozenset[str]:
        """All arms of which anything is said: ``Mill/East``."""
        of_plans = (
            end_of(junction.name, arm.name) for junction in self._junctions() for arm in junction.arms
        )
        return frozenset(self.readers) | self.left_by | frozenset(of_plans)

    @cached_property
    def onward(self) -> dict[str, int]:
        """By where it begins, the place of a link; of several the first, which carts take."""
        return first_links(self.network)

    @cached_property
    def planned(self) -> dict[str, Planned]:
        """What each reader does, by key; nothing while there is no plan."""
        return {} if self.plan is None else dict(self.plan.readers)

    @cached_property
    def leads(self) -> nx.DiGraph[str]:
        """From each station and each arm by which carts enter to where carts can come next."""
        import networkx as nx  # slow to import, and only this needs it

        graph: nx.DiGraph[str] = nx.DiGraph()
        graph.add_nodes_from(self.stations)
        graph.add_nodes_from(self.readers)
        for link in self.network.links:
            if link.start in self.stations and self.is_there(link.end):
                graph.add_edge(link.start, link.end)
        for entry, reader in self.readers.items():
            ends = (self.end_beyond(entry, way) for way in reader.ways)
            graph.add_edges_from((entry, end) for end in ends if end is not None and self.is_there(end))
        return graph

    def link_beyond(self, entry: str, way: str) -> int | None:
        """The link on which a cart goes on that entered by ``Mill/East`` and leaves by a way there."""
        place = junction_and_arm(entry)
        return None if place is None else self.onward.get(end_of(place[0], way))

    def end_beyond(self, entry: str, way: str) -> str | None:
        """Where that cart comes next."""
        link = self.link_beyond(entry, way)
        return None if link is None else self.network.links[link].end

    def is_there(self, end: str) -> bool:
        """Whether carts can come to the end of a link, and something is said of them there."""
        return end in self.stations or end in self.readers

    def is_unread(self, end: str) -> bool:
        """Whether it is an arm of a junction of which nothing is known, as its plan could not be read."""
        at = self.junction_at(end)
        return at is not None and bool(self.network.junctions[at].unread)

    def junction_at(self, end: str) -> int | None:
        """The place of the junction that ``Mill/East`` belongs to, or ``None``."""
        place = junction_and_arm(end)
        return None if place is None else self.junctions.get(place[0])

    def places_of(self, ends: tuple[str, ...]) -> tuple[tuple[int, ...], tuple[int, ...]]:
        """The places of the stations and of the junctions among ends of links, each once."""
        stations = dict.fromkeys(self.stations[end] for end in ends if end in self.stations)
        junctions = dict.fromkeys(at for end in ends if (at := self.junction_at(end)) is not None)
        return tuple(stations), tuple(junctions)

    def _junctions(self) -> Iterator[JunctionSpec]:
        """The first of each name."""
        return (self.network.junctions[place] for place in self.junctions.values())


def _first_places(names: list[str]) -> dict[str, int]:
    places: dict[str, int] = {}
    for place, name in enumerate(names):
        places.setdefault(name, place)
    return places
