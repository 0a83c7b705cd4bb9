"""The way of one cart."""

from __future__ import annotations

from typing import NamedTuple

from tests.oracle.shapes import ENDS, NORTH_SOUTH, STEP, Place, Track

STOPPERS = ("solid-block", "target-block", "barrel", "auto-crafter", "lamp", "glass", "slab", "hopper")


class ArmSpec(NamedTuple):
    """Where carts come in and go out: (cell, heading) each, or ``None``."""

    name: str
    way_in: tuple[Place, str] | None
    way_out: tuple[Place, str] | None


class Trip(NamedTuple):
    """What became of a cart; ``heading`` is the one after the last cell."""

    path: tuple[Place, ...]
    outcome: str
    arm: str | None
    heading: str


def way_out_of(shape: str, heading: str) -> tuple[str, int]:
    """The end (direction, levels up) by which a cart with that heading leaves a rail."""
    ends = ENDS[shape]
    crosses = (heading in NORTH_SOUTH) != (ends[0][0] in NORTH_SOUTH)
    if shape.startswith("rising-") and crosses:
        return next(end for end in ends if end[1] == 0)
    first, second = ends
    along = [STEP[second[0]][axis] - STEP[first[0]][axis] for axis in (0, 1)]
    towards_second = sum(along[axis] * STEP[heading][axis] for axis in (0, 1))
    return first if towards_second < 0 else second


def next_cell(at: Place, end: tuple[str, int]) -> Place:
    """The cell that an end points at."""
    (dx, dz), rise = STEP[end[0]], end[1]
    return (at[0] + dx, at[1] + rise, at[2] + dz)


def trace(track: Track, others: dict[Place, str], arms: list[ArmSpec], at: Place, heading: str) -> Trip:
    """Follow a cart that enters the rail ``at``; ``others`` are the pieces that are no rails."""
    path: list[Place] = []
    seen = set()
    while (at, heading) not in seen:
        seen.add((at, heading))
        path.append(at)
        end = way_out_of(track.shape[at], heading)
        heading = end[0]
        ahead = next_cell(at, end)
        below = (ahead[0], ahead[1] - 1, ahead[2])
        if others.get(ahead) in STOPPERS:
            return Trip(tuple(path), "stopped", None, heading)
        for arm in arms:
            if arm.way_out == (at, heading):
                return Trip(tuple(path), "arm", arm.name, heading)
        if ahead in track.part:
            at = ahead
        elif below in track.part:
            at = below
        else:
            return Trip(tuple(path), "leaves-track", None, heading)
    return Trip(tuple(path), "loops", None, heading)
