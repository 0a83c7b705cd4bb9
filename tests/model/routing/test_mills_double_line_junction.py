"""Which routes of a double-line junction may run together, against a printed locking table.

Source: W. H. Mills, *Railway Construction* (1898), ch. VII, Fig. 498, "double-line junction"; read on a page
that shows the rows of trains A to C and D to A whole (facing points 9, trailing points 12). The pairs AC-AD,
AC-DA, DA-CA, AC/CA and DA/AD are printed there; that AD and CA are free of each other follows, and the
largest sets were recomputed by brute force.
"""

from __future__ import annotations

from itertools import chain, combinations

import networkx as nx
import pytest

from model.edits import turn_plan
from model.grid import ALL_TURNS, Cell, Turn
from model.plan import Plan
from model.routing.crossing import crossing_pairs, runnable_together
from model.routing.junction import Junction
from tests.oracle.adapter import WORD_OF, plan_from
from tests.oracle.carts import ArmSpec
from tests.oracle.choice import RouteSpec
from tests.oracle.shapes import Place, Rail

CONFLICTS = {frozenset({"AC", "AD"}), frozenset({"AC", "DA"}), frozenset({"CA", "DA"})}
TOGETHER = {frozenset({"AC", "CA"}), frozenset({"AD", "CA"}), frozenset({"AD", "DA"})}

FACING_POINTS = Cell(2, 64, 2)
DIAMOND = Cell(4, 64, 2)
TRAILING_POINTS = Cell(4, 64, 0)


def run(facing: str, *cells: tuple[int, int]) -> list[Rail]:
    """Plain rails in the cells (x, z), laid in this order."""
    return [("rail", (x, 64, z), facing) for x, z in cells]


def double_line_junction() -> Plan:
    r"""Two lines from A in the west to C in the east, and a double branch to D in the south.

    ::

        A <---------+------- C     z = 0
                    |
        A ----+-----X------> C     z = 2
              |     |
              v     ^
              D     D

    The diamond is a north-east curve: carts come in from the west and from the south, which are no ends, and
    run straight through. It takes its shape from the rails to the north and east, which are there before it.
    """
    pieces = [
        *run("west", *((x, 0) for x in (0, 1, 2, 3, 4))),
        *run("north", (4, 1)),
        *run("west", (6, 2), (5, 2), (4, 2)),
        *run("west", (5, 0), (6, 0)),
        *run("north", (4, 3), (4, 4)),
        *run("east", *((x, 2) for x in (0, 1, 2, 3))),
        *run("south", (2, 3), (2, 4)),
    ]
    arms = [
        ArmSpec("A", (at(0, 2), "east"), (at(0, 0), "west")),
        ArmSpec("C", (at(6, 0), "west"), (at(6, 2), "east")),
        ArmSpec("D", (at(4, 4), "north"), (at(2, 4), "south")),
    ]
    routes = [RouteSpec("A", "C", "D"), RouteSpec("C", "A", None), RouteSpec("D", "A", None)]
    return plan_from(pieces, arms, routes)


def at(x: int, z: int) -> Place:
    return (x, 64, z)


def brute_force_conflicts(junction: Junction) -> set[frozenset[str]]:
    """The pairs of routes whose ways share a cell, straight from the ways."""
    ways = {route.start + route.goal: set(way.path) for route, way in junction.ways.items()}
    return {frozenset(pair) for pair in combinations(ways, 2) if ways[pair[0]] & ways[pair[1]]}


@pytest.fixture
def junction() -> Junction:
    return Junction(double_line_junction())


def test_all_four_routes_are_served(junction: Junction) -> None:
    assert junction.control.serves
    assert {route.start + route.goal for route in junction.ways} == {"AC", "AD", "CA", "DA"}


def test_the_diamond_is_run_straight_through(junction: Junction) -> None:
    assert WORD_OF[junction.layout.shape(DIAMOND)] == "north-east"
    assert DIAMOND not in junction.switch_states
    for route in ("AC", "DA"):
        way = next(way for wanted, way in junction.ways.items() if wanted.start + wanted.goal == route)
        before, here, after = way.path[way.path.index(DIAMOND) - 1 :][:3]
        assert (here.x - before.x, here.z - before.z) == (after.x - here.x, after.z - here.z)


def test_only_the_facing_points_are_thrown(junction: Junction) -> None:
    assert junction.choice.thrown == {"A": frozenset({FACING_POINTS})}


def test_conflicting_pairs_are_those_of_the_table(junction: Junction) -> None:
    crossings = crossing_pairs(junction)
    pairs = [frozenset({c.first.start + c.first.goal, c.second.start + c.second.goal}) for c in crossings]
    assert set(pairs) == CONFLICTS == brute_force_conflicts(junction)
    assert len(pairs) == len(CONFLICTS)


def test_the_places_of_the_conflicts_are_those_of_the_table(junction: Junction) -> None:
    """AC and AD part at the facing points, AC and DA meet in the diamond, CA and DA at the trailing ones."""
    by_pair = {
        frozenset({c.first.start + c.first.goal, c.second.start + c.second.goal}): c
        for c in crossing_pairs(junction)
    }
    same_facing_points = by_pair[frozenset({"AC", "AD"})]
    assert same_facing_points.switches == (FACING_POINTS,)
    assert by_pair[frozenset({"AC", "DA"})].cells == (DIAMOND,)
    assert by_pair[frozenset({"CA", "DA"})].cells[0] == TRAILING_POINTS


def test_largest_sets_that_may_run_together_are_the_cliques_of_the_complement(junction: Junction) -> None:
    conflicts = nx.Graph()
    conflicts.add_nodes_from(sorted(set(chain.from_iterable(CONFLICTS))))
    conflicts.add_edges_from(tuple(pair) for pair in CONFLICTS)
    assert {frozenset(clique) for clique in nx.find_cliques(nx.complement(conflicts))} == TOGETHER
    found = {
        frozenset(route.start + route.goal for route in together)
        for together in runnable_together(junction, junction.ways)
    }
    assert found == TOGETHER


@pytest.mark.parametrize("turn", ALL_TURNS, ids=lambda turn: str(turn.number))
def test_turned_the_conflicts_stay(turn: Turn) -> None:
    """A turn changes how the rails rest, not which carts meet; the diamond is another curve in each."""
    plan = double_line_junction()
    turned = Junction(turn_plan(plan, turn).applied(plan))
    found = {
        frozenset({c.first.start + c.first.goal, c.second.start + c.second.goal})
        for c in crossing_pairs(turned)
    }
    assert turned.control.serves
    assert found == CONFLICTS
