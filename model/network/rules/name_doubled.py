"""A name that several stations, or several junctions, bear."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator

from model.network.rules.rule import Found, NetworkRule
from model.network.rules.sight import Sight
from model.severity import Severity
from model.wording import tr


def find(sight: Sight) -> Iterator[Found]:
    """A name must stand for one station, and for one junction; a station and a junction may share it.

    Bad::

        stations Quay, Quay

    Good::

        stations Quay, Mill
        Mill: East → West
    """
    for name, places in _doubled(station.name for station in sight.network.stations):
        yield Found(
            tr("{count:,} stations are called {name}.", count=len(places), name=name),
            (name,),
            stations=places,
        )
    for name, places in _doubled(junction.name for junction in sight.network.junctions):
        yield Found(
            tr("{count:,} junctions are called {name}.", count=len(places), name=name),
            (name,),
            junctions=places,
        )


def _doubled(names: Iterable[str]) -> Iterator[tuple[str, tuple[int, ...]]]:
    places: dict[str, list[int]] = defaultdict(list)
    for place, name in enumerate(names):
        places[name].append(place)
    return ((name, tuple(each)) for name, each in places.items() if len(each) > 1)


RULE = NetworkRule(
    id="name-doubled",
    severity=Severity.ERROR,
    title="A name stands twice",
    why="Links and trips name stations and junctions, so of two of one name only the first is looked at.",
    remedy="Give each a name of its own.",
    find=find,
)
