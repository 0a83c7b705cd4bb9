"""The timing diagram costs what is seen of a run, however long it was. Ratios, the fastest of many each."""

from __future__ import annotations

import time

import pytest
from PySide6.QtGui import QPixmap
from pytestqt.qtbot import QtBot

from app.document import Document
from app.dry_run import DryRunner
from app.panels.timing_book import ProbeBook
from app.panels.timing_trace import Trace
from app.panels.timing_view import TimingView
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece, new_piece
from model.plan import plan_of

pytestmark = pytest.mark.slow

PROBES = 50
SHORT, LONG = 1_200, 12_000
RUNS = 25


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


def repaint_time(view: TimingView) -> float:
    canvas = QPixmap(view.viewport().size())
    times = []
    for _ in range(RUNS):
        start = time.perf_counter()
        view.viewport().render(canvas)
        times.append(time.perf_counter() - start)
    return min(times)


def test_a_run_ten_times_as_long_is_painted_as_quickly(qtbot: QtBot) -> None:
    short, long = diagram(qtbot, SHORT), diagram(qtbot, LONG)
    for view in (short, long):
        view.put_cursor(view.now // 2)
    assert short.axis.scale == long.axis.scale
    assert repaint_time(long) <= 1.3 * repaint_time(short)


def test_the_whole_of_a_run_ten_times_as_long_is_painted_as_quickly(qtbot: QtBot) -> None:
    short, long = diagram(qtbot, SHORT), diagram(qtbot, LONG)
    for view in (short, long):
        view.show_whole_run()
    assert repaint_time(long) <= 1.5 * repaint_time(short)


def test_a_late_tick_is_read_as_quickly_as_an_early_one(qtbot: QtBot) -> None:
    """A clock of two repeaters drives dust; fifty cells are probed."""
    cells = [Cell(x, 64, z) for z in range(PROBES // 2) for x in range(2)]
    pieces = [new_piece(Part.SOLID_BLOCK, cell.moved(dy=-1)) for cell in cells]
    pieces += [Piece(Part.TORCH if cell.x else Part.SOLID_BLOCK, cell, Facing.EAST) for cell in cells]
    document, runner = Document(), DryRunner()
    book = ProbeBook(document, runner)
    for cell in cells:
        runner.add_probe(cell)
    runner.start(plan_of(pieces))

    def read(ticks: int) -> float:
        times = []
        for _ in range(ticks):
            start = time.perf_counter()
            runner.step()
            times.append(time.perf_counter() - start)
        return min(times)

    early = read(200)
    for trace in book.traces:
        # As if each had changed in every tick of a long run.
        noted = [(tick, tick % 2) for tick in range(200 - LONG, 200)]
        runner._probes[trace.cell][:] = noted
        trace.forget()
        trace.extend(noted)
    assert read(200) <= 1.5 * early
    document.close()
