"""What is lit on the map: the way of a trip with its waybills, or all that passes a reader."""

from __future__ import annotations

from itertools import pairwise
from typing import NamedTuple

from app.canvas.symbols import WayKind
from app.network.items import Ends, Item
from app.translation import QT_TR_NOOP
from model.network.network import Network, junction_and_arm
from model.network.result import NetworkPlan, TripPlan


class Call(NamedTuple):
    """A waybill taken on the way."""

    place: int
    """From 1 on, in the order of the way."""
    waybill: str
    reader: str
    """``Mill/East``"""


class Lit(NamedTuple):
    """What is drawn over the map."""

    title: str = ""
    """For the chip; empty: nothing is lit."""
    links: dict[int, WayKind] = {}  # noqa: RUF012  # never changed
    """The links with a way along them, and whether a cart carries a waybill there."""
    turns: tuple[tuple[int, int, WayKind], ...] = ()
    """Into a junction by one link and out by another."""
    ends: frozenset[Item] = frozenset()
    calls: tuple[Call, ...] = ()
    reader: str = ""
    """The reader whose arm is marked."""
    words: tuple[str, str] = (QT_TR_NOOP("without a waybill"), QT_TR_NOOP("with a waybill"))
    """What the two kinds of way mean."""


NOTHING_LIT = Lit()
PASSING = (QT_TR_NOOP("passes by the default"), QT_TR_NOOP("is called here"))


def calls_of(network: Network, plan: NetworkPlan, trip: TripPlan) -> tuple[Call, ...]:
    """The waybills of a trip with the readers that take them, in order."""
    found: list[Call] = []
    for link, after in pairwise(trip.links):
        reader = network.links[link].end
        planned = plan.readers.get(reader)
        way = junction_and_arm(network.links[after].start)
        if planned is not None and planned.name is not None and way is not None and way[1] != planned.default:
            found.append(Call(len(found) + 1, planned.name, reader))
    return tuple(found)


def trip_lit(network: Network, plan: NetworkPlan, trip: TripPlan, title: str) -> Lit:
    """The way of a trip: a cart with a waybill as long as it carries one, an empty one from then on."""
    calls = calls_of(network, plan, trip)
    calling = [call.reader for call in calls]
    links: dict[int, WayKind] = {}
    turns = []
    left = len(calls)
    for link, after in [*pairwise(trip.links), *((last, None) for last in trip.links[-1:])]:
        links[link] = WayKind.CALLED if left else WayKind.IDLE
        if after is None:
            break
        # A reader takes its waybill as the cart comes in; the way that it calls is still a called one.
        turns.append((link, after, links[link]))
        left -= network.links[link].end in calling
    ends = Ends(network)
    found = {ends.node(trip.start), ends.node(trip.end)} - {None}
    return Lit(title, links, tuple(turns), frozenset(item for item in found if item), calls)


class Passing(NamedTuple):
    """A trip that passes a reader."""

    trip: int
    """Its place in the network."""
    calls: bool


def passing(network: Network, plan: NetworkPlan, reader: str) -> tuple[Passing, ...]:
    """The trips that pass a reader, and which of them it takes a waybill from."""
    return tuple(
        Passing(index, reader in (call.reader for call in calls_of(network, plan, trip)))
        for index, trip in enumerate(plan.trips)
        if reader in trip.via
    )


def reader_lit(network: Network, plan: NetworkPlan, reader: str, title: str) -> Lit:
    """The ways of all trips that pass a reader; called ones where it takes a waybill."""
    links: dict[int, WayKind] = {}
    turns: dict[tuple[int, int], WayKind] = {}
    for passed in sorted(passing(network, plan, reader), key=lambda passed: passed.calls):
        kind = WayKind.CALLED if passed.calls else WayKind.IDLE
        way = plan.trips[passed.trip].links
        links |= dict.fromkeys(way, kind)
        turns |= dict.fromkeys(pairwise(way), kind)
    return Lit(
        title, links, tuple((*turn, kind) for turn, kind in turns.items()), reader=reader, words=PASSING
    )
