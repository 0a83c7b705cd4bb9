"""Moves nodes about on the grid until links lie at steps of 45° and nothing stands in the way."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Final

from app.network.items import Item
from model.network.network import Spot

if TYPE_CHECKING:
    import networkx as nx

SWEEPS: Final = 12
WANTED: Final = 4
"""Squares that a link is long at best."""
NEAREST: Final = 3
"""Squares that two nodes keep apart, where they can."""
OBLIQUE: Final = 3.0
TOO_NEAR: Final = 6.0
IN_THE_WAY: Final = 8.0
CROSSED: Final = 5.0
STRETCHED: Final = 0.5
"""What each fault of a picture counts."""
Place = tuple[int, int]
MOVES: Final = tuple((dx, dy) for dx in range(-3, 4) for dy in range(-3, 4) if (dx, dy) != (0, 0))


def aligned(spots: Mapping[Item, Spot], graph: nx.Graph[Item]) -> dict[Item, Spot]:
    """The nodes where one after another finds no better place near it any more."""
    at = {item: (round(x), round(y)) for item, (x, y) in spots.items()}
    for _ in range(SWEEPS):
        moved = False
        for item in sorted(at):
            here = at[item]
            options = [(here[0] + dx, here[1] + dy) for dx, dy in MOVES]
            best = min(options, key=lambda place: (_faults(item, place, at, graph), place))
            if _faults(item, best, at, graph) < _faults(item, here, at, graph) - 1e-9:
                at[item] = best
                moved = True
        if not moved:
            break
    return {item: (float(x), float(y)) for item, (x, y) in at.items()}


def _faults(item: Item, place: Place, at: Mapping[Item, Place], graph: nx.Graph[Item]) -> float:
    """How bad the picture is around a node that would stand there."""
    total = 0.0
    for other, (x, y) in at.items():
        if other != item and max(abs(x - place[0]), abs(y - place[1])) < NEAREST:
            total += TOO_NEAR
    for neighbour in graph[item]:
        end = at[neighbour]
        dx, dy = abs(end[0] - place[0]), abs(end[1] - place[1])
        total += STRETCHED * abs(max(dx, dy) - WANTED)
        if dx and dy and dx != dy:
            total += OBLIQUE
        total += sum(
            IN_THE_WAY
            for other, spot in at.items()
            if other not in (item, neighbour) and _is_on(spot, place, end)
        )
        total += sum(
            CROSSED
            for a, b in graph.edges
            if not {a, b} & {item, neighbour} and _cross(place, end, at[a], at[b])
        )
    return total


def _is_on(spot: Place, a: Place, b: Place) -> bool:
    """Whether a place lies on the straight line between two others, or less than a square beside it."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    px, py = spot[0] - a[0], spot[1] - a[1]
    along = px * dx + py * dy
    length = dx * dx + dy * dy
    return 0 < along < length and (px * dy - py * dx) ** 2 < length


def _cross(a: Place, b: Place, c: Place, d: Place) -> bool:
    return _side(a, b, c) * _side(a, b, d) < 0 and _side(c, d, a) * _side(c, d, b) < 0


def _side(a: Place, b: Place, p: Place) -> int:
    turned = (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])
    return (turned > 0) - (turned < 0)
