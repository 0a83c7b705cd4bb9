"""Stations that a traveller reaches and cannot leave again for all others."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from model.network.rules.rule import Found, NetworkRule
from model.network.rules.sight import Sight
from model.network.rules.words import named
from model.severity import Severity
from model.wording import tr

if TYPE_CHECKING:
    import networkx as nx


def find(sight: Sight) -> Iterator[Found]:
    """Who can come to a station can come back, changing carts at other stations if need be.

    Bad::

        stations Quay, Fen, Mill
        Quay → Fen
        Fen ↔ Mill

    Good::

        stations Quay, Fen, Mill
        Quay → Fen
        Fen ↔ Mill
        Mill → Quay
    """
    import networkx as nx  # slow to import, and only this needs it

    within = nx.condensation(_between_stations(sight))
    for group, out in within.out_degree():
        if out == 0 and within.in_degree(group):
            members = within.nodes[group]["members"]
            names = tuple(name for name in sight.stations if name in members)
            stations = tuple(sight.stations[name] for name in names)
            yield Found(
                tr("From {names} no way leads back to where carts come from.", names=named(names)),
                names,
                stations,
            )


def _between_stations(sight: Sight) -> nx.DiGraph[str]:
    """The stations, and the arms by which carts come from one to one."""
    back = sight.leads.reverse(copy=False)
    return sight.leads.subgraph(_reached(sight.leads, sight.stations) & _reached(back, sight.stations))


def _reached(graph: nx.DiGraph[str], starts: Iterable[str]) -> set[str]:
    reached = set(starts)
    waiting = list(reached)
    while waiting:
        fresh = set(graph.successors(waiting.pop())) - reached
        reached |= fresh
        waiting.extend(fresh)
    return reached


RULE = NetworkRule(
    id="one-way-trap",
    severity=Severity.WARNING,
    title="Who arrives there cannot come back",
    why="Travellers and carts gather at these stations and never return.",
    remedy="Add a link that leads back, or the missing way through a junction.",
    find=find,
)
