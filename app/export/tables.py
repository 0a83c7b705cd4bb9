"""The control table and the test checklist."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import Final

from PySide6.QtCore import QRectF

from app.canvas.symbols import Look, Stage, draw_inverter_gate, paint, paper
from app.export.flow import Placed, Strip, Table, cut, draw_strips, paginate
from app.export.page import Job, Page
from app.export.pencil import HAIR, LEGEND, NARROW, SECTION, TEXT, WIDE, Align, Pencil
from model.parts import Part
from model.routing.junction import Switch
from model.sheet.routes import ControlRow, Lie, Run
from model.sheet.sheet import Sheet

PADDING: Final = 3.0
FROM, TO, WAYBILL, SWITCHES = 0.0, 29.0, 58.0, 84.0
"""Where the columns of the control table begin."""
NARROWEST, BROADEST = 15.0, 26.0
"""A switch's column."""
ROW, HEADER, HEADING = 11.0, 9.0, 20.0
SYMBOL: Final = 6.0
RUN, IN_AT, RUN_WAYBILL, MUST, SEEN, NOTE = 0.0, 14.0, 47.0, 84.0, 124.0, 139.0
"""Where the columns of the checklist begin."""
TICK_BOX: Final = 6.0
HOW_TO_LIE: Final = (
    "The way each switch must lie. R rests, P powered, B as built, not wired, \u2014 not passed."
)
HOW_TO_TEST: Final = "Push a cart in at the arm. Tick what you saw."
NOT_REACHED: Final = "not reached"
NONE: Final = "none"


def table_pages(job: Job) -> list[Page]:
    """Control table, then checklist; on one page where both have room."""
    area = job.paper.body.adjusted(PADDING, PADDING, -PADDING, -PADDING)
    tables = [*_control_tables(job.sheet, area.width()), _checklist(job.sheet)]
    pages = paginate(tables, area.height())
    words = _supplements(len(pages))
    return [_page(job, placed, area, supplement) for placed, supplement in zip(pages, words, strict=True)]


def _page(job: Job, placed: list[Placed], area: QRectF, supplement: str) -> Page:
    return Page(supplement, job.footer(""), lambda pencil: draw_strips(pencil, placed, area))


def _supplements(pages: int) -> Iterator[str]:
    title = "Control table and test checklist"
    for number in range(1, pages + 1):
        yield title if pages == 1 else f"{title} \u00b7 part {number} of {pages}"


def _heading(title: str, how: str) -> Strip:
    def draw(pencil: Pencil, space: QRectF) -> None:
        pencil.text(space.left(), space.top() + 9, title, SECTION * 1.2, bold=True, widest=space.width())
        pencil.text(space.left(), space.top() + 15.5, how, LEGEND, widest=space.width())

    return Strip(HEADING, draw)


def _sentence(text: str) -> Strip:
    return Strip(ROW, lambda pencil, space: pencil.text(space.left(), space.top() + 6, text, TEXT))


def _control_tables(sheet: Sheet, width: float) -> Iterator[Table]:
    heading = _heading("Control table", HOW_TO_LIE)
    control = sheet.control
    if not control.rows:
        yield Table((heading,), (_sentence("No routes are wanted yet."),))
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
        yield Table((heading, _control_header(switches, breadth)), tuple(rows))


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
            pencil.text(left + TO, baseline + 2.2, NOT_REACHED, 1.8, bold=True, widest=room)
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


def _checklist(sheet: Sheet) -> Table:
    heading = _heading("Test checklist", HOW_TO_TEST)
    if not sheet.checklist:
        return Table((heading,), (_sentence("There is no wanted route to test yet."),))
    return Table((heading, Strip(HEADER, _draw_run_header)), tuple(map(_run, sheet.checklist)))


def _draw_run_header(pencil: Pencil, space: QRectF) -> None:
    baseline = space.bottom() - 2.5
    columns = ((RUN, "run"), (IN_AT, "in at"), (RUN_WAYBILL, "waybill"), (MUST, "must leave by"))
    for x, word in (*columns, (SEEN, "seen"), (NOTE, "note")):
        pencil.text(space.left() + x, baseline, word, LEGEND, bold=True)
    pencil.line(space.left(), space.bottom(), space.right(), space.bottom(), WIDE)


def _run(run: Run) -> Strip:
    def draw(pencil: Pencil, space: QRectF) -> None:
        left, middle = space.left(), space.center().y()
        baseline = middle + LEGEND / 2
        waybill = NONE if run.waybill is None else f"1 \u00d7 {run.waybill}"
        pencil.text(left + RUN, baseline, str(run.number), LEGEND, bold=True)
        pencil.text(left + IN_AT, baseline, run.start, LEGEND, widest=RUN_WAYBILL - IN_AT - 2)
        pencil.text(left + RUN_WAYBILL, baseline, waybill, LEGEND, widest=MUST - RUN_WAYBILL - 2)
        pencil.text(left + MUST, baseline, run.goal, LEGEND, bold=True, widest=SEEN - MUST - 2)
        pencil.box(QRectF(left + SEEN, middle - TICK_BOX / 2, TICK_BOX, TICK_BOX), NARROW)
        pencil.line(left + NOTE, baseline + 1, space.right(), baseline + 1, HAIR, pencil.theme.dim)
        pencil.line(left, space.bottom(), space.right(), space.bottom(), HAIR, pencil.theme.grid4)

    return Strip(ROW, draw)
