"""The page that shows the levels pulled apart, in isometric view. Lengths in mm.

It is left out where nothing stands above anything else, and where a cell would be too small to read.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import floor
from typing import Final

from PySide6.QtCore import QPointF, QRectF

from app.canvas.geometry import Area
from app.canvas.symbols import Size, paper
from app.canvas.symbols.lettering import em_for
from app.canvas.symbols.size import Detail, detail_at
from app.depth.lines import LevelLines
from app.depth.names import names_of
from app.depth.picture import Frame, Level, label_width, paint_depth, paint_north
from app.depth.projection import Isometric
from app.depth.stack import Extent, Stack, extent, widest_gap
from app.depth.ties import ties
from app.export.page import Job, Page
from app.export.pencil import LEGEND, NARROW, TEXT, Pencil
from app.export.plan_picture import rest_look_of
from app.translation import QT_TR_NOOP, tr
from model.sheet.levels import LevelPage

TITLE: Final = QT_TR_NOOP("In depth \u2014 the levels pulled apart")
LARGEST, LEAST, STEP = 10.0, 2.0, 0.5
"""mm a cell along each axis."""
READABLE: Final = 3.5
"""mm a cell down to which the levels are pulled clear of each other."""
PADDING: Final = 8.0
NOTE: Final = 12.0
"""Below the picture, for what it says of itself."""
NORTH_RADIUS: Final = 5.0
TOO_SMALL: Final = QT_TR_NOOP("no page in depth: the plan is too large for this paper")


def depth_pages(job: Job) -> list[Page]:
    """The page, or none."""
    frame = _frame(job)
    if frame is None:
        return []
    scale = tr("isometric · 1 cell = {size:g} mm along each axis", size=frame.size.c)
    return [Page(tr(TITLE), job.footer(scale), lambda pencil: _draw(pencil, job, frame))]


def left_out(job: Job) -> str:
    """Why a plan with levels one above the other has no such page; empty where it has one."""
    return tr(TOO_SMALL) if len(job.sheet.levels) > 1 and _frame(job) is None else ""


def _frame(job: Job) -> Frame | None:
    """Where everything lies on the page; ``None`` where it would help nobody."""
    numbers, footprint = tuple(level.level for level in job.sheet.levels), job.sheet.footprint
    if len(numbers) < 2 or footprint is None:
        return None
    area = Area(*footprint.bounds)
    gap = widest_gap(area, lambda gap: _cell(job, area, Stack(numbers, gap)) >= READABLE)
    stack = Stack(numbers, gap)
    cell = _cell(job, area, stack)
    return None if cell < LEAST else _placed(job, area, stack, cell)


def _cell(job: Job, area: Area, stack: Stack) -> float:
    """The largest cell with which a stack has room."""
    box, room = _box(area, stack), _room(job)
    most = min(room.width() / box.width, room.height() / box.height, LARGEST)
    return floor(most / STEP) * STEP


def _placed(job: Job, area: Area, stack: Stack, cell: float) -> Frame:
    box, middle = _box(area, stack), _room(job).center()
    left = middle.x() - (box.left + box.right) / 2 * cell
    top = middle.y() - (box.top + box.bottom) / 2 * cell
    return Frame(Isometric(), stack, area, _size(cell), left, top, job.theme, em_for(TEXT))


def _box(area: Area, stack: Stack) -> Extent:
    return extent(Isometric(), area, map(stack.height, stack.levels))


def _room(job: Job) -> QRectF:
    """The body of the page without the labels on the left and the note below."""
    body = job.paper.body
    labels = label_width((_label(level.level) for level in job.sheet.levels), em_for(TEXT))
    return body.adjusted(PADDING + labels, PADDING, -PADDING, -PADDING - NOTE)


def _size(cell: float) -> Size:
    """Widths as on the other pages; as much detail as a screen shows at this size."""
    size = paper(cell)
    return replace(size, detail=max(Detail.LINES, detail_at(cell / size.unit)))


def _draw(pencil: Pencil, job: Job, frame: Frame) -> None:
    paint_depth(pencil.painter, frame, _levels(job, frame))
    body = job.paper.body
    at = QPointF(body.right() - 16, body.top() + 16)
    paint_north(pencil.painter, at, NORTH_RADIUS, NARROW, frame.view, pencil.theme)
    left, baseline = body.left() + PADDING, body.bottom() - PADDING
    for line, words in enumerate(reversed(_notes(frame))):
        pencil.text(left, baseline - 4.2 * line, words, LEGEND, widest=body.width() - 2 * PADDING)


def _notes(frame: Frame) -> tuple[str, str]:
    area = frame.area
    where = tr(
        "x {west} to {east}, z {north} to {south}",
        west=area.west,
        east=area.east,
        north=area.north,
        south=area.south,
    ).replace("-", "\u2212")
    return (
        tr(
            "Seen from the {seen_from}, the levels {gap:g} cells apart; {where}.",
            seen_from=frame.view.seen_from,
            gap=frame.stack.gap,
            where=where,
        ),
        tr("Dashed uprights lead from corner to corner, and from a rail to what works on it from below."),
    )


def _levels(job: Job, frame: Frame) -> Iterator[Level]:
    for level in job.sheet.levels:
        count = len(level.pieces)
        note = tr("1 piece") if count == 1 else tr("{count:,} pieces", count=count)
        names = list(names_of(job.arms, level.level)) if frame.size.detail > Detail.LINES else []
        yield Level(level.level, _label(level.level), note, False, [_lines(job, frame, level)], names)


def _label(level: int) -> str:
    return tr("Level {level}", level=level).replace("-", "\u2212")


def _lines(job: Job, frame: Frame, level: LevelPage) -> LevelLines:
    lines = LevelLines(frame.area.west, frame.area.north, frame.size, frame.theme)
    for one in level.pieces:
        lines.add(one.piece.at, rest_look_of(one, job.pieces))
    switches = (one.piece.at for one in level.pieces if one.rail is not None and one.rail.is_switch)
    lines.ties += ties((one.piece for one in level.pieces), job.pieces, switches)
    return lines
