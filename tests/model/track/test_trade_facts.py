"""What every builder knows of switches and carts. Source of all values here: common practice, no source."""

from __future__ import annotations

import pytest

from model.grid import FACING_OF, Cell, Heading
from model.parts import Part
from model.pieces import Piece
from model.plan import Plan, plan_of
from model.track.carts import Outcome, trace, way_out
from model.track.layout import Layout
from model.track.shapes import Shape
from model.track.switches import power_states, three_way

NORTH, EAST, SOUTH, WEST = Heading
CENTRE = Cell(0, 64, 0)


def star(*headings: Heading) -> Layout:
    """A rail in the middle, laid last, with a rail beside it in each heading."""
    beside = [rail_facing(CENTRE.step(heading), heading) for heading in headings]
    return Layout(plan_of([*beside, rail_facing(CENTRE, NORTH)]))


def rail_facing(cell: Cell, heading: Heading, part: Part = Part.RAIL) -> Piece:
    """A rail whose builder faces ``heading``."""
    return Piece(part, cell, FACING_OF[heading])


@pytest.mark.parametrize(
    ("open_ways", "resting", "powered"),
    [
        ((NORTH, SOUTH, EAST), Shape.SOUTH_EAST, Shape.NORTH_EAST),
        ((NORTH, SOUTH, WEST), Shape.SOUTH_WEST, Shape.NORTH_WEST),
        ((SOUTH, EAST, WEST), Shape.SOUTH_EAST, Shape.SOUTH_WEST),
        ((NORTH, EAST, WEST), Shape.NORTH_EAST, Shape.NORTH_WEST),
    ],
)
def test_three_way_rails_pull_to_the_south_and_east_at_rest(
    open_ways: tuple[Heading, ...], resting: Shape, powered: Shape
) -> None:
    layout = star(*open_ways)
    states = power_states(layout, CENTRE)
    assert (states.resting, states.powered) == (resting, powered)
    assert states.is_switch
    assert three_way(layout, CENTRE)
    assert layout.shape(CENTRE) == resting


@pytest.mark.parametrize(
    ("going", "resting", "powered"),
    [
        (NORTH, "branch", "line"),
        (EAST, "line", "branch"),
        (SOUTH, "line", "branch"),
        (WEST, "branch", "line"),
    ],
)
def test_the_same_branch_to_the_right_rests_otherwise_when_turned(
    going: Heading, resting: str, powered: str
) -> None:
    """The bias rule is tied to the world's axes, not to the junction."""
    states = power_states(star(going.opposite, going, going.clockwise), CENTRE)
    leads_to = {going: "line", going.clockwise: "branch"}
    assert leads_to[way_out(states.resting, going).heading] == resting
    assert leads_to[way_out(states.powered, going).heading] == powered


def test_two_or_four_neighbours_make_no_switch() -> None:
    for open_ways in ((SOUTH, EAST), (NORTH, SOUTH), (NORTH, EAST, SOUTH, WEST)):
        layout = star(*open_ways)
        assert not power_states(layout, CENTRE).is_switch
        assert not three_way(layout, CENTRE)


@pytest.mark.parametrize("part", [Part.BOOSTER_RAIL, Part.DETECTOR_RAIL])
def test_boosters_and_detectors_never_curve(part: Part) -> None:
    for open_ways in ((NORTH, EAST, SOUTH), (SOUTH, EAST), (NORTH, WEST), (EAST, SOUTH, WEST)):
        pieces = [rail_facing(CENTRE.step(heading), heading) for heading in open_ways]
        layout = Layout(plan_of([*pieces, rail_facing(CENTRE, EAST, part)]))
        states = power_states(layout, CENTRE)
        assert layout.shape(CENTRE) is states.resting is states.powered is Shape.EAST_WEST


def test_a_cart_crossing_a_straight_rail_at_right_angles_turns_to_the_south_or_east() -> None:
    for heading in (EAST, WEST):
        assert way_out(Shape.NORTH_SOUTH, heading).heading is SOUTH
    for heading in (NORTH, SOUTH):
        assert way_out(Shape.EAST_WEST, heading).heading is EAST


def test_a_cart_crossing_a_rising_rail_at_right_angles_leaves_by_the_lower_end() -> None:
    lower = {
        Shape.RISING_NORTH: SOUTH,
        Shape.RISING_SOUTH: NORTH,
        Shape.RISING_EAST: WEST,
        Shape.RISING_WEST: EAST,
    }
    for shape, end in lower.items():
        across = (EAST, WEST) if end.lies_north_south else (NORTH, SOUTH)
        assert {way_out(shape, heading) for heading in across} == {(end, 0)}


@pytest.mark.parametrize(
    "shape", [Shape.SOUTH_EAST, Shape.SOUTH_WEST, Shape.NORTH_EAST, Shape.NORTH_WEST], ids=lambda s: s.word
)
def test_a_curve_leads_from_end_to_end_and_is_run_through_from_the_other_sides(shape: Shape) -> None:
    first, second = shape.headings
    assert way_out(shape, first.opposite).heading is second
    assert way_out(shape, second.opposite).heading is first
    for heading in (first, second):
        assert way_out(shape, heading).heading is heading, "from a side that is no end, straight on"


def line(*cells: Cell, heading: Heading) -> list[Piece]:
    return [rail_facing(cell, heading) for cell in cells]


def way(plan: Plan, start: Cell, heading: Heading) -> tuple[tuple[Cell, ...], Outcome]:
    layout = Layout(plan)
    found = trace(layout.rails, layout.stoppers, {}, start, heading)
    return found.path, found.outcome


def test_a_cart_climbs_a_slope_and_comes_down_again() -> None:
    up = line(Cell(0, 64, 0), Cell(1, 65, 0), Cell(2, 65, 0), heading=EAST)
    plan = plan_of([*up, rail_facing(Cell(3, 64, 0), EAST)])
    cells = tuple(piece.at for piece in plan.pieces)
    assert way(plan, cells[0], EAST) == (cells, Outcome.LEAVES_TRACK)
    assert way(plan, cells[-1], WEST) == (cells[::-1], Outcome.LEAVES_TRACK)


@pytest.mark.parametrize(
    ("part", "outcome"),
    [
        (Part.SOLID_BLOCK, Outcome.STOPPED),
        (Part.TARGET_BLOCK, Outcome.STOPPED),
        (Part.BARREL, Outcome.STOPPED),
        (Part.AUTO_CRAFTER, Outcome.STOPPED),
        (Part.LAMP, Outcome.STOPPED),
        (Part.GLASS, Outcome.STOPPED),
        (Part.SLAB, Outcome.STOPPED),
        (Part.HOPPER, Outcome.STOPPED),
        (Part.DUST, Outcome.LEAVES_TRACK),
        (Part.TORCH, Outcome.LEAVES_TRACK),
        (Part.LEVER, Outcome.LEAVES_TRACK),
        (Part.REPEATER, Outcome.LEAVES_TRACK),
    ],
)
def test_what_stops_a_cart(part: Part, outcome: Outcome) -> None:
    rails = line(Cell(0, 64, 0), Cell(1, 64, 0), heading=EAST)
    assert way(plan_of([*rails, Piece(part, Cell(2, 64, 0))]), Cell(0, 64, 0), EAST)[1] is outcome


def test_a_ring_of_four_curves_loops_both_ways_round() -> None:
    ring = [Cell(0, 64, 0), Cell(1, 64, 0), Cell(1, 64, 1), Cell(0, 64, 1)]
    plan = plan_of(line(*ring, heading=NORTH))
    assert way(plan, ring[0], NORTH) == (tuple(ring), Outcome.LOOPS)
    assert way(plan, ring[0], WEST) == ((ring[0], *ring[:0:-1]), Outcome.LOOPS)
