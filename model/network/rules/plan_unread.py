"""A junction whose plan could not be read."""

from __future__ import annotations

from collections.abc import Iterator

from model.network.rules.rule import Found, NetworkRule
from model.network.rules.sight import Sight
from model.severity import Severity
from model.wording import tr


def find(sight: Sight) -> Iterator[Found]:
    """The plan of every junction that has one could be read when the network was opened.

    Bad::

        stations Quay, Fen
        Mill:
        Mill unread
        Quay → Mill/East
        Mill/West → Fen

    Good::

        stations Quay, Fen
        Mill: East → West
        Mill plan East in, West out
        Quay → Mill/East
        Mill/West → Fen
    """
    for place, junction in enumerate(sight.network.junctions):
        if junction.unread:
            said = tr(
                "The plan of {junction} was not read: {why}.", junction=junction.name, why=junction.unread
            )
            yield Found(said, (junction.name,), junctions=(place,))


RULE = NetworkRule(
    id="plan-unread",
    severity=Severity.ERROR,
    title="The plan of a junction could not be read",
    why="Nothing is known of its readers and arms, so that no way leads through it.",
    remedy="Put the plan file back and read the plans again, or give the junction another plan.",
    find=find,
)
