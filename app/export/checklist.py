"""The test checklist: the runs to make, a box to tick for each, and what they show. Lengths in mm."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from PySide6.QtCore import QRectF

from app.export.flow import Strip, Table
from app.export.pencil import HAIR, LEGEND, NARROW, RULER, WIDE, Pencil
from app.export.strips import HEADER, NONE, ROW, heading, paragraph, sentence
from app.translation import QT_TR_NOOP, tr
from model.sheet.checklist import Checklist, ChecklistRun

RUN, IN_AT, WAYBILL, MUST, SEEN, NOTE = 0.0, 14.0, 47.0, 84.0, 124.0, 139.0
"""Where the columns begin."""
TICK_BOX: Final = 6.0
LISTED: Final = 6
"""Entries of a list below the runs, at most."""
DASH: Final = "\u2013"
HOW_TO_TEST: Final = QT_TR_NOOP(
    "Push a cart in at the arm. Tick what you saw; where it was otherwise, note how the cart left."
)


def checklist_tables(checklist: Checklist, width: float, *, wanted: bool) -> Iterator[Table]:
    """The runs, and below them how much they show; ``wanted``: whether there is a route to test at all."""
    head = heading(tr("Test checklist"), tr(HOW_TO_TEST))
    if not wanted:
        yield Table((head,), (sentence(tr("There is no wanted route to test yet.")),))
        return
    runs = tuple(map(_run, checklist.runs))
    yield Table((head, Strip(HEADER, _draw_header)) if runs else (head,), runs)
    above = Strip(2.5, lambda _pencil, _space: None)
    verdict = paragraph(checklist.verdict, width, LEGEND, bold=True)
    hidden = _list(tr("No run can show that"), checklist.hidden, width)
    alike = _list(tr("No run can tell whether"), checklist.alike, width)
    yield Table((above, verdict), ())
    yield from (*hidden, *alike)


def _list(title: str, entries: tuple[str, ...], width: float) -> Iterator[Table]:
    """Entries are halves of sentences: the other half stands above them on every page."""
    if not entries:
        return
    more = (tr("and {count:,} more", count=len(entries) - LISTED),) if len(entries) > LISTED else ()
    rows = (paragraph(entry, width, RULER, mark=DASH) for entry in (*entries[:LISTED], *more))
    yield Table((paragraph(title, width, LEGEND),), tuple(rows))


def _draw_header(pencil: Pencil, space: QRectF) -> None:
    baseline = space.bottom() - 2.5
    columns = ((RUN, "run"), (IN_AT, tr("in at")), (WAYBILL, "waybill"), (MUST, tr("must leave by")))
    for x, word in (*columns, (SEEN, "seen"), (NOTE, "note")):
        pencil.text(space.left() + x, baseline, word, LEGEND, bold=True)
    pencil.line(space.left(), space.bottom(), space.right(), space.bottom(), WIDE)


def _run(run: ChecklistRun) -> Strip:
    def draw(pencil: Pencil, space: QRectF) -> None:
        left, middle = space.left(), space.center().y()
        baseline = middle + LEGEND / 2
        waybill = NONE if run.waybill is None else f"1 \u00d7 {run.waybill}"
        pencil.text(left + RUN, baseline, str(run.number), LEGEND, bold=True)
        pencil.text(left + IN_AT, baseline, run.start, LEGEND, widest=WAYBILL - IN_AT - 2)
        pencil.text(left + WAYBILL, baseline, waybill, LEGEND, widest=MUST - WAYBILL - 2)
        pencil.text(left + MUST, baseline, run.expect, LEGEND, bold=True, widest=SEEN - MUST - 2)
        pencil.box(QRectF(left + SEEN, middle - TICK_BOX / 2, TICK_BOX, TICK_BOX), NARROW)
        pencil.line(left + NOTE, baseline + 1, space.right(), baseline + 1, HAIR, pencil.theme.dim)
        pencil.line(left, space.bottom(), space.right(), space.bottom(), HAIR, pencil.theme.grid4)

    return Strip(ROW, draw)
