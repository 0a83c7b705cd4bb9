"""Shapes, checks and traces of large plans against the least that they could cost, and against a graph.

The bound of a replay looks at the same cells around each rail at once, with numpy, and leaves the order of
placing aside. The graph is how a general library would hold a track: networkx.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from typing import Final

import networkx as nx
import numpy as np
import pytest

from model.grid import Cell, Heading
from model.plan import Plan
from model.routing.junction import Junction
from model.rules import check
from model.track.carts import Outcome, trace
from model.track.layout import Layout
from model.track.rails import STEP, UP, pack
from tests.benchmarks.conftest import AddRow, Ratio
from tests.benchmarks.measuring import best
from tests.benchmarks.tracks import station_throat, winding

pytestmark = pytest.mark.slow

SIZES: Final = (1_000, 10_000, 100_000, 1_000_000)
BY_MASK: Final = np.arange(16, dtype=np.uint8)


@pytest.fixture(scope="module")
def track() -> Callable[[int], Plan]:
    """A winding track of so many rails, made once."""

    def of(size: int) -> Plan:
        plan = winding(size)
        plan.pieces.in_order()
        return plan

    return cache(of)


def rounds(size: int) -> int:
    """The largest size only once."""
    return 3 if size <= 100_000 else 1


@pytest.mark.parametrize("size", SIZES)
def test_replay_against_one_pass_of_numpy(track: Callable[[int], Plan], ratio: Ratio, size: int) -> None:
    plan = track(size)
    bound = numpy_pass(plan)
    assert int(np.count_nonzero(bound())) == size
    ratio(
        f"shapes of {size:,} rails in the order of placing",
        lambda: Layout(plan),
        against="numpy looking at the same cells, without the order",
        bound=bound,
        goal=150,
        rounds=rounds(size),
    )


def numpy_pass(plan: Plan) -> Callable[[], np.ndarray]:
    """Looks at the four columns around every rail on three levels, and something up by what is there."""
    cells = np.array([piece.at for piece in plan.pieces])
    low = cells.min(0) - 2
    size = cells.max(0) + 3 - low
    places = np.ravel_multi_index(tuple((cells - low).T), tuple(size))
    filled = np.zeros(int(np.prod(size)), np.uint8)
    filled[places] = 1
    across, up = int(size[1] * size[2]), int(size[2])
    steps = (-1, across, 1, -across)

    def look() -> np.ndarray:
        mask = np.zeros(len(places), np.uint8)
        for bit, step in enumerate(steps):
            near = filled[places + step] | filled[places + (step + up)] | filled[places + (step - up)]
            mask |= near << bit
        return BY_MASK[mask]

    return look


@pytest.mark.parametrize("size", SIZES)
def test_replay_against_a_graph(track: Callable[[int], Plan], ratio: Ratio, size: int) -> None:
    plan = track(size)
    assert len(walked_graph(plan)) == size
    ratio(
        f"shapes of {size:,} rails in the order of placing",
        lambda: Layout(plan),
        against="building the track as a networkx graph and walking it",
        bound=lambda: walked_graph(plan),
        goal=1,
        rounds=rounds(size),
    )


def walked_graph(plan: Plan) -> list[Cell]:
    """Every rail with an edge to those beside it, walked from the first one."""
    graph: nx.Graph[Cell] = nx.Graph()
    cells = {piece.at for piece in plan.pieces}
    for cell in cells:
        for heading in (Heading.EAST, Heading.SOUTH):
            graph.add_edges_from(
                (cell, at) for rise in (0, 1, -1) if (at := cell.step(heading, rise)) in cells
            )
    return list(nx.dfs_preorder_nodes(graph, next(iter(plan.pieces)).at))


def test_a_full_check_of_a_thousand_rails(ratio: Ratio) -> None:
    plan = station_throat(1_000)
    assert check(plan).findings
    ratio(
        "check of 1,000 rails with findings and eight orientations",
        lambda: check(plan),
        against="their shapes alone",
        bound=lambda: Layout(plan),
        goal=30,
    )


def test_what_the_window_works_out_beside_it(add_row: AddRow) -> None:
    plan = station_throat(1_000)
    taken = best(lambda: check(plan))
    add_row("check of 1,000 rails with findings and eight orientations", "half a second", 2 * taken, 1)


@pytest.mark.parametrize("size", SIZES)
def test_a_full_check_of_many_rails(track: Callable[[int], Plan], add_row: AddRow, size: int) -> None:
    """With all findings, one route and eight orientations; the largest takes minutes, and is checked once."""
    plan = track(size)
    assert all(orientation.buildable for orientation in check(track(SIZES[0])).orientations)
    bounds = {
        "numpy looking at the same cells once": numpy_pass(plan),
        "building the track as a networkx graph and walking it": lambda: walked_graph(plan),
        "their shapes alone": lambda: Layout(plan),
    }
    taken = best(lambda: check(plan), rounds(size))
    for against, bound in bounds.items():
        add_row(f"check of {size:,} rails", against, taken / best(bound, rounds(size)))


def test_tracing_a_million_cells(track: Callable[[int], Plan], ratio: Ratio) -> None:
    size = 1_000_000
    layout = Layout(track(size))
    way = Junction(layout.plan, layout).way("Quay")
    assert way.outcome is Outcome.ARM
    assert len(way.path) == size
    ratio(
        "trace of 1,000,000 cells, with loops found",
        lambda: trace(layout.rails, layout.stoppers, {}, way.path[0], Heading.EAST),
        against="walking the dictionary of rails",
        bound=lambda: walk(layout, way.path[0]),
        goal=4,
        rounds=2,
    )


def walk(layout: Layout, start: Cell) -> int:
    """From rail to rail beside it, never back: two lookups a cell, or three in a bend."""
    rails, key, going, steps = layout.rails, pack(start), int(Heading.EAST), 0
    while True:
        for turn in (0, 1, 3):
            beyond = key + STEP[(going + turn) % 4]
            if beyond in rails or beyond - UP in rails:
                key, going, steps = beyond, (going + turn) % 4, steps + 1
                break
        else:
            return steps
