"""A link between arms on which carts run on unlike sides."""

from __future__ import annotations

from collections.abc import Iterator

from model.network.network import junction_and_arm
from model.network.rules.rule import Found, NetworkRule
from model.network.rules.sight import Sight
from model.plan import Side
from model.severity import Severity
from model.wording import tr


def find(sight: Sight) -> Iterator[Found]:
    """Carts run on the same side at both ends of a link, where it is known.

    Bad::

        stations Quay, Fen
        Mill: East → West
        Beacon: East → West
        Mill side left
        Beacon side right
        Mill/West → Beacon/East

    Good::

        stations Quay, Fen
        Mill: East → West
        Beacon: East → West
        Mill side left
        Beacon side left
        Mill/West → Beacon/East
    """
    pairs: dict[frozenset[str], list[int]] = {}
    for place, link in enumerate(sight.network.links):
        sides = {_side(sight, link.start), _side(sight, link.end)}
        if sides == {Side.LEFT, Side.RIGHT}:
            pairs.setdefault(frozenset((link.start, link.end)), []).append(place)
    for links in pairs.values():
        first = sight.network.links[links[0]]
        ends = (first.start, first.end)
        said = tr(
            "Carts run on the {side} at {end} and on the {other_side} at {other_end}, which are joined.",
            side=_side(sight, first.start),
            end=first.start,
            other_side=_side(sight, first.end),
            other_end=first.end,
        )
        yield Found(said, ends, *sight.places_of(ends), tuple(links))


def _side(sight: Sight, end: str) -> Side | None:
    place, at = junction_and_arm(end), sight.junction_at(end)
    if place is None or at is None:
        return None
    junction = sight.network.junctions[at]
    return next((arm.side for arm in junction.arms if arm.name == place[1]), junction.running_side)


RULE = NetworkRule(
    id="unlike-sides",
    severity=Severity.WARNING,
    title="A link joins arms of unlike running side",
    why="The two tracks of the line must cross somewhere, or carts meet head-on.",
    remedy="Mirror one of the junctions, or cross the tracks over on the line.",
    find=find,
)
