"""Which wanted routes may run together with one of them, in words."""

from __future__ import annotations

from app.panels.words import listed
from model.routing.control import WantedRoute
from model.routing.crossing import crossings_of
from model.routing.junction import Junction


def crossing_sentence(junction: Junction, route: WantedRoute) -> str:
    """With which other routes a cart on this one could meet, and with which it may run together."""
    crossing = [found.second for found in crossings_of(junction, route)]
    free = [other for other in junction.ways if other != route and other not in crossing]
    sentences = []
    if crossing:
        sentences.append(f"{_name(route)} crosses {listed([_name(other) for other in crossing])}.")
    if free:
        sentences.append(f"It may run together with {listed([_name(other) for other in free])}.")
    return "\n".join(sentences)


def _name(route: WantedRoute) -> str:
    return f"{route.start} → {route.goal}"
