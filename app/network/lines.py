"""How links run on the map: in steps of 45°, with at most two bends, those between two nodes side by side.

Places are in squares of the map, x to the right and y down.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from collections.abc import Set as AbstractSet
from functools import partial
from itertools import pairwise
from math import hypot
from typing import Final

from app.network.items import Ends, Item
from model.network.network import Network, Spot
from model.pauses import with_pauses

LANE: Final = 0.34
"""Squares between two links that run side by side."""
CROSSING_LIMIT: Final = 400
"""Pairs of nodes up to which crossings are counted."""
NODES_LIMIT: Final = 1_500
"""Pairs of nodes up to which it is asked whether a line runs over a third one."""
Route = tuple[Spot, ...]
Pair = tuple[Item, Item]


def routes(
    network: Network,
    spots: Mapping[Item, Spot],
    touching: AbstractSet[Item] | None = None,
    lane: float = LANE,
) -> dict[int, Route]:
    """The line of each link, by its place in the network; links to nowhere have none.

    Carts are drawn on the left, as the link is followed. ``touching``: only the links of these nodes;
    ``lane``: squares between two links that run side by side.
    """
    ends = Ends(network)
    pairs: dict[Pair, list[tuple[int, bool]]] = {}
    for index, link in enumerate(with_pauses(network.links)):
        a, b = ends.node(link.start), ends.node(link.end)
        if a is None or b is None or a == b or (touching is not None and not {a, b} & touching):
            continue
        forward = a < b
        pairs.setdefault((a, b) if forward else (b, a), []).append((index, forward))
    middles = _middles(list(pairs), spots)
    found: dict[int, Route] = {}
    for pair, links in pairs.items():
        found.update(_side_by_side(middles[pair], links, lane))
    return found


def _side_by_side(middle: Route, links: list[tuple[int, bool]], apart: float) -> Iterator[tuple[int, Route]]:
    """The lanes of the links between two nodes, from the left of the first node's outward way."""
    ordered = [index for index, forward in links if forward] + [
        index for index, forward in reversed(links) if not forward
    ]
    forward_ones = {index for index, forward in links if forward}
    for lane, index in enumerate(ordered):
        aside = ((len(ordered) - 1) / 2 - lane) * apart
        line = beside(middle, aside)
        yield index, line if index in forward_ones else line[::-1]


def beside(line: Route, left: float) -> Route:
    """The line moved to its left by so many squares, bends kept."""
    if not left:
        return line
    normals = []
    for (ax, ay), (bx, by) in pairwise(line):
        length = hypot(bx - ax, by - ay) or 1.0
        normals.append(((by - ay) / length * left, -(bx - ax) / length * left))
    moved = [(line[0][0] + normals[0][0], line[0][1] + normals[0][1])]
    for (x, y), (ax, ay), (bx, by) in zip(line[1:-1], normals, normals[1:], strict=False):
        # Where the two moved pieces meet: along the sum of their normals.
        scale = left * left / (left * left + ax * bx + ay * by)
        moved.append((x + (ax + bx) * scale, y + (ay + by) * scale))
    moved.append((line[-1][0] + normals[-1][0], line[-1][1] + normals[-1][1]))
    return tuple(moved)


def _middles(
    pairs: Sequence[tuple[Item, Item]], spots: Mapping[Item, Spot]
) -> dict[tuple[Item, Item], Route]:
    """A line for each pair of nodes, the straight ones first, each clear of those before where it can be."""
    options = {pair: list(ways_between(spots[pair[0]], spots[pair[1]])) for pair in pairs}
    near_enough = spots.values() if len(pairs) <= NODES_LIMIT else ()
    taken = {(round(x), round(y)) for x, y in near_enough}
    ports: set[tuple[Item, int, int]] = set()
    drawn: list[Route] = []
    chosen = {}
    for pair in with_pauses(sorted(pairs, key=lambda pair: (len(options[pair]), pair))):
        near = drawn if len(pairs) <= CROSSING_LIMIT else []
        best = min(options[pair], key=partial(_faults, pair=pair, ports=ports, taken=taken, drawn=near))
        ports |= _ports(best, pair)
        drawn.append(best)
        chosen[pair] = best
    return chosen


def ways_between(a: Spot, b: Spot) -> Iterator[Route]:
    """The lines in steps of 45°: straight where that is one; else with one bend, else with two."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    wide, high = abs(dx), abs(dy)
    if not dx or not dy or wide == high:
        yield (a, b)
        return
    short = min(wide, high)
    slant = (short * (1 if dx > 0 else -1), short * (1 if dy > 0 else -1))
    rest = (dx - slant[0], dy - slant[1])
    yield (a, (a[0] + slant[0], a[1] + slant[1]), b)
    yield (a, (a[0] + rest[0], a[1] + rest[1]), b)
    half = (rest[0] / 2, rest[1] / 2)
    first = (a[0] + half[0], a[1] + half[1])
    yield (a, first, (first[0] + slant[0], first[1] + slant[1]), b)
    half = (slant[0] / 2, slant[1] / 2)
    first = (a[0] + half[0], a[1] + half[1])
    yield (a, first, (first[0] + rest[0], first[1] + rest[1]), b)


def _ports(line: Route, pair: Pair) -> set[tuple[Item, int, int]]:
    """The sides on which a line leaves its two nodes."""
    return {(pair[0], *_step(line[0], line[1])), (pair[1], *_step(line[-1], line[-2]))}


def _step(a: Spot, b: Spot) -> tuple[int, int]:
    dx, dy = b[0] - a[0], b[1] - a[1]
    return (dx > 0) - (dx < 0), (dy > 0) - (dy < 0)


def _faults(
    line: Route,
    pair: Pair,
    ports: set[tuple[Item, int, int]],
    taken: set[tuple[int, int]],
    drawn: Iterable[Route],
) -> float:
    """What speaks against a line: a side that another one takes, nodes on it, crossings, bends."""
    met = sum((round(x), round(y)) in taken for x, y in _inner(line)) if taken else 0
    crossed = sum(
        _crosses(one, other) for one in pairwise(line) for each in drawn for other in pairwise(each)
    )
    return 4 * len(_ports(line, pair) & ports) + 10 * met + 2 * crossed + len(line)


def _inner(line: Route) -> Iterator[Spot]:
    """Places along a line, a square apart, without its ends."""
    for (ax, ay), (bx, by) in pairwise(line):
        steps = round(max(abs(bx - ax), abs(by - ay)))
        for step in range(steps):
            x, y = ax + (bx - ax) * step / steps, ay + (by - ay) * step / steps
            if (x, y) != line[0]:
                yield x, y


def _crosses(one: tuple[Spot, Spot], other: tuple[Spot, Spot]) -> bool:
    (a, b), (c, d) = one, other
    return _turn(a, b, c) * _turn(a, b, d) < 0 and _turn(c, d, a) * _turn(c, d, b) < 0


def _turn(a: Spot, b: Spot, p: Spot) -> float:
    return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])
