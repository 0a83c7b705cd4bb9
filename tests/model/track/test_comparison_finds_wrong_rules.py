"""Controls that must fail: a reading of the rules with one fault is found by the random comparison.

The order in which the two ends are joined is not among them: the rails that two ends find stand in columns
that do not touch, so neither join can change what the other sees, and no plan tells the orders apart.
"""

from __future__ import annotations

from random import Random

import pytest

from model.track.layout import Layout
from tests.model.track.comparing import assert_same_power_states, assert_same_shapes
from tests.oracle import shapes
from tests.oracle.adapter import plan_from
from tests.oracle.random_plans import random_pieces
from tests.oracle.shapes import ENDS, STEP, WEST_EAST, Place, Track


class LooksDownFirst(Track):
    def _first_rail(self, at: Place, direction: str, level: int) -> Place | None:
        (dx, dz), (x, _, z) = STEP[direction], at
        column = ((x + dx, y, z + dz) for y in (level, level - 1, level + 1))
        return next((cell for cell in column if cell in self.part), None)


class RaisedEndsLookFromTheRail(Track):
    def found_by_end(self, at: Place, direction: str, rise: int) -> Place | None:
        return super().found_by_end(at, direction, 0)


class LinksCountBeforeTheyLive(Track):
    def live_links(self, at: Place) -> set[str]:
        ends = ENDS[self.shape[at]]
        return {way for way, rise in ends if self.found_by_end(at, way, rise) is not None}


class LinkedRailsHaveNoRoomForTheirOwn(Track):
    def has_room(self, at: Place, toward: str) -> bool:
        return len(self.live_links(at)) < 2


class AllNeighboursAreOpen(Track):
    def open_directions(self, at: Place) -> set[str]:
        return {way for way in STEP if self.neighbour(at, way) is not None}


class LoneRailsSlope(Track):
    def settle(self, at: Place, *, powered: bool) -> None:
        super().settle(at, powered=powered)
        self.apply_slope(at)


class BoostersCurve(Track):
    def place(self, part: str, at: Place, facing: str) -> None:
        super().place("rail", at, facing)


class SouthAndWestLose(Track):
    def apply_slope(self, at: Place) -> None:
        flat = self.shape[at]
        order = {"north-south": ("south", "north"), "east-west": ("west", "east")}.get(flat, ())
        for way in order:
            (dx, dz), (x, y, z) = STEP[way], at
            if (x + dx, y + 1, z + dz) in self.part:
                self.shape[at] = "rising-" + way


class JoinedRailsStayFlat(Track):
    def join(self, at: Place, toward: str) -> None:
        super().join(at, toward)
        if self.shape[at].startswith("rising-"):
            self.shape[at] = "east-west" if self.shape[at][7:] in WEST_EAST else "north-south"


class NobodyJoinsAfterNotice(Track):
    def notice(self, at: Place, *, powered: bool) -> None:
        if self.part[at] == "rail" and self.neighbours(at) == 3:
            self.settle(at, powered=powered)


class FourWayRailsTakeNotice(Track):
    def neighbours(self, at: Place) -> int:
        return min(3, super().neighbours(at))


class OnlyOpenNeighboursCount(Track):
    def neighbours(self, at: Place) -> int:
        return len(self.open_directions(at))


class RestsLikePowered(Track):
    def settle(self, at: Place, *, powered: bool) -> None:
        super().settle(at, powered=not powered)


WRONG = (
    LooksDownFirst,
    RaisedEndsLookFromTheRail,
    LinksCountBeforeTheyLive,
    LinkedRailsHaveNoRoomForTheirOwn,
    AllNeighboursAreOpen,
    LoneRailsSlope,
    BoostersCurve,
    SouthAndWestLose,
    JoinedRailsStayFlat,
    NobodyJoinsAfterNotice,
    FourWayRailsTakeNotice,
    OnlyOpenNeighboursCount,
    RestsLikePowered,
)


@pytest.mark.parametrize("wrong", WRONG)
def test_a_wrong_rule_is_found(wrong: type[Track]) -> None:
    with pytest.raises(AssertionError):
        compare_random_plans_with(wrong)


def compare_random_plans_with(kind: type[Track]) -> None:
    """The plans of the random comparison, until one differs."""
    for seed in range(2_000):
        compare_with(kind, random_pieces(Random(seed)))


def compare_with(kind: type[Track], pieces: list[shapes.Rail]) -> None:
    """Shapes and power states of one plan against a given reading."""
    track = kind()
    for part, at, facing in pieces:
        if part in shapes.RAIL_PARTS:
            track.place(part, at, facing)
    layout = Layout(plan_from(pieces))
    assert_same_shapes(layout, track)
    assert_same_power_states(layout, track)
