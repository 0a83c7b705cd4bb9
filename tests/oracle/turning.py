"""The eight turns of a plan in plain words, and which of them can be built."""

from __future__ import annotations

from typing import NamedTuple

from tests.oracle.carts import ArmSpec
from tests.oracle.choice import Drawn, RouteSpec, best_choice, number_of_choices
from tests.oracle.shapes import Place, Rail

CLOCKWISE = {"north": "east", "east": "south", "south": "west", "west": "north"}
MIRRORED = {"east": "west", "west": "east"}


class Judged(NamedTuple):
    """An orientation: ``inverters`` is ``None`` where no choice serves."""

    quarter: int
    mirror: bool
    inverters: int | None


def turned_cell(at: Place, quarter: int, mirror: bool) -> Place:
    """The mirror first (x to -x), then quarters clockwise, (x, z) to (-z, x)."""
    x, y, z = at
    if mirror:
        x = -x
    for _ in range(quarter):
        x, z = -z, x
    return (x, y, z)


def turned_way(way: str, quarter: int, mirror: bool) -> str:
    """Where a facing or heading goes; up and down stay."""
    if mirror:
        way = MIRRORED.get(way, way)
    for _ in range(quarter):
        way = CLOCKWISE.get(way, way)
    return way


def turned(
    pieces: list[Rail], arms: list[ArmSpec], quarter: int, mirror: bool
) -> tuple[list[Rail], list[ArmSpec]]:
    """The pieces and arms after a turn, in the same order."""

    def end(way: tuple[Place, str] | None) -> tuple[Place, str] | None:
        if way is None:
            return None
        return turned_cell(way[0], quarter, mirror), turned_way(way[1], quarter, mirror)

    new_pieces = [
        (part, turned_cell(at, quarter, mirror), turned_way(facing, quarter, mirror))
        for part, at, facing in pieces
    ]
    return new_pieces, [ArmSpec(arm.name, end(arm.way_in), end(arm.way_out)) for arm in arms]


def orientations(
    pieces: list[Rail], arms: list[ArmSpec], routes: list[RouteSpec], most_choices: int
) -> list[Judged]:
    """The eight, the unmirrored ones first, without those that have more choices than can be tried."""
    judged = []
    for mirror in (False, True):
        for quarter in range(4):
            drawn = Drawn(*turned(pieces, arms, quarter, mirror), routes)
            if number_of_choices(drawn) <= most_choices:
                best = best_choice(drawn)
                judged.append(Judged(quarter, mirror, len(best.idle) if best.serves else None))
    return judged
