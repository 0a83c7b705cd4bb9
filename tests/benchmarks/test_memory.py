"""The memory that pieces and shapes take, and what is left of ten thousand edits that were undone."""

from __future__ import annotations

import gc
import tracemalloc
from collections.abc import Callable
from typing import Final

import pytest

from model.edits import erase
from model.files.plan_file import parse_plan, plan_bytes
from model.routing.junction import Junction
from model.track.layout import Layout
from tests.benchmarks.conftest import AddRow
from tests.benchmarks.tracks import station_throat, winding

pytestmark = [pytest.mark.slow, pytest.mark.timeout(600)]

SIZE: Final = 100_000
EDITS: Final = 10_000


def held(make: Callable[[], object]) -> int:
    """The bytes that what is made holds on to."""
    gc.collect()
    tracemalloc.start()
    made = make()
    gc.collect()
    size, _ = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert made is not None
    return size


def test_bytes_a_piece(add_row: AddRow) -> None:
    data = plan_bytes(winding(SIZE))
    plan = parse_plan(data, "f")
    pieces = held(lambda: parse_plan(data, "f")) / SIZE
    shapes = held(lambda: Layout(plan)) / SIZE
    junction = held(lambda: Junction(plan).ways) / SIZE
    add_row("bytes of a piece in a plan", "one byte", pieces)
    add_row("bytes of a rail's shape, kept up to date", "one byte", shapes)
    add_row("bytes of a rail in all that is worked out of a plan with one route", "one byte", junction)
    assert 0 < shapes < junction


def test_growth_under_edits_and_undos(add_row: AddRow) -> None:
    layout = Layout(station_throat(1_000))
    whole = layout.plan
    for _ in range(100):
        edit_and_undo(layout, 1)
    size = held(lambda: Layout(whole))
    growth = held(lambda: edit_and_undo(layout, EDITS))
    assert layout.plan == whole
    add_row("memory left of 10,000 edits and undos of 1,000 rails", "their shapes", growth / size, 0.1)


def edit_and_undo(layout: Layout, times: int) -> Layout:
    """Takes rails away and gives them back, each beside others."""
    pieces = layout.plan.pieces.in_order()
    for number in range(times):
        piece = pieces[-1 - number % 900].piece
        change = erase(layout.plan, [piece.at])
        layout.follow(change)
        layout.follow(change.inverse())
    return layout
