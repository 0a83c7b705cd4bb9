"""The timing diagram on paper: black, wide lines for what is on, narrow ones for all else. Lengths in mm."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Final

from PySide6.QtCore import QRectF
from PySide6.QtGui import QGuiApplication, QPainter

from app.canvas.symbols import Stage, paint, paper
from app.canvas.symbols.lettering import em_for, printable
from app.export.cover import UNTITLED
from app.export.devices import svg
from app.export.papers import Paper
from app.export.pencil import HAIR, LEGEND, RULER, SECTION, TEXT, Align, Pencil
from app.panels.timing_axis import TimeAxis
from app.panels.timing_drawing import Manner, draw_axis, draw_trace, draw_unsure, symbol_of
from app.panels.timing_trace import Trace, seconds
from app.theme import theme
from app.translation import QT_TR_NOOP, tr
from model.grid import Cell

WIDTH: Final = 297.0
"""Of A4 lying."""
MARGIN: Final = 10.0
NAMES: Final = 46.0
HEAD, AXIS, ROW, FOOT = 14.0, 10.0, 10.0, 10.0
ABOVE, BELOW = 2.2, 1.8
"""Around a trace within its row."""
SYMBOL: Final = 7.0
NARROW: Final = 0.25
BETWEEN_MARKS: Final = 16.0
LEAST: Final = 0.4
"""Several changes within as much fall together."""
HOW_TO_READ: Final = QT_TR_NOOP(
    "A tick is 1/20 s. Wide line over grey: on; narrow line: off. Steps and figures: strength, 0 to 15. "
    "Solid black: changes too close to draw. ?: the order within the tick decides."
)


@dataclass(frozen=True)
class TimingSheet:
    """What is to be drawn: these traces from one tick to another, of a run of ``now`` ticks."""

    traces: Sequence[Trace]
    unsure: Mapping[Cell, Iterable[int]]
    first: float
    last: float
    now: int
    title: str


def timing_svg(sheet: TimingSheet) -> bytes:
    """The diagram as one SVG as high as its rows. A Qt application must be there."""
    assert QGuiApplication.instance() is not None
    height = 2 * MARGIN + HEAD + AXIS + len(sheet.traces) * ROW + FOOT
    title = printable(sheet.title or tr(UNTITLED))
    return svg(
        partial(_draw, sheet), Paper("timing", WIDTH, height), tr("Timing diagram: {title}", title=title)
    )


def _draw(sheet: TimingSheet, painter: QPainter) -> None:
    pencil = Pencil(painter, theme("print"))
    _draw_head(pencil, sheet)
    left, top = MARGIN + NAMES, MARGIN + HEAD
    width = WIDTH - MARGIN - left
    # A run that is shorter than what is seen need not leave the rest of the paper empty.
    last = max(min(sheet.last, sheet.now), sheet.first + 1)
    axis = TimeAxis(width, sheet.first, width / (last - sheet.first))
    manner = Manner(pencil.theme, NARROW, em_for(RULER), LEAST, snaps=False)
    bottom = top + AXIS + len(sheet.traces) * ROW
    draw_axis(painter, manner, QRectF(left, top, width, AXIS), axis, BETWEEN_MARKS, bottom)
    for row, word in enumerate(("tick", "second")):
        pencil.text(left - 3, top + row * AXIS / 2 + RULER + 2 * NARROW, word, RULER, align=Align.RIGHT)
    for row, trace in enumerate(sheet.traces):
        space = QRectF(MARGIN, top + AXIS + row * ROW, WIDTH - 2 * MARGIN, ROW)
        _draw_name(pencil, trace, space)
        box = QRectF(left, space.top() + ABOVE, width, ROW - ABOVE - BELOW)
        draw_trace(painter, manner, box, axis, trace, sheet.now)
        draw_unsure(painter, manner, box, axis, sheet.unsure.get(trace.cell, ()))
        pencil.line(space.left(), space.bottom(), space.right(), space.bottom(), HAIR, pencil.theme.grid4)
    pencil.line(MARGIN, top + AXIS, WIDTH - MARGIN, top + AXIS, NARROW)
    pencil.text(MARGIN, bottom + 5, tr(HOW_TO_READ), RULER, widest=WIDTH - 2 * MARGIN)


def _draw_head(pencil: Pencil, sheet: TimingSheet) -> None:
    first, last = int(sheet.first), max(0, min(int(sheet.last), sheet.now - 1))
    when = tr(
        "Timing diagram of the dry run, ticks {first} to {last}, {since} to {to}",
        first=first,
        last=last,
        since=seconds(first),
        to=seconds(last),
    )
    half = (WIDTH - 2 * MARGIN) / 2 - 4
    pencil.text(MARGIN, MARGIN + 5, sheet.title or tr(UNTITLED), SECTION, bold=True, widest=half)
    pencil.text(WIDTH - MARGIN, MARGIN + 5, when, TEXT, align=Align.RIGHT, widest=half)


def _draw_name(pencil: Pencil, trace: Trace, space: QRectF) -> None:
    if trace.piece is not None:
        top = space.center().y() - SYMBOL / 2
        stage = Stage(pencil.painter, space.left(), top, paper(SYMBOL), pencil.theme)
        paint(stage, symbol_of(trace.piece))
    x, room = space.left() + SYMBOL + 3, NAMES - SYMBOL - 6
    pencil.text(x, space.center().y() - 0.6, trace.name, LEGEND, widest=room)
    pencil.text(x, space.center().y() + 3.2, str(trace.cell), RULER, widest=room)
