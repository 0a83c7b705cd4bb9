"""A trip that needs more waybills than a storage cart holds."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import Final

from model.network.result import TripPlan
from model.network.rules.rule import Found, NetworkRule
from model.network.rules.sight import Sight
from model.network.rules.words import trip_name
from model.parts import STACK
from model.severity import Severity
from model.wording import tr

SLOTS: Final = 27
"""Of a storage cart. Common practice of the trade, written from memory, no published source."""


def find(sight: Sight) -> Iterator[Found]:
    """The waybills of a trip lie in the 27 slots of a storage cart, 64 of one name in a slot.

    Bad::

        stations Quay, Fen
        Quay → Fen
        trip Quay → Fen carries 1729 Salt

    Good::

        stations Quay, Fen
        Quay → Fen
        trip Quay → Fen carries 1728 Salt
    """
    for place, trip in enumerate(() if sight.plan is None else sight.plan.trips):
        slots = slots_of(trip)
        if slots > SLOTS:
            ends = (trip.start, trip.end)
            said = tr(
                "The waybills for {trip} take {slots:,} slots; a storage cart has {slots_of_cart}.",
                trip=trip_name(*ends),
                slots=slots,
                slots_of_cart=SLOTS,
            )
            yield Found(said, ends, sight.places_of(ends)[0], trips=(place,))


def slots_of(trip: TripPlan) -> int:
    """The slots that its waybills take: one for each 64 of a name, or fewer."""
    return sum(-(-number // STACK) for number in Counter(trip.waybills).values())


RULE = NetworkRule(
    id="too-many-waybills",
    severity=Severity.ERROR,
    title="A trip needs more waybills than a storage cart holds",
    why="What does not fit into the cart is missing at a later reader, and the cart goes astray.",
    remedy="Settle fewer names for readers on the way, or other defaults, or divide the trip.",
    find=find,
)
