"""The trips of a planned network, as the traffic sees them."""

from __future__ import annotations

from itertools import pairwise

from model.network.network import Network, end_of, junction_and_arm
from model.network.result import NetworkPlan, TripPlan
from model.network.traffic_values import Journey, Leg


def journeys(network: Network, plan: NetworkPlan) -> tuple[Journey, ...]:
    """One a trip, in the order of the file; without legs where no way leads there."""
    return tuple(
        Journey(trip.start, trip.end, trip.per_week, _legs(network, plan, planned))
        for trip, planned in zip(network.trips, plan.trips, strict=True)
    )


def _legs(network: Network, plan: NetworkPlan, trip: TripPlan) -> tuple[Leg, ...]:
    """Stretches from reader to reader: what is entered without a reader on it holds nobody up."""
    links = [network.links[place] for place in trip.links]
    if not links:
        return ()
    found, cells = list[Leg](), 0
    for link, onward in pairwise(links):
        cells += link.length
        planned = plan.readers.get(link.end)
        if planned is not None:
            found.append(Leg(cells, link.end, _calls(link.end, planned.default, onward.start)))
            cells = 0
    return (*found, Leg(cells + links[-1].length, None))


def _calls(reader: str, default: str, onward: str) -> bool:
    """Whether a cart that goes on by ``onward`` is not on the default way, and so is called."""
    place = junction_and_arm(reader)
    return place is not None and onward != end_of(place[0], default)
