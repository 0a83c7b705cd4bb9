"""What no edit of a network may do, each with a message for the user."""

from __future__ import annotations

import math
from collections.abc import Iterable

from model.edits.refusals import EditRefused, check_name
from model.network.network import (
    LENGTH_LIMIT,
    MAP_LIMIT,
    PER_WEEK_LIMIT,
    JunctionSpec,
    Link,
    ReaderPin,
    Spot,
    Trip,
    WayPin,
    junction_and_arm,
)
from model.plan import ARM_LIMIT
from model.wording import tr


def check_new_name(kind: str, name: str, others: Iterable[str]) -> None:
    """Raises EditRefused for what cannot be a name, or what another thing of the kind is called."""
    check_name(name)
    if name in others:
        raise EditRefused(tr("There is a {kind} {name} already.", kind=kind, name=name))


def check_room(kind: str, number: int, limit: int) -> None:
    """Raises EditRefused where one more would be too many."""
    if number >= limit:
        raise EditRefused(tr("A network takes {limit:,} {kind} at most.", limit=limit, kind=kind))


def check_link(link: Link) -> None:
    """Raises EditRefused for ends that cannot be, and for a length out of bounds."""
    for end in (link.start, link.end):
        check_end(end)
    if link.start == link.end:
        raise EditRefused(tr("A link leads from one place to another."))
    if not 1 <= link.length <= LENGTH_LIMIT:
        raise EditRefused(tr("A link has 1 to {limit:,} cells.", limit=LENGTH_LIMIT))


def check_end(end: str) -> None:
    """Raises EditRefused for what is neither a station nor a junction with an arm."""
    for name in junction_and_arm(end) or (end,):
        check_name(name)


def check_trip(trip: Trip) -> None:
    """Raises EditRefused for stations that cannot be, and for a number out of bounds."""
    for name in (trip.start, trip.end):
        check_name(name)
    if not 0 <= trip.per_week <= PER_WEEK_LIMIT:
        raise EditRefused(tr("A trip has 0 to {limit:,} carts a week.", limit=PER_WEEK_LIMIT))


def check_readers(junction: JunctionSpec) -> None:
    """Raises EditRefused for readers that no file could hold."""
    starts = [reader.start for reader in junction.readers]
    if len(set(starts)) < len(starts):
        raise EditRefused(tr("An arm has one reader at most."))
    if len(starts) > ARM_LIMIT:
        raise EditRefused(tr("A junction takes {limit:,} readers at most.", limit=ARM_LIMIT))
    for reader in junction.readers:
        for name in (reader.start, *reader.ways):
            check_name(name)
        if not 1 <= len(set(reader.ways)) == len(reader.ways) <= 2:
            raise EditRefused(
                tr("Carts from {start} leave by one arm, or by one of two.", start=reader.start)
            )
        if reader.default is not None and reader.default not in reader.ways:
            raise EditRefused(
                tr(
                    "Carts from {start} cannot leave by {default}.",
                    start=reader.start,
                    default=reader.default,
                )
            )


def check_pin(pin: ReaderPin) -> None:
    """Raises EditRefused for a reader, an arm or a waybill that cannot be."""
    check_arm_end(pin.reader)
    for name in (pin.default, pin.name):
        if name is not None:
            check_name(name)


def check_way(way: WayPin) -> None:
    """Raises EditRefused for stations or arms that cannot be."""
    for name in (way.start, way.end):
        check_name(name)
    for end in way.via:
        check_arm_end(end)


def check_arm_end(end: str) -> None:
    """Raises EditRefused for what is no junction with an arm."""
    if junction_and_arm(end) is None:
        raise EditRefused(tr("{end} is no arm of a junction.", end=end))
    check_end(end)


def check_spot(at: Spot | None) -> None:
    """Raises EditRefused for a place that lies off the map."""
    if at is not None and not all(math.isfinite(part) and abs(part) <= MAP_LIMIT for part in at):
        raise EditRefused(tr("The map goes from −{limit:,} to {limit:,}.", limit=MAP_LIMIT))
