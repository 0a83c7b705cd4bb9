"""The timing diagram costs what is seen of a run, however long it was. Ratios, the fastest of many each."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

import pytest
from PySide6.QtGui import QPixmap
from pytestqt.qtbot import QtBot

from app.document import Document
from app.dry_run import DryRunner
from app.panels.timing_book import ProbeBook
from app.panels.timing_trace import Trace
from app.panels.timing_view import TimingView
from model.dry_run import DryRun
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece, new_piece
from model.plan import plan_of
from tests.benchmarks.conftest import AddRow, Ratio
from tests.benchmarks.measuring import Action, processor_seconds

pytestmark = pytest.mark.slow

PROBES: Final = 50
SHORT: Final = 1_200
LONG: Final = 12_000
RUNS: Final = 25
READ: Final = 200
"""Ticks read one by one; the fastest counts."""


def diagram(qtbot: QtBot, ticks: int) -> TimingView:
    """Fifty clocks of 4 to 28 ticks."""
    view = TimingView()
    qtbot.addWidget(view)
    view.resize(888, 700)
    traces = []
    for x in range(PROBES):
        trace = Trace(Cell(x, 64, 0), new_piece(Part.DUST, Cell(x, 64, 0)))
        half = 2 + x % 13
        trace.extend((tick, 15 * (tick // half % 2)) for tick in range(0, ticks, half))
        traces.append(trace)
    view.show_traces(traces)
    view.go_on(ticks)
    return view


def painting(view: TimingView) -> Action:
    canvas = QPixmap(view.viewport().size())
    return lambda: view.viewport().render(canvas)


def test_a_run_ten_times_as_long_is_painted_as_quickly(qtbot: QtBot, ratio: Ratio) -> None:
    short, long = diagram(qtbot, SHORT), diagram(qtbot, LONG)
    for view in (short, long):
        view.put_cursor(view.now // 2)
    assert short.axis.scale == long.axis.scale
    ratio(
        f"timing diagram of {PROBES} probes, {LONG:,} ticks, a part seen",
        painting(long),
        against=f"the same of {SHORT:,} ticks",
        bound=painting(short),
        goal=1.3,
        rounds=RUNS,
    )


def test_the_whole_of_a_run_ten_times_as_long_is_painted_as_quickly(qtbot: QtBot, ratio: Ratio) -> None:
    short, long = diagram(qtbot, SHORT), diagram(qtbot, LONG)
    for view in (short, long):
        view.show_whole_run()
    ratio(
        f"timing diagram of {PROBES} probes, {LONG:,} ticks, all seen",
        painting(long),
        against=f"the same of {SHORT:,} ticks",
        bound=painting(short),
        goal=1.5,
        rounds=RUNS,
    )


def test_a_late_tick_is_read_as_quickly_as_an_early_one(qtbot: QtBot, add_row: AddRow) -> None:
    """A clock of two repeaters drives dust; fifty cells are probed."""
    cells = [Cell(x, 64, z) for z in range(PROBES // 2) for x in range(2)]
    pieces = [new_piece(Part.SOLID_BLOCK, cell.moved(dy=-1)) for cell in cells]
    pieces += [Piece(Part.TORCH if cell.x else Part.SOLID_BLOCK, cell, Facing.EAST) for cell in cells]
    document, runner = Document(), DryRunner()
    book = ProbeBook(document, runner)
    for cell in cells:
        runner.add_probe(cell)
    runner.start(DryRun(plan_of(pieces)))

    early = min(reading(runner))
    for trace in book.traces:
        # As if each had changed in every tick of a long run.
        noted = [(tick, tick % 2) for tick in range(READ - LONG, READ)]
        runner._probes[trace.cell][:] = noted
        trace.forget()
        trace.extend(noted)
    late = min(reading(runner))
    assert all(len(trace.ticks) >= LONG for trace in book.traces)
    document.close()
    add_row(
        f"a tick of {PROBES} probes read after {LONG:,} ticks", "the same at the beginning", late / early, 1.5
    )


def reading(runner: DryRunner) -> Iterator[float]:
    """Seconds of each of many ticks, too short to collect garbage before each."""
    for _ in range(READ):
        start = processor_seconds()
        runner.step()
        yield processor_seconds() - start
