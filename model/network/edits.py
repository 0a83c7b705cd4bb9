"""Edits of a network: (network, what) -> NetworkChange. Each raises EditRefused, with a message for the user.

Stations, junctions, links and trips are told apart by their places in the network, since files may give two
things one name. An edit never gives a name a second time.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Hashable, Iterable, Mapping, Sequence
from typing import Final, TypeVar

from msgspec.structs import replace

from model.edits.refusals import EditRefused, check_texts
from model.network.edit_checks import (
    check_link,
    check_new_name,
    check_pin,
    check_readers,
    check_room,
    check_spot,
    check_trip,
    check_way,
)
from model.network.network import (
    BETWEEN,
    JUNCTION_LIMIT,
    LINK_LIMIT,
    PIN_LIMIT,
    STATION_LIMIT,
    TRIP_LIMIT,
    WAIVER_LIMIT,
    JunctionSpec,
    Link,
    Network,
    NetworkChange,
    NetworkWaiver,
    ReaderPin,
    ReaderSpec,
    Spot,
    Station,
    Trip,
    WayPin,
    end_of,
    junction_and_arm,
)
from model.plan import Kept
from model.wording import QT_TR_NOOP, tr

_T = TypeVar("_T")
_OnMap = TypeVar("_OnMap", Station, JunctionSpec)

OF_A_PLAN: Final = ("readers", "running_side")
"""Keys kept beside a plan, which would stand twice in the file without it."""


def set_title(network: Network, title: str) -> NetworkChange:
    """The network under another title."""
    check_texts([title])
    return _change(tr("Change title"), network, network.replace(title=title))


def add_station(network: Network, name: str, at: Spot | None = None) -> NetworkChange:
    """A new station, after the others."""
    check_new_name("station", name, [station.name for station in network.stations])
    check_room("stations", len(network.stations), STATION_LIMIT)
    stations = (*network.stations, _placed(Station(name), at))
    return _change(tr("Add station {name}", name=name), network, network.replace(stations=stations))


def add_junction(network: Network, junction: JunctionSpec) -> NetworkChange:
    """A new junction, after the others; one with a plan as ``model.network.drawn`` gives it."""
    check_new_name("junction", junction.name, [each.name for each in network.junctions])
    check_room("junctions", len(network.junctions), JUNCTION_LIMIT)
    check_readers(junction)
    junctions = (*network.junctions, _placed(junction, junction.at))
    return _change(
        tr("Add junction {junction}", junction=junction.name), network, network.replace(junctions=junctions)
    )


def add_links(network: Network, links: Sequence[Link]) -> NetworkChange:
    """New links, after the others: a line for both ways is two."""
    check_room("links", len(network.links) + len(links) - 1, LINK_LIMIT)
    for link in links:
        check_link(link)
    first = tr("link {start} → {end}", start=links[0].start, end=links[0].end) if links else tr("nothing")
    label = tr("Add {first}", first=first) if len(links) < 2 else tr("Add {count:,} links", count=len(links))
    return _change(label, network, network.replace(links=(*network.links, *links)))


def set_link(network: Network, place: int, link: Link) -> NetworkChange:
    """A link with another length or other ends."""
    check_link(link)
    old = network.links[place]
    links = _with(network.links, place, link)
    return _change(
        tr("Change link {start} → {end}", start=old.start, end=old.end), network, network.replace(links=links)
    )


def add_trip(network: Network, trip: Trip) -> NetworkChange:
    """A new trip, after the others."""
    check_room("trips", len(network.trips), TRIP_LIMIT)
    check_trip(trip)
    trips = (*network.trips, trip)
    return _change(
        tr("Add trip {start} → {end}", start=trip.start, end=trip.end), network, network.replace(trips=trips)
    )


def set_trip(network: Network, place: int, trip: Trip) -> NetworkChange:
    """A trip with another number of carts a week, or between other stations."""
    check_trip(trip)
    old = network.trips[place]
    trips = _with(network.trips, place, trip)
    return _change(
        tr("Change trip {start} → {end}", start=old.start, end=old.end), network, network.replace(trips=trips)
    )


def set_aside(network: Network, waiver: NetworkWaiver) -> NetworkChange:
    """A waiver, in the place of one for the same finding, or after the others."""
    check_texts([waiver.reason])
    waivers = list(network.waivers)
    at = next((at for at, old in enumerate(waivers) if old.key == waiver.key), len(waivers))
    waivers[at : at + 1] = [waiver]
    check_room("waivers", len(waivers) - 1, WAIVER_LIMIT)
    changed = network.replace(waivers=tuple(waivers))
    return _change(tr("Set aside {rule}", rule=waiver.rule), network, changed)


def take_up(network: Network, waiver: NetworkWaiver) -> NetworkChange:
    """The waivers for the same finding go; empty when there is none."""
    kept = tuple(old for old in network.waivers if old.key != waiver.key)
    return _change(tr("Take up {rule}", rule=waiver.rule), network, network.replace(waivers=kept))


def move(network: Network, stations: Mapping[int, Spot], junctions: Mapping[int, Spot]) -> NetworkChange:
    """Stations and junctions somewhere else on the map; nothing else depends on it."""
    moved = network.replace(
        stations=tuple(
            _placed(each, stations.get(place, each.at)) for place, each in enumerate(network.stations)
        ),
        junctions=tuple(
            _placed(each, junctions.get(place, each.at)) for place, each in enumerate(network.junctions)
        ),
    )
    names = [network.stations[place].name for place in stations]
    names += [network.junctions[place].name for place in junctions]
    return _change(
        tr("Move {name}", name=names[0] if len(names) == 1 else tr("{count:,} things", count=len(names))),
        network,
        moved,
    )


def rename_station(network: Network, place: int, name: str) -> NetworkChange:
    """A station under another name; its links, trips and pinned ways follow."""
    old = network.stations[place]
    check_new_name("station", name, _others(network.stations, place))
    renamed = network.replace(stations=_with(network.stations, place, replace(old, name=name)))
    if renamed.station(old.name) is None:
        renamed = _with_ends(renamed, lambda end: name if end == old.name else end)
    return _change(tr("Rename station {old} to {name}", old=old.name, name=name), network, renamed)


def rename_junction(network: Network, place: int, name: str) -> NetworkChange:
    """A junction under another name; its links, pins and pinned ways follow."""
    old = network.junctions[place]
    check_new_name("junction", name, _others(network.junctions, place))
    renamed = network.replace(junctions=_with(network.junctions, place, replace(old, name=name)))
    if renamed.junction(old.name) is None:
        before, after = old.name + BETWEEN, name + BETWEEN
        renamed = _with_ends(
            renamed, lambda end: after + end.removeprefix(before) if end.startswith(before) else end
        )
        renamed = _with_waivers_of(renamed, old.name, name)
    return _change(tr("Rename junction {old} to {name}", old=old.name, name=name), network, renamed)


def _with_waivers_of(network: Network, old: str, new: str) -> Network:
    """Waivers that name a junction as such, as far as no station is meant by that."""
    if network.station(old) is not None:
        return network
    waivers = (
        replace(each, names=tuple(new if name == old else name for name in each.names))
        for each in network.waivers
    )
    return network.replace(waivers=tuple(waivers))


def set_junction(network: Network, place: int, junction: JunctionSpec) -> NetworkChange:
    """A junction with other readers, another plan, or none, under the name that it has."""
    old = network.junctions[place]
    check_readers(junction)
    kept = old.kept if junction.plan is not None else _kept_without_plan(old)
    changed = replace(junction, name=old.name, at=old.at, kept=kept)
    junctions = _with(network.junctions, place, changed)
    return _change(tr("Change junction {old}", old=old.name), network, network.replace(junctions=junctions))


def set_reader(network: Network, place: int, reader: ReaderSpec) -> NetworkChange:
    """What becomes of carts that enter a junction without a plan by an arm: instead, or after the others."""
    junction = _without_plan(network.junctions[place])
    readers = list(junction.readers)
    at = next((at for at, old in enumerate(readers) if old.start == reader.start), len(readers))
    readers[at : at + 1] = [reader]
    change = set_junction(network, place, replace(junction, readers=tuple(readers)))
    return replace(change, label=tr("Set reader {reader}", reader=end_of(junction.name, reader.start)))


def remove_reader(network: Network, place: int, arm: str) -> NetworkChange:
    """Nothing said any more of carts that enter a junction without a plan by an arm."""
    junction = _without_plan(network.junctions[place])
    readers = tuple(reader for reader in junction.readers if reader.start != arm)
    change = set_junction(network, place, replace(junction, readers=readers))
    return replace(change, label=tr("Remove reader {reader}", reader=end_of(junction.name, arm)))


def remove(
    network: Network,
    stations: Collection[int] = (),
    junctions: Collection[int] = (),
    links: Collection[int] = (),
    trips: Collection[int] = (),
) -> NetworkChange:
    """Things taken away, each at its place, and with them the links, trips, pins and ways that name them."""
    left = network.replace(
        stations=_without(network.stations, stations),
        junctions=_without(network.junctions, junctions),
        links=_without(network.links, links),
        trips=_without(network.trips, trips),
    )
    gone = _Gone(network, left)
    left = left.replace(
        links=tuple(link for link in left.links if not (gone.has(link.start) or gone.has(link.end))),
        trips=tuple(trip for trip in left.trips if not (gone.has(trip.start) or gone.has(trip.end))),
        pins=tuple(pin for pin in left.pins if not gone.has(pin.reader)),
        ways=tuple(
            way for way in left.ways if not any(gone.has(end) for end in (way.start, way.end, *way.via))
        ),
    )
    named = [network.stations[place].name for place in stations]
    named += [network.junctions[place].name for place in junctions]
    named += [
        tr("link {start} → {end}", start=network.links[place].start, end=network.links[place].end)
        for place in links
    ]
    named += [
        tr("trip {start} → {end}", start=network.trips[place].start, end=network.trips[place].end)
        for place in trips
    ]
    name = named[0] if len(named) == 1 else tr("{count:,} things", count=len(named))
    return _change(tr("Remove {name}", name=name), network, left)


def pin_reader(network: Network, pin: ReaderPin) -> NetworkChange:
    """What is settled of a reader, instead of what was; a pin that settles nothing is taken away."""
    check_pin(pin)
    others = tuple(each for each in network.pins if each.reader != pin.reader)
    settles = pin.default is not None or pin.name is not None
    label = tr(QT_TR_NOOP("Pin {reader}") if settles else QT_TR_NOOP("Unpin {reader}"), reader=pin.reader)
    check_room("pins", len(others), PIN_LIMIT)
    return _change(label, network, network.replace(pins=(*others, pin) if settles else others))


def pin_way(network: Network, way: WayPin) -> NetworkChange:
    """Where a trip is to run, instead of what was settled; one without arms is taken away."""
    check_way(way)
    others = tuple(each for each in network.ways if (each.start, each.end) != (way.start, way.end))
    text = (
        QT_TR_NOOP("Pin the way {start} → {end}") if way.via else QT_TR_NOOP("Unpin the way {start} → {end}")
    )
    label = tr(text, start=way.start, end=way.end)
    check_room(tr("pinned ways"), len(others), PIN_LIMIT)
    return _change(label, network, network.replace(ways=(*others, way) if way.via else others))


class _Gone:
    """The names of stations and junctions that nothing bears any more."""

    def __init__(self, before: Network, after: Network) -> None:
        self._stations = {s.name for s in before.stations} - {s.name for s in after.stations}
        self._junctions = {j.name for j in before.junctions} - {j.name for j in after.junctions}

    def has(self, end: str) -> bool:
        """Whether the end of a link lies there."""
        place = junction_and_arm(end)
        return end in self._stations if place is None else place[0] in self._junctions


def _change(label: str, before: Network, after: Network) -> NetworkChange:
    return NetworkChange(label, before, after)


def _with(things: tuple[_T, ...], place: int, thing: _T) -> tuple[_T, ...]:
    """The things with another one in a place."""
    return (*things[:place], thing, *things[place + 1 :])


def _without(things: tuple[_T, ...], places: Collection[int]) -> tuple[_T, ...]:
    return tuple(thing for place, thing in enumerate(things) if place not in places)


def _placed(thing: _OnMap, at: Spot | None) -> _OnMap:
    """A station or a junction somewhere on the map."""
    check_spot(at)
    return replace(thing, at=at)


def _others(things: Iterable[Station | JunctionSpec], place: int) -> set[str]:
    return {thing.name for at, thing in enumerate(things) if at != place}


def _with_ends(network: Network, renamed: Callable[[str], str]) -> Network:
    """The network with other names wherever stations and arms are named.

    Pins and ways that waited for something of the new name give way to those that follow it there.
    """
    pins = [replace(each, reader=renamed(each.reader)) for each in network.pins]
    ways = [
        replace(way, start=renamed(way.start), end=renamed(way.end), via=tuple(map(renamed, way.via)))
        for way in network.ways
    ]
    return network.replace(
        links=tuple(
            replace(each, start=renamed(each.start), end=renamed(each.end)) for each in network.links
        ),
        trips=tuple(
            replace(each, start=renamed(each.start), end=renamed(each.end)) for each in network.trips
        ),
        pins=_one_each(network.pins, pins, [pin.reader for pin in pins]),
        ways=_one_each(network.ways, ways, [(way.start, way.end) for way in ways]),
        waivers=tuple(replace(each, names=tuple(map(renamed, each.names))) for each in network.waivers),
    )


def _one_each(before: tuple[_T, ...], after: list[_T], keys: list[Hashable]) -> tuple[_T, ...]:
    """What comes of some things, one for each key: of two the one that was renamed."""
    chosen: dict[Hashable, int] = {}
    for place, key in enumerate(keys):
        if key not in chosen or after[place] != before[place]:
            chosen[key] = place
    return tuple(after[place] for place in sorted(chosen.values()))


def _without_plan(junction: JunctionSpec) -> JunctionSpec:
    if junction.plan is not None:
        raise EditRefused(
            tr("The readers of {junction} are the wanted routes of its plan.", junction=junction.name)
        )
    return junction


def _kept_without_plan(junction: JunctionSpec) -> Kept:
    return tuple(entry for entry in junction.kept if entry[0] not in OF_A_PLAN)
