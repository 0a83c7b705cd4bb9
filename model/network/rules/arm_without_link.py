"""An arm by which carts leave a junction, and no link begins there."""

from __future__ import annotations

from collections.abc import Iterator

from model.network.network import end_of
from model.network.rules.rule import Found, NetworkRule
from model.network.rules.sight import Sight
from model.severity import Severity
from model.wording import tr


def find(sight: Sight) -> Iterator[Found]:
    """A link begins at each arm by which carts leave.

    Bad::

        stations Quay, Fen
        Mill: East → West* or South
        Quay → Mill/East
        Mill/West → Fen

    Good::

        stations Quay, Fen
        Mill: East → West* or South
        Quay → Mill/East
        Mill/West → Fen
        Mill/South → Quay
    """
    starts = {link.start for link in sight.network.links}
    for place, junction in enumerate(sight.network.junctions):
        ways = [way for reader in junction.readers for way in reader.ways]
        ways += [arm.name for arm in junction.arms if arm.leaves]
        for way in dict.fromkeys(ways):
            end = end_of(junction.name, way)
            if end not in starts:
                said = tr(
                    "No link begins at {end}, where carts leave {junction}.", end=end, junction=junction.name
                )
                yield Found(said, (end,), junctions=(place,))


RULE = NetworkRule(
    id="arm-without-link",
    severity=Severity.WARNING,
    title="Carts leave by an arm, and no link begins there",
    why="A cart that leaves by this arm, called or empty, goes nowhere.",
    remedy="Add the link, or let no way of the junction end at the arm.",
    find=find,
)
