"""Real junctions in plain words: cores of track with long straight arms, as builders lay them.

All of them run on the left and lie one way round; whoever asks turns and mirrors them.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from random import Random
from typing import NamedTuple

from tests.oracle.carts import ArmSpec
from tests.oracle.random_junctions import NAMES
from tests.oracle.shapes import BACK, STEP, Place

LEVEL = 64
SHORTEST, LONGEST = 5, 14
"""Straight rails of an arm before the first switch."""

Spot = tuple[int, int]
"""A column: x and z."""


class Goals(NamedTuple):
    """Where carts from an arm can go."""

    start: str
    ends: tuple[str, ...]


@dataclass
class Sketch:
    """The track of a junction before anyone has thought of an order to place it in."""

    random: Random
    rails: list[Place] = field(default_factory=list)
    lines: list[list[Place]] = field(default_factory=list)
    """The rails of each arm's track, from the inside out."""
    arms: list[ArmSpec] = field(default_factory=list)
    goals: list[Goals] = field(default_factory=list)

    def __post_init__(self) -> None:
        self._names = iter(self.random.sample(NAMES, len(NAMES)))

    def lay(self, *corners: Spot) -> None:
        """Straight track from corner to corner; what is laid already stays."""
        (x, z), *others = corners
        for to_x, to_z in others:
            while True:
                if (x, LEVEL, z) not in self.rails:
                    self.rails.append((x, LEVEL, z))
                if (x, z) == (to_x, to_z):
                    break
                x += (to_x > x) - (to_x < x)
                z += (to_z > z) - (to_z < z)

    def single(self, at: Spot, way: str) -> str:
        """An arm of one track that leads away from a rail of the core; gives its name."""
        end = self._line(at, way, self.random.randint(SHORTEST, LONGEST))
        return self._arm((end, BACK[way]), (end, way))

    def double(self, enter: Spot, leave: Spot, way: str) -> str:
        """An arm of two tracks, one in, one out, that end side by side."""
        rails = self.random.randint(SHORTEST, LONGEST)
        inner, outer = (dot(spot, way) for spot in (enter, leave))
        far = max(inner, outer) + rails
        ends = [self._line(spot, way, far - dot(spot, way)) for spot in (enter, leave)]
        return self._arm((ends[0], BACK[way]), (ends[1], way))

    def all_to_all(self) -> None:
        """From every arm to every other one."""
        for arm in self.arms:
            self.goals.append(Goals(arm.name, tuple(o.name for o in self.arms if o.name != arm.name)))

    def bridge(self) -> None:
        """A one-way track three levels above all others, from one side of the junction to the other."""
        xs, zs = ([at[axis] for at in self.rails] for axis in (0, 2))
        z = self.random.randint(min(zs), max(zs))
        cells = [(x, LEVEL + 3, z) for x in range(min(xs), max(xs) + 1)]
        self.rails += cells
        start, end = next(self._names), next(self._names)
        self.arms += [ArmSpec(start, (cells[0], "east"), None), ArmSpec(end, None, (cells[-1], "east"))]
        self.goals.append(Goals(start, (end,)))

    def _line(self, at: Spot, way: str, rails: int) -> Place:
        """Now and then the outer rails are one level up or down; gives the last one."""
        dx, dz = STEP[way]
        rise, flat = 0, rails
        if rails > SHORTEST + 2 and self.random.random() < 0.15:
            rise, flat = self.random.choice((1, -1)), self.random.randint(SHORTEST + 1, rails - 1)
        line = [(at[0] + dx * n, LEVEL + rise * (n > flat), at[1] + dz * n) for n in range(1, rails + 1)]
        self.rails += line
        self.lines.append(line)
        return line[-1]

    def _arm(self, way_in: tuple[Place, str], way_out: tuple[Place, str]) -> str:
        name = next(self._names)
        self.arms.append(ArmSpec(name, way_in, way_out))
        return name


def dot(spot: Spot, way: str) -> int:
    """How far a spot lies that way."""
    return spot[0] * STEP[way][0] + spot[1] * STEP[way][1]


def branches(sketch: Sketch) -> None:
    """A single track with one branch or two, on the same side or on both.

    ::

        West ───┬──┬─── East
                │  │
    """
    random = sketch.random
    length = random.choice((0, 0, random.randint(2, 6)))
    sketch.lay((0, 0), (length, 0))
    sketch.single((0, 0), "west")
    sketch.single((length, 0), "east")
    sketch.single((0, 0), "south")
    if length:
        sketch.single((length, 0), random.choice(("north", "south")))
    sketch.all_to_all()


def fork(sketch: Sketch) -> None:
    """A one-way track that parts, or two that meet and part."""
    sketch.lay((0, 0), (0, 0))
    start = sketch.single((0, 0), "west")
    ends = (sketch.single((0, 0), "east"), sketch.single((0, 0), "south"))
    sketch.arms = [
        arm._replace(way_out=None) if arm.name == start else arm._replace(way_in=None) for arm in sketch.arms
    ]
    sketch.goals = [Goals(start, ends)]


def wye(sketch: Sketch) -> None:
    """A triangle of single track, an arm at each corner.

    ::

        ──┬────┬──
          ╰─┬──╯
            │
    """
    random = sketch.random
    west, east, south = random.randint(2, 4), random.randint(2, 4), random.randint(2, 5)
    sketch.lay((-west, 0), (east, 0))
    sketch.lay((-west, 0), (-west, south), (east, south), (east, 0))
    sketch.single((-west, 0), "west")
    sketch.single((east, 0), "east")
    sketch.single((0, south), "south")
    sketch.all_to_all()


def ring(sketch: Sketch) -> None:
    """A ring on which carts run clockwise, with two to four arms of double track."""
    random = sketch.random
    east, south = random.randint(5, 9), random.randint(5, 9)
    sketch.lay((0, 0), (east, 0), (east, south), (0, south), (0, 0))
    x, z = random.randint(2, east - 2), random.randint(2, south - 2)
    arms = [
        ((x + 1, 0), (x - 1, 0), "north"),
        ((east, z + 1), (east, z - 1), "east"),
        ((x - 1, south), (x + 1, south), "south"),
        ((0, z - 1), (0, z + 1), "west"),
    ]
    for arm in random.sample(arms, random.choice((2, 3, 3, 4))):
        sketch.double(*arm)
    for arm in sketch.arms:
        own = (arm.name,) if len(sketch.arms) == 2 else ()
        sketch.goals.append(Goals(arm.name, (*(a.name for a in sketch.arms if a != arm), *own)))


def crossing_over(sketch: Sketch) -> None:
    """Double track with one or two tracks across, by which carts turn back.

    ::

        > ──┬────┬── >
            │    │
        < ──┴────┴── <
    """
    random = sketch.random
    apart, length = random.randint(2, 4), random.choice((0, 0, random.randint(2, 5)))
    for z in (0, apart):
        sketch.lay((0, z), (length, z))
    for x in {0, length}:
        sketch.lay((x, 0), (x, apart))
    west = sketch.double((0, 0), (0, apart), "west")
    east = sketch.double((length, apart), (length, 0), "east")
    both = (west, east)
    sketch.goals = (
        [Goals(west, both), Goals(east, both)] if length else [Goals(west, both), Goals(east, (west,))]
    )


def double_t(sketch: Sketch) -> None:
    """Double track from west to east with double track to the south; every arm leads to both others."""
    random = sketch.random
    across, down = random.randint(3, 5), random.randint(3, 5)
    sketch.lay((-across, -1), (across, -1))
    sketch.lay((-across, 1), (across, 1))
    sketch.lay((-1, -1), (-1, down))
    sketch.lay((1, -1), (1, down))
    sketch.lay((-across, 1), (-across, down), (-1, down))
    sketch.lay((across, 1), (across, down), (1, down))
    sketch.double((-across, -1), (-across, 1), "west")
    sketch.double((across, 1), (across, -1), "east")
    sketch.double((-1, down), (1, down), "south")
    sketch.all_to_all()


def double_line_junction(sketch: Sketch) -> None:
    """Double track of which a double branch parts to the south: its carts run from and to the west only.

    ::

        West in  > ──┬── >
                     │
        West out < ┬─┼── <
                   │ │
    """
    in_x, out_x = 0, sketch.random.randint(2, 4)
    apart = sketch.random.randint(2, 4)
    sketch.lay((in_x, 0), (out_x, 0))
    sketch.lay((in_x, apart), (out_x, apart))
    sketch.lay((out_x, 0), (out_x, apart))
    west = sketch.double((in_x, 0), (in_x, apart), "west")
    east = sketch.double((out_x, apart), (out_x, 0), "east")
    south = sketch.double((in_x, apart), (out_x, apart), "south")
    sketch.goals = [Goals(west, (east, south)), Goals(east, (west,)), Goals(south, (west,))]


CORES: dict[Callable[[Sketch], None], int] = {
    branches: 2,
    fork: 1,
    wye: 2,
    ring: 2,
    crossing_over: 2,
    double_t: 2,
    double_line_junction: 2,
}
"""How often each comes."""
