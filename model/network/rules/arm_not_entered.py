"""An arm by which carts could enter a junction, and no link ends there."""

from __future__ import annotations

from collections.abc import Iterator

from model.network.network import end_of
from model.network.rules.rule import Found, NetworkRule
from model.network.rules.sight import Sight
from model.severity import Severity
from model.wording import tr


def find(sight: Sight) -> Iterator[Found]:
    """A link ends at each arm by which carts may enter.

    Bad::

        stations Quay
        Mill: East → West; West → East
        Mill/West → Quay
        Quay → Mill/East

    Good::

        stations Quay
        Mill: East → West
        Mill/West → Quay
        Quay → Mill/East
    """
    ends = {link.end for link in sight.network.links}
    for place, junction in enumerate(sight.network.junctions):
        arms = [reader.start for reader in junction.readers]
        arms += [arm.name for arm in junction.arms if arm.enters]
        for arm in dict.fromkeys(arms):
            end = end_of(junction.name, arm)
            if end not in ends:
                yield Found(
                    tr("No link ends at {end}; no cart comes by it.", end=end), (end,), junctions=(place,)
                )


RULE = NetworkRule(
    id="arm-not-entered",
    severity=Severity.NOTE,
    title="No link ends at an arm",
    why="What is built there for carts that come in is never used.",
    remedy="Add the link, or leave the arm out.",
    find=find,
)
