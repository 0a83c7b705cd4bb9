"""What people get: a departure card for every station, and what to write on the sign of every reader."""

from __future__ import annotations

import msgspec

from model.network.network import Link, Network, junction_and_arm
from model.network.result import NetworkPlan, TripPlan
from model.network.riding import Ride, Rider, links_out


class Departure(msgspec.Struct, frozen=True):
    """A row of a card: where to, and what to take along."""

    end: str
    waybills: tuple[str, ...]
    """In the order in which they are taken from the cart; a name comes as often as it is taken."""
    by: str | None
    """The end of the link to set out on, where the station has several; else ``None``."""
    length: int | None
    """Cells; ``None``: no way leads there, and nothing is to be taken."""


class EmptyRun(msgspec.Struct, frozen=True):
    """Where a cart goes that carries nothing."""

    by: str | None
    """As of a departure."""
    ride: Ride


class DepartureCard(msgspec.Struct, frozen=True):
    """What hangs at a station."""

    station: str
    departures: tuple[Departure, ...]
    """By the name of where they go."""
    empty: tuple[EmptyRun, ...]
    """One a link out of the station, in file order."""


class ReaderSign(msgspec.Struct, frozen=True):
    """What to write on the sign of a reader."""

    junction: str
    arm: str
    default: str
    """The arm by which carts leave from which nothing is taken."""
    other: str
    """The arm by which the others leave."""
    name: str | None
    """The waybill that is taken; ``None``: none."""


def departure_cards(network: Network, plan: NetworkPlan) -> tuple[DepartureCard, ...]:
    """A card for every station, in file order; stations of one name share one."""
    rider, out = Rider(network, plan), links_out(network)
    trips: dict[str, dict[str, TripPlan]] = {}
    for trip in plan.trips:
        trips.setdefault(trip.start, {}).setdefault(trip.end, trip)
    names = dict.fromkeys(station.name for station in network.stations)
    return tuple(_card(name, trips.get(name, {}), out.get(name, []), network, rider) for name in names)


def _card(
    station: str, trips: dict[str, TripPlan], out: list[tuple[int, Link]], network: Network, rider: Rider
) -> DepartureCard:
    is_told = len(out) > 1
    departures = []
    for end in sorted(trips, key=_by_name):
        trip = trips[end]
        by = network.links[trip.links[0]].end if is_told and trip.links else None
        departures.append(Departure(end, trip.waybills, by, trip.length))
    empty = (EmptyRun(link.end if is_told else None, rider.ride(place)) for place, link in out)
    return DepartureCard(station, tuple(departures), tuple(empty))


def _by_name(name: str) -> tuple[str, str]:
    return name.casefold(), name


def reader_signs(network: Network, plan: NetworkPlan) -> tuple[ReaderSign, ...]:
    """All readers that the plan speaks of, in file order."""
    found = []
    for key, spec in network.readers():
        planned, place = plan.readers.get(key), junction_and_arm(key)
        if planned is not None and place is not None:
            other = spec.other(planned.default)
            found.append(ReaderSign(*place, planned.default, other, planned.name))
    return tuple(found)
