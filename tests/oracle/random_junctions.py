"""Random small junctions in plain words: track on a small grid, arms at its border, wanted routes."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import count, product
from pathlib import Path
from random import Random

from tests.oracle.carts import ArmSpec
from tests.oracle.choice import Drawn, RouteSpec, number_of_choices, subsets
from tests.oracle.shapes import BACK, RAIL_PARTS, STEP, Place, Rail

NAMES = ("Quay", "Saltern", "Mill", "Fen", "Beacon", "Orchard", "Tithe Barn")
MOST_CHOICES = 2**15
"""More choices than these take the plain search too long."""

KNOWN_BELOW = 5_000
KNOWN_SEEDS = tuple(map(int, Path(__file__).with_name("junction_seeds.txt").read_text().split()))
"""All seeds below ``KNOWN_BELOW`` that give a junction: most of the time would go into the others."""

Gate = tuple[Place, str]
"""A cell at the border and the way out of the grid."""
Junction = tuple[list[Rail], list[ArmSpec], list[RouteSpec]]


def junctions(first_seed: int) -> Iterator[tuple[int, Junction]]:
    """One random junction after another, with the seed of each."""
    for seed in seeds(first_seed):
        if (made := random_junction(Random(seed))) is not None:
            yield seed, made


def seeds(first_seed: int) -> Iterator[int]:
    """The seeds from that one on that are worth a try."""
    yield from (seed for seed in KNOWN_SEEDS if seed >= first_seed)
    yield from count(max(first_seed, KNOWN_BELOW))


def random_junction(random: Random) -> Junction | None:
    """A junction with a switch and a cart that has a choice; ``None`` where it came out dull or too large."""
    width, depth = random.choice(((4, 4), (5, 4), (4, 5), (5, 5), (6, 5)))
    gates = random.sample(border(width, depth), random.randint(4, 7))
    pieces = random.choice((blob, lines, lines, two_levels))(random, width, depth, gates)
    pieces += blocks(random, width, depth, {at for _, at, _ in pieces})
    drawn = Drawn(pieces, arms_at(random, gates, {at for part, at, _ in pieces if part in RAIL_PARTS}), [])
    if not 1 <= len(drawn.switches) <= 5:
        return None
    arms = best_connected(random, drawn)
    drawn = Drawn(pieces, arms, [])
    routes = wanted_routes(random, drawn, arms)
    if not routes or number_of_choices(Drawn(pieces, arms, routes)) > MOST_CHOICES:
        return None
    return pieces, arms, routes


def border(width: int, depth: int) -> list[Gate]:
    """The cells at the border, each with the way out of the grid."""
    return [
        ((x, 64, z), way)
        for x, z, (way, (dx, dz)) in product(range(width), range(depth), STEP.items())
        if not (0 <= x + dx < width and 0 <= z + dz < depth)
    ]


def blob(random: Random, width: int, depth: int, gates: list[Gate]) -> list[Rail]:
    """Rails in random cells, in random order: many three-way rails beside each other."""
    cells = [(x, 64, z) for x in range(width) for z in range(depth)]
    count = round(len(cells) * random.uniform(0.4, 0.85))
    laid = {at for at, _ in gates} | set(random.sample(cells, count))
    return [(rail(random), at, random.choice(tuple(STEP))) for at in random.sample(sorted(laid), len(laid))]


def lines(random: Random, width: int, depth: int, gates: list[Gate]) -> list[Rail]:
    """Lines laid by dragging from gate to gate, with bends; rails that stand already are kept."""
    pieces: dict[Place, Rail] = {}
    for _ in range(random.randint(3, 5)):
        (start, _), (goal, _) = random.sample(gates, 2)
        for at, facing in drag(random, start, goal):
            pieces.setdefault(at, (rail(random), at, facing))
    laid = list(pieces.values())
    if random.random() < 0.3:
        random.shuffle(laid)
    return laid


def drag(random: Random, start: Place, goal: Place) -> list[tuple[Place, str]]:
    """The cells from start to goal, without a detour, each with the way of the drag."""
    (x, y, z), (to_x, _, to_z) = start, goal
    ways = ["east" if to_x > x else "west"] * abs(to_x - x) + ["south" if to_z > z else "north"] * abs(
        to_z - z
    )
    if random.random() < 0.3:
        random.shuffle(ways)
    elif random.random() < 0.5:
        ways.reverse()
    cells = []
    for way in ways:
        cells.append(((x, y, z), way))
        x, z = x + STEP[way][0], z + STEP[way][1]
    return [*cells, ((x, y, z), ways[-1] if ways else "north")]


def two_levels(random: Random, width: int, depth: int, gates: list[Gate]) -> list[Rail]:
    """Lines again, with the rails to the east of a column one level up, apart from the gates."""
    lifted = random.randrange(1, width)
    at_gates = {at for at, _ in gates}
    return [
        (part, (x, y + (x >= lifted and (x, y, z) not in at_gates), z), facing)
        for part, (x, y, z), facing in lines(random, width, depth, gates)
    ]


def blocks(random: Random, width: int, depth: int, taken: set[Place]) -> list[Rail]:
    """Now and then a block or two on the level of the track, for carts to run into."""
    cells = [(x, 64, z) for x in range(width) for z in range(depth) if (x, 64, z) not in taken]
    if not cells or random.random() < 0.7:
        return []
    return [("solid-block", at, "north") for at in random.sample(cells, min(len(cells), 2))]


def rail(random: Random) -> str:
    """A plain rail, seldom a booster or detector rail."""
    return random.choices(("rail", "booster-rail", "detector-rail"), (24, 1, 1))[0]


def arms_at(random: Random, gates: list[Gate], rails: set[Place]) -> list[ArmSpec]:
    """An arm at every gate with a rail; a few lead out at another gate, or have only a way in or out."""
    arms = []
    for name, (at, way) in zip(NAMES, gates, strict=False):
        if at not in rails:
            continue
        inward, outward = (at, BACK[way]), (at, way)
        if random.random() < 0.2:
            outward = random.choice(gates)
        one_way = random.random()
        arms.append(ArmSpec(name, None if one_way < 0.1 else inward, None if one_way > 0.9 else outward))
    random.shuffle(arms)
    return arms


def best_connected(random: Random, drawn: Drawn) -> list[ArmSpec]:
    """Two to four of the arms: one from which many others can be reached, some of those, and any."""
    goals = {arm.name: goals_from(drawn, arm.name) for arm in drawn.arms if arm.way_in is not None}
    if not goals:
        return []
    start = max(goals, key=lambda name: len(goals[name]))
    wanted = [start, *sorted(goals[start] - {start})]
    rest = sorted(goals.keys() - set(wanted))
    kept = [*wanted, *random.sample(rest, len(rest))][: random.randint(2, 4)]
    return [arm for arm in drawn.arms if arm.name in kept]


def wanted_routes(random: Random, drawn: Drawn, arms: list[ArmSpec]) -> list[RouteSpec]:
    """Routes that some setting serves, with a few that none may; none at all where no cart has a choice."""
    goals = {arm.name: sorted(goals_from(drawn, arm.name)) for arm in arms}
    if max(map(len, goals.values()), default=0) < 2 and random.random() < 0.9:
        return []
    routes = []
    for start, reached in goals.items():
        if reached and random.random() < 0.9:
            idle, called = random.sample([*reached, *reached, None], 2)
            if random.random() < 0.05:
                called = random.choice(arms).name
            routes.append(RouteSpec(start, idle or reached[0], called))
    return routes


def goals_from(drawn: Drawn, start: str) -> set[str]:
    """The arms that a cart can leave by with these or those switches powered, all wired or only these."""
    goals = set()
    for powered in subsets(drawn.switches):
        for wired in (powered, frozenset(drawn.switches)):
            trip = drawn.trip(start, wired, powered)
            if trip is not None and trip.arm is not None:
                goals.add(trip.arm)
    return goals
