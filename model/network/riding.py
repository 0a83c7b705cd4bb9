"""One cart run through a network, reader by reader: where it ends, and what is taken from it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from enum import StrEnum

import msgspec

from model.network.network import Link, Network, ReaderSpec, end_of, junction_and_arm
from model.network.result import NetworkPlan


class Stop(StrEnum):
    """Why a cart goes no further."""

    STATION = "station"
    NO_WAY = "no-way"
    """Nothing leads on from there, or nothing is said of carts that enter there."""
    LOOP = "loop"
    """It comes round to where it was, and nothing was taken from it meanwhile."""


class Ride(msgspec.Struct, frozen=True):
    """What became of a cart."""

    links: tuple[int, ...]
    """Places in ``Network.links``, each as often as it was run over."""
    end: str
    """The end of the last link: a station, or ``Mill/East``."""
    why: Stop
    taken: tuple[str, ...]
    """The waybills taken by readers, in order."""
    left: tuple[str, ...]
    """Those still in the cart, by name."""

    @property
    def station(self) -> str | None:
        """Where it arrived, or ``None``."""
        return self.end if self.why is Stop.STATION else None


class Rider:
    """Runs carts over a planned network. What a station is entered by, ends there.

    A reader of which the plan says nothing sends carts nowhere.
    """

    def __init__(self, network: Network, plan: NetworkPlan) -> None:
        self._links, self._planned = network.links, plan.readers
        self._stations = frozenset(station.name for station in network.stations)
        self._readers = specs_by_end(network)
        self._onward = first_links(network)

    def ride(self, link: int, waybills: Iterable[str] = ()) -> Ride:
        """A cart set on a link with the waybills in it."""
        cart = Counter(waybills)
        way, taken = [link], list[str]()
        seen = {link}
        while True:
            end = self._links[way[-1]].end
            place = junction_and_arm(end)
            if place is None:
                why = Stop.STATION if end in self._stations else Stop.NO_WAY
                return _ended(way, end, why, taken, cart)
            arm, name = self._leaves_by(place[0], end, cart)
            onward = None if arm is None else self._onward.get(arm)
            if name is not None:
                taken.append(name)
                seen.clear()
            if onward is None or onward in seen:
                return _ended(way, end, Stop.NO_WAY if onward is None else Stop.LOOP, taken, cart)
            way.append(onward)
            seen.add(onward)

    def _leaves_by(self, junction: str, end: str, cart: Counter[str]) -> tuple[str | None, str | None]:
        """The arm, as the end of a link, and the waybill that the reader took out of the cart."""
        spec = self._readers.get(end)
        if spec is None or not spec.ways:
            return None, None
        if not spec.chooses:
            return end_of(junction, spec.ways[0]), None
        planned = self._planned.get(end)
        if planned is None:
            return None, None
        if planned.name is None or not cart[planned.name]:
            return end_of(junction, planned.default), None
        cart[planned.name] -= 1
        return end_of(junction, spec.other(planned.default)), planned.name


def first_links(network: Network) -> dict[str, int]:
    """By its start, the place of a link; of several the first, which carts take."""
    found: dict[str, int] = {}
    for place, link in enumerate(network.links):
        found.setdefault(link.start, place)
    return found


def links_out(network: Network) -> dict[str, list[tuple[int, Link]]]:
    """By its start, the links with their places."""
    found: dict[str, list[tuple[int, Link]]] = {}
    for place, link in enumerate(network.links):
        found.setdefault(link.start, []).append((place, link))
    return found


def specs_by_end(network: Network) -> dict[str, ReaderSpec]:
    """By end, whatever is said of carts that enter by an arm; of several the first."""
    found: dict[str, ReaderSpec] = {}
    for junction in network.junctions:
        for reader in junction.readers:
            found.setdefault(end_of(junction.name, reader.start), reader)
    return found


def _ended(way: list[int], end: str, why: Stop, taken: list[str], cart: Counter[str]) -> Ride:
    return Ride(tuple(way), end, why, tuple(taken), tuple(sorted(cart.elements())))
