"""The control table: how each switch must lie on each wanted route. Lengths in mm."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import Final

from PySide6.QtCore import QRectF

from app.canvas.symbols import Look, Stage, draw_inverter_gate, paint, paper
from app.export.flow import Strip, Table, cut
from app.export.pencil import HAIR, LEGEND, NARROW, WIDE, Align, Pencil
from app.export.strips import HEADER, NONE, ROW, heading, sentence
from app.translation import QT_TR_NOOP, tr
from model.parts import Part
from model.routing.junction import Switch
from model.sheet.routes import ControlRow, ControlTable, Lie

FROM, TO, WAYBILL, SWITCHES = 0.0, 29.0, 58.0, 84.0
"""Where the columns begin."""
NARROWEST, BROADEST = 15.0, 26.0
"""A switch's column."""
SYMBOL: Final = 6.0
HOW_TO_LIE: Final = QT_TR_NOOP(
    "The way each switch must lie. R rests, P powered, B as built, not wired, \u2014 not passed."
)
NOT_REACHED: Final = QT_TR_NOOP("not reached")


def control_tables(control: ControlTable, width: float) -> Iterator[Table]:
    """As many tables as it takes to give each switch a column."""
    head = heading(tr("Control table"), tr(HOW_TO_LIE))
    if not control.rows:
        yield Table((head,), (sentence(tr("No routes are wanted yet.")),))
        return
    most = max(1, int((width - SWITCHES) / NARROWEST))
    for columns in cut(len(control.switches), most):
        switches = control.switches[columns]
        breadth = min(BROADEST, (width - SWITCHES) / max(1, len(switches)))
        rows = [
            _control_row(row, row.lies[columns], breadth, after is None or after.start != row.start)
            for row, after in pairwise([*control.rows, None])
            if row is not None
        ]
        if switches:
            rows.append(_inverter_row(switches, breadth))
        yield Table((head, _control_header(switches, breadth)), tuple(rows))


def _control_header(switches: tuple[Switch, ...], breadth: float) -> Strip:
    def draw(pencil: Pencil, space: QRectF) -> None:
        baseline = space.bottom() - 2.5
        for x, word in ((FROM, "from"), (TO, "to"), (WAYBILL, "waybill")):
            pencil.text(space.left() + x, baseline, word, LEGEND, bold=True)
        for index, switch in enumerate(switches):
            middle = space.left() + SWITCHES + (index + 0.5) * breadth
            name, room = switch.name, breadth - 2
            pencil.text(middle, baseline, name, LEGEND, bold=True, align=Align.MIDDLE, widest=room)
        _draw_column_lines(pencil, space, len(switches), breadth)
        pencil.line(space.left(), space.bottom(), space.right(), space.bottom(), WIDE)

    return Strip(HEADER, draw)


def _control_row(row: ControlRow, lies: tuple[Lie | None, ...], breadth: float, last_of_arm: bool) -> Strip:
    def draw(pencil: Pencil, space: QRectF) -> None:
        baseline = space.center().y() + LEGEND / 2
        left, room = space.left(), TO - FROM - 2
        pencil.text(left + FROM, baseline, row.start, LEGEND, widest=room)
        pencil.text(left + TO, baseline if row.reached else baseline - 2, row.goal, LEGEND, widest=room)
        if not row.reached:
            pencil.text(left + TO, baseline + 2.2, tr(NOT_REACHED), 1.8, bold=True, widest=room)
        pencil.text(left + WAYBILL, baseline, row.waybill or NONE, LEGEND, widest=SWITCHES - WAYBILL - 3)
        for index, lie in enumerate(lies):
            _draw_lie(pencil, lie, left + SWITCHES + (index + 0.5) * breadth, space)
        _draw_column_lines(pencil, space, len(lies), breadth)
        wide = NARROW if last_of_arm else HAIR
        pencil.line(left, space.bottom(), space.right(), space.bottom(), wide)

    return Strip(ROW, draw)


def _draw_lie(pencil: Pencil, lie: Lie | None, middle: float, space: QRectF) -> None:
    baseline = space.center().y() + LEGEND / 2
    if lie is None:
        pencil.text(middle, baseline, "\u2014", LEGEND, align=Align.MIDDLE)
        return
    top = space.center().y() - SYMBOL / 2
    stage = Stage(pencil.painter, middle - SYMBOL - 0.5, top, paper(SYMBOL), pencil.theme)
    paint(stage, Look(Part.RAIL, shape=lie.shape))
    pencil.text(middle + 2, baseline, lie.state, LEGEND, bold=True)


def _draw_column_lines(pencil: Pencil, space: QRectF, columns: int, breadth: float) -> None:
    for index in range(columns):
        x = space.left() + SWITCHES + index * breadth
        pencil.line(x, space.top(), x, space.bottom(), HAIR)


def _inverter_row(switches: tuple[Switch, ...], breadth: float) -> Strip:
    def draw(pencil: Pencil, space: QRectF) -> None:
        baseline = space.center().y() + LEGEND / 2
        pencil.text(space.left(), baseline, "inverter", LEGEND, bold=True)
        for index, switch in enumerate(switches):
            middle = space.left() + SWITCHES + (index + 0.5) * breadth
            if switch.inverter:
                top = space.center().y() - SYMBOL / 2
                draw_inverter_gate(
                    Stage(pencil.painter, middle - SYMBOL / 2, top, paper(SYMBOL), pencil.theme)
                )
            else:
                pencil.text(middle, baseline, NONE, LEGEND, align=Align.MIDDLE)
        pencil.line(space.left(), space.bottom(), space.right(), space.bottom(), WIDE)

    return Strip(ROW + 2, draw)
