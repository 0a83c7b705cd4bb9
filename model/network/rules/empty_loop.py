"""A loop that an empty cart never leaves."""

from __future__ import annotations

from collections.abc import Iterator

from model.network.rules.rule import Found, NetworkRule
from model.network.rules.sight import Sight
from model.network.rules.words import named
from model.severity import Severity
from model.wording import tr


def find(sight: Sight) -> Iterator[Found]:
    """Whoever follows the defaults from arm to arm comes to a station, or to a dead end, but not round.

    Bad::

        stations Quay
        Mill: East → West* or South takes Salt
        Mill/South → Quay
        Mill/West → Mill/East

    Good::

        stations Quay
        Mill: East → West or South* takes Salt
        Mill/South → Quay
        Mill/West → Mill/East
    """
    settled: set[str] = set()
    for start in sight.readers:
        way: dict[str, None] = {}
        at: str | None = start
        while at is not None and at in sight.readers and at not in settled and at not in way:
            way[at] = None
            at = _next(sight, at)
        if at is not None and at in way:
            yield _found(sight, tuple(way)[list(way).index(at) :])
        settled.update(way)


def _next(sight: Sight, entry: str) -> str | None:
    """Where an empty cart comes next."""
    link = _link(sight, entry)
    return None if link is None else sight.network.links[link].end


def _link(sight: Sight, entry: str) -> int | None:
    """The link on which an empty cart leaves the junction that it entered by ``Mill/East``."""
    reader, planned = sight.readers[entry], sight.planned.get(entry)
    if reader.chooses and planned is None:
        return None
    return sight.link_beyond(entry, reader.ways[0] if planned is None else planned.default)


def _found(sight: Sight, loop: tuple[str, ...]) -> Found:
    links = tuple(link for entry in loop if (link := _link(sight, entry)) is not None)
    said = tr("An empty cart that comes to {names} goes round without end.", names=named(loop))
    return Found(said, loop, *sight.places_of(loop), links)


RULE = NetworkRule(
    id="empty-loop",
    severity=Severity.WARNING,
    title="An empty cart never leaves a loop",
    why="Carts that run empty, or whose waybills were taken, gather in the loop and block the line.",
    remedy="Settle another default for one of the readers on the loop.",
    find=find,
)
