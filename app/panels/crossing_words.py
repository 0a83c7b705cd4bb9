"""Which wanted routes may run together with one of them, in words."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from app.panels.words import listed
from app.translation import from_to, tr
from model.routing.control import WantedRoute
from model.routing.crossing import crossings_of, runnable_together
from model.routing.junction import Junction

MANY: Final = 8
"""More routes than these are counted, not listed: the sets that may run together multiply."""


def crossing_sentence(junction: Junction, route: WantedRoute) -> str:
    """With which other routes a cart on this one could meet, and which may all run at once with it."""
    crossing = [found.second for found in crossings_of(junction, route)]
    free = [other for other in junction.ways if other not in (route, *crossing)]
    sentences = []
    if crossing:
        sentences.append(tr("{name} crosses {names}.", name=_name(route), names=_names(crossing)))
    if len(free) > MANY:
        sentences.append(tr("It crosses none of {routes}.", routes=tr("%n other route(s)", "", len(free))))
    elif free:
        sets = runnable_together(junction, free)
        sentences.append(tr("It may run together with {map}.", map="; or with ".join(map(_names, sets))))
    return "\n".join(sentences)


def _names(routes: Iterable[WantedRoute]) -> str:
    names = [_name(route) for route in routes]
    return tr("%n other route(s)", "", len(names)) if len(names) > MANY else listed(names)


def _name(route: WantedRoute) -> str:
    return from_to(route.start, route.goal)
