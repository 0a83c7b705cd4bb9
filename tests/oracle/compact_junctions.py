"""Compact junctions in which the order of placing matters: three- and four-way rails close together."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import product
from random import Random
from typing import NamedTuple

from tests.oracle.carts import ArmSpec
from tests.oracle.choice import Drawn, RouteSpec
from tests.oracle.optimum import cost_of_order
from tests.oracle.orders import plain_runs
from tests.oracle.random_junctions import NAMES, Junction, goals_from
from tests.oracle.shapes import BACK, STEP, Place, Rail, Track

LEVEL = 64

CORES = (
    tuple(product(range(2), range(2))),
    tuple(product(range(3), range(2))),
    tuple(product(range(2), range(3))),
    tuple(product(range(3), range(3))),
    tuple(product(range(4), range(2))),
    ((0, 0), (1, 0), (2, 0), (1, 1)),
    ((1, 0), (0, 1), (1, 1), (2, 1), (1, 2)),
    ((0, 0), (1, 0), (2, 0), (1, 1), (0, 2), (1, 2), (2, 2)),
    ((0, 0), (1, 0), (1, 1), (2, 1)),
    tuple(cell for cell in product(range(3), range(3)) if cell != (1, 1)),
)
"""Blocks, a T, an X, a crossover with a rail between, one without, and a ring: as (x, z)."""

TINY_CORES = (((0, 0),), ((0, 0), (1, 0)), ((0, 0), (0, 1)), ((0, 0), (1, 0), (0, 1)), CORES[0])

Line = tuple[str, list[Place]]
"""An arm's track: the way out, and its rails from the inside out."""


class Sort(NamedTuple):
    """What junctions are to be made."""

    cores: Sequence[Sequence[tuple[int, int]]] = CORES
    arms: tuple[int, int] = (3, 6)
    longest: int = 3
    """Rails of an arm at the most."""
    branching: tuple[int, int] = (2, 6)
    """Three- and four-way rails."""
    kept: int = 12
    """Rails at the most that the order may depend on."""
    hilly: bool = False
    """Some rails of the core are one level up."""
    bridged: bool = False
    """A plain line runs above the core, two or three levels up."""


SMALL = Sort()
TINY = Sort(TINY_CORES, arms=(2, 4), longest=1, branching=(1, 4), kept=6)


def compact_junction(seed: int, sort: Sort = SMALL) -> Junction:
    """A junction of that sort, its pieces in a random order."""
    random = Random(seed)
    while True:
        core = [(x, LEVEL, z) for x, z in random.choice(sort.cores)]
        if sort.hilly:
            core = [(x, y + random.choice((0, 0, 1)), z) for x, y, z in core]
        lines = random_lines(random, core, random.randint(*sort.arms), sort.longest)
        core += bridge(random) if sort.bridged else []
        rails = [*core, *(at for _, line in lines for at in line)]
        if any((x, y + 1, z) in rails for x, y, z in rails):
            continue  # nothing can carry a rail that stands on another
        left_out = sum(len(run.rails) - 1 for run in plain_runs(rails))
        fewest, most = sort.branching
        if not fewest <= branching(rails) <= most or len(rails) - left_out > sort.kept:
            continue
        pieces = [("rail", at, "north") for at in core]
        pieces += [(arm_part(random), at, "north") for _, line in lines for at in line]
        specs = random_arms(random, lines)
        routes = random_routes(random, pieces, specs)
        if routes:
            return shuffled(random, pieces), specs, routes


def random_lines(random: Random, core: list[Place], count: int, longest: int) -> list[Line]:
    """Arms that lead straight away from the core, some over a slope, none across another."""
    taken = {(x, z) for x, _, z in core}
    gates = [(at, way) for at in core for way in STEP]
    lines: list[Line] = []
    for at, way in random.sample(gates, len(gates)):
        line = random_line(random, at, way, random.randint(1, longest))
        columns = {(x, z) for x, _, z in line}
        if not taken & columns and len(lines) < count:
            taken |= columns
            lines.append((way, line))
    return lines


def random_line(random: Random, at: Place, way: str, length: int) -> list[Place]:
    """Rails from next to a rail of the core outward; seldom from one of them on a level higher or lower."""
    dx, dz = STEP[way]
    rise = random.choice((0, 0, 0, 0, 1, -1))
    lifted = random.randint(1, 3)
    return [
        (at[0] + dx * step, at[1] + rise * (step >= lifted), at[2] + dz * step)
        for step in range(1, length + 1)
    ]


def bridge(random: Random) -> list[Place]:
    """Three or four rails of a straight line above the core."""
    level, across = LEVEL + random.randint(2, 3), random.randint(0, 2)
    cells = [(along, level, across) for along in range(-1, random.randint(2, 3))]
    return cells if random.random() < 0.5 else [(z, y, x) for x, y, z in cells]


def branching(rails: Iterable[Place]) -> int:
    """How many rails have neighbours in three directions or four."""
    track = Track()
    track.part = dict.fromkeys(rails, "rail")
    return sum(track.neighbours(at) >= 3 for at in track.part)


def arm_part(random: Random) -> str:
    return random.choices(("rail", "booster-rail", "detector-rail"), (18, 1, 1))[0]


def random_arms(random: Random, lines: list[Line]) -> list[ArmSpec]:
    """An arm at each line; two side by side may make one arm, in by one and out by the other."""
    names = iter(NAMES)
    arms: list[ArmSpec] = []
    left = random.sample(lines, len(lines))
    while left and len(arms) < len(NAMES):
        way, line = left.pop()
        partner = next((other for other in left if are_double(other, (way, line))), None)
        out = line[-1]
        if partner is not None and random.random() < 0.6:
            left.remove(partner)
            out = partner[1][-1]
        arms.append(ArmSpec(next(names), (line[-1], BACK[way]), (out, way)))
    return arms


def are_double(one: Line, other: Line) -> bool:
    """Whether two arms run side by side."""
    (x, _, z), (to_x, _, to_z) = one[1][0], other[1][0]
    return one[0] == other[0] and abs(x - to_x) + abs(z - to_z) == 1


def shuffled(random: Random, pieces: list[Rail]) -> list[Rail]:
    """The same pieces in a random order, with random facings."""
    return [(part, at, random.choice(tuple(STEP))) for part, at, _ in random.sample(pieces, len(pieces))]


def random_routes(random: Random, pieces: list[Rail], arms: list[ArmSpec]) -> list[RouteSpec]:
    """Routes that some order serves, if not together; none where no cart has a choice."""
    routes: list[RouteSpec] = []
    for _ in range(6):
        built = shuffled(random, pieces)
        drawn = Drawn(built, arms, [])
        if len(drawn.switches) > 5:
            continue
        goals = {arm.name: sorted(goals_from(drawn, arm.name) - {arm.name}) for arm in arms}
        if max(map(len, goals.values()), default=0) >= 2:
            routes = [route_of(random, start, reached) for start, reached in goals.items() if reached][:4]
            if cost_of_order(built, arms, routes) is not None:
                break
    return routes


def route_of(random: Random, start: str, reached: list[str]) -> RouteSpec:
    """An idle route and, where there is another goal and mostly, a called one."""
    idle, *others = random.sample(reached, len(reached))
    return RouteSpec(start, idle, others[0] if others and random.random() < 0.8 else None)


def double_track_t(length: int) -> tuple[list[Rail], list[ArmSpec]]:
    """Two parallel lines directly beside each other that meet two others, left-hand running.

    ::

        West in  > = o o = > East out     z = 0
        West out < = o o = < East in      z = 1
                     ║ ║                  arms of ``length`` rails, here 1
            South in ^ v South out

    The last rails of an arm are booster rails: two plain ones would bend to each other.
    """
    ends = (-length, 1 + length)
    columns = [(x, z) for z in (0, 1) for x in range(ends[0], ends[1] + 1)]
    columns += [(x, z) for x in (0, 1) for z in range(2, 2 + length)]
    pieces = [
        ("booster-rail" if x in ends or z == ends[1] else "rail", (x, LEVEL, z), "north") for x, z in columns
    ]
    arms = [
        ArmSpec("West", ((ends[0], LEVEL, 0), "east"), ((ends[0], LEVEL, 1), "west")),
        ArmSpec("East", ((ends[1], LEVEL, 1), "west"), ((ends[1], LEVEL, 0), "east")),
        ArmSpec("South", ((0, LEVEL, ends[1]), "north"), ((1, LEVEL, ends[1]), "south")),
    ]
    return pieces, arms


def all_ways(idle: dict[str, str]) -> list[RouteSpec]:
    """From each of three arms an idle route as given, and a called one to the third."""
    return [RouteSpec(start, goal, next(iter(idle.keys() - {start, goal}))) for start, goal in idle.items()]
