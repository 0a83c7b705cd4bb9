"""Several links out of a junction by one arm."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from model.network.network import junction_and_arm
from model.network.rules.rule import Found, NetworkRule
from model.network.rules.sight import Sight
from model.network.rules.words import named
from model.severity import Severity
from model.wording import tr


def find(sight: Sight) -> Iterator[Found]:
    """By an arm carts leave on one track. Several links may end at one arm, or begin at one station.

    Bad::

        stations Quay, Fen, Orchard
        Mill: East → West
        Quay → Mill/East
        Mill/West → Fen
        Mill/West → Orchard

    Good::

        stations Quay, Fen, Orchard
        Mill: East → West* or South takes Salt
        Quay → Mill/East
        Mill/West → Fen
        Mill/South → Orchard
    """
    by_start: dict[str, list[int]] = defaultdict(list)
    for place, link in enumerate(sight.network.links):
        if junction_and_arm(link.start) is not None:
            by_start[link.start].append(place)
    for start, places in by_start.items():
        if len(places) > 1:
            ends = named(sight.network.links[place].end for place in places)
            said = tr(
                "{count:,} links begin at {start}, to {ends}; carts take the first of them.",
                count=len(places),
                start=start,
                ends=ends,
            )
            yield Found(said, (start,), *sight.places_of((start,)), tuple(places))


RULE = NetworkRule(
    id="arm-doubled",
    severity=Severity.ERROR,
    title="Several links begin at one arm",
    why="The track behind an arm leads to one place, and no reader chooses between several.",
    remedy="Keep one link, and put a junction where the track divides.",
    find=find,
)
