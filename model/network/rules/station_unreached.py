"""A station to which no cart comes from any other."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator

from model.network.rules.rule import Found, NetworkRule
from model.network.rules.sight import Sight
from model.severity import Severity
from model.wording import tr


def find(sight: Sight) -> Iterator[Found]:
    """To each station a way leads from another one.

    Bad::

        stations Quay, Fen
        Quay → Fen

    Good::

        stations Quay, Fen
        Quay ↔ Fen
    """
    if len(sight.stations) < 2:
        return
    reached_from = _reached_from(sight)
    for name, place in sight.stations.items():
        if not reached_from[name] - {name}:
            yield Found(
                tr("No way leads to {name} from any other station.", name=name), (name,), stations=(place,)
            )


def _reached_from(sight: Sight) -> dict[str, set[str]]:
    """By station and arm, two of the stations from which carts come there, or all where there are fewer."""
    found: dict[str, set[str]] = {node: set() for node in sight.leads}
    waiting = deque((end, name) for name in sight.stations for end in sight.leads.successors(name))
    while waiting:
        end, start = waiting.popleft()
        if start in found[end] or len(found[end]) > 1:
            continue
        found[end].add(start)
        if end not in sight.stations:
            waiting.extend((beyond, start) for beyond in sight.leads.successors(end))
    return found


RULE = NetworkRule(
    id="station-unreached",
    severity=Severity.WARNING,
    title="A station cannot be reached",
    why="Nobody arrives there, and carts that set out from there are never made up for.",
    remedy="Add a link that ends there.",
    find=find,
)
