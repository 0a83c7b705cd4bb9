"""The memory that pieces and shapes take, and what is left of ten thousand edits that were undone."""

from __future__ import annotations

import gc
import tracemalloc
from collections.abc import Callable
from typing import Final

import pytest

from model.edits import erase
from model.files.plan_file import parse_plan, plan_bytes
from model.plan import Plan
from model.routing.junction import Junction
from model.track.layout import Layout
from tests.benchmarks.conftest import AddRow
from tests.benchmarks.tracks import station_throat, winding

pytestmark = pytest.mark.slow

SIZE: Final = 100_000
EDITS: Final = 10_000


def held(make: Callable[[], object]) -> int:
    """The bytes that what is made holds on to."""
    gc.collect()
    tracemalloc.start()
    made = make()
    size = traced()
    tracemalloc.stop()
    assert made is not None
    return size


def test_bytes_a_piece(add_row: AddRow) -> None:
    data = plan_bytes(winding(SIZE))
    plan = parse_plan(data, "f")
    pieces = held(lambda: parse_plan(data, "f")) / SIZE
    shapes = held(lambda: Layout(plan)) / SIZE
    junction = held(lambda: worked_out(plan)) / SIZE
    add_row("bytes of a piece in a plan", "one byte", pieces)
    add_row("bytes of a rail's shape, kept up to date", "one byte", shapes)
    add_row("bytes of a rail in all that is worked out of a plan with one route", "one byte", junction)
    assert 0 < shapes < junction


def worked_out(plan: Plan) -> Junction:
    junction = Junction(plan)
    assert junction.routes[0].idle_reached
    return junction


def test_growth_under_edits_and_undos(add_row: AddRow) -> None:
    """As many edits before the first measurement: all that edits make anew at first is there by then."""
    tracemalloc.start()
    layout = Layout(station_throat(1_000))
    whole = layout.plan
    edit_and_undo(layout, EDITS)
    before = traced()
    edit_and_undo(layout, EDITS)
    growth = traced() - before
    tracemalloc.stop()
    assert layout.plan == whole
    add_row("memory left of 10,000 edits and undos of 1,000 rails", "plan and shapes", growth / before, 0.01)


def traced() -> int:
    gc.collect()
    return tracemalloc.get_traced_memory()[0]


def edit_and_undo(layout: Layout, times: int) -> None:
    """Takes rails away and gives them back, each beside others."""
    pieces = layout.plan.pieces.in_order()
    for number in range(times):
        change = erase(layout.plan, [pieces[-1 - number % 900].piece.at])
        layout.follow(change)
        layout.follow(change.inverse())
