"""The pages of a level: the plan with its coordinates, and the key to what is on it."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QPointF, QRectF

from app.canvas.symbols import Manner, draw_north
from app.canvas.symbols.lettering import draw_centred, em_for
from app.export.arm_tags import draw_tags, on_level, tag_spaces, tags_of
from app.export.key import draw_key
from app.export.match_lines import Numbers, draw_match_lines, overlaps
from app.export.page import Job, Page
from app.export.papers import Paper
from app.export.pencil import HAIR, NARROW, RULER, Pencil
from app.export.plan_picture import PiecePainter, Window, by_square, draw_grid, shown
from app.export.scale import BAND, Tile, tiles
from app.export.washes import KEY, draw_washes
from app.translation import tr
from model.sheet.levels import LevelPage

PLAN_HEIGHT: Final = 150.0
"""Of the plan with its bands on paper that stands."""
KEY_WIDTH: Final = 130.0
"""Beside the plan on paper that lies."""
RULER_LEAST: Final = 7.0
"""mm a cell from which each cell has its coordinate; below, each second."""
NORTH_RADIUS: Final = 4.5


def plan_area(paper: Paper) -> QRectF:
    """Where the plan with its bands stands on a level's page."""
    body = paper.body
    if paper.lies:
        return QRectF(body.left(), body.top(), body.width() - KEY_WIDTH, body.height())
    return QRectF(body.left(), body.top(), body.width(), PLAN_HEIGHT)


def key_area(paper: Paper) -> QRectF:
    """Where the key stands: below the plan, or beside it."""
    body, plan = paper.body, plan_area(paper)
    if paper.lies:
        return QRectF(plan.right(), body.top(), KEY_WIDTH, body.height())
    return QRectF(body.left(), plan.bottom(), body.width(), body.bottom() - plan.bottom())


def level_pages(job: Job, level: LevelPage, first_number: int) -> list[Page]:
    """The pages of a level from sheet ``first_number`` on; parts without pieces are left out."""
    tags = on_level(tags_of(level.arms), level.level)
    parts = tiles(level.bounds, tags, plan_area(job.paper), by_square(level.pieces))
    numbers = {(part.column, part.row): first_number + index for index, part in enumerate(parts)}
    drawing = _Drawing(job, level, numbers)
    return [_page(drawing, part, own) for own, part in enumerate(parts, start=1)]


class _Drawing:
    """What all pages of one level draw from."""

    def __init__(self, job: Job, level: LevelPage, numbers: Numbers) -> None:
        self.job = job
        self.level = level
        self.numbers = numbers
        self.tags = on_level(tags_of(level.arms), level.level)
        self.own = by_square(level.pieces)
        self.below = by_square(level.below)


def _page(drawing: _Drawing, part: Tile, own: int) -> Page:
    job, level, parts = drawing.job, drawing.level, len(drawing.numbers)
    scale = tr("1 cell = {cell:g} mm · north up", cell=part.window.cell)
    supplement = (
        level.title
        if parts == 1
        else tr("{title} · part {own} of {parts}", title=level.title, own=own, parts=parts)
    )
    footer = job.footer(f"{scale} \u00b7 {tr(KEY)}" if job.washes else scale)
    return Page(supplement, footer, lambda pencil: _draw(pencil, drawing, part))


def _draw(pencil: Pencil, drawing: _Drawing, part: Tile) -> None:
    window, job, level = part.window, drawing.job, drawing.level
    own, below = shown(window, drawing.own), shown(window, drawing.below)
    painter = PiecePainter(pencil, job.pieces)
    for shared in overlaps(part, drawing.numbers):
        pencil.painter.fillRect(shared, pencil.theme.fill)
    draw_grid(pencil, window)
    painter.draw(window, below, Manner.BELOW)
    draw_washes(pencil, window, level.level, job.washes)
    painter.draw(window, own)
    painter.draw_marks(window, own)
    draw_tags(pencil, window, drawing.tags)
    _draw_bands(pencil, window, plan_area(job.paper))
    taken = [*map(window.space, (one.piece.at for one in (*own, *below))), *tag_spaces(window, drawing.tags)]
    draw_match_lines(pencil, part, drawing.numbers, taken)
    _draw_north_where_free(pencil, window, [*taken, *overlaps(part, drawing.numbers)])
    heading = tr("On this page") if len(drawing.numbers) == 1 else tr("On this level")
    draw_key(pencil, key_area(job.paper), level, heading)


def _draw_bands(pencil: Pencil, window: Window, area: QRectF) -> None:
    """Coordinates on all four sides, between two outlines."""
    rect = window.rect
    pencil.box(rect)
    _divide(pencil, area, rect)
    every = 1 if window.cell >= RULER_LEAST else 2
    for x in (x for x in range(window.west, window.west + window.columns) if x % every == 0):
        middle = window.corner(x + 0.5, 0).x()
        for band in ((area.top() + rect.top()) / 2, (area.bottom() + rect.bottom()) / 2):
            _figure(pencil, middle, band, x, window.cell * every)
    for z in (z for z in range(window.north, window.north + window.rows) if z % every == 0):
        middle = window.corner(0, z + 0.5).y()
        for band in ((area.left() + rect.left()) / 2, (area.right() + rect.right()) / 2):
            _figure(pencil, band, middle, z, BAND)


def _figure(pencil: Pencil, x: float, y: float, value: int, room: float) -> None:
    text = str(value).replace("-", "\u2212")
    draw_centred(pencil.painter, QPointF(x, y), text, em_for(RULER), pencil.theme.ink, widest=room - 0.6)


def _divide(pencil: Pencil, area: QRectF, rect: QRectF) -> None:
    """The outer edges of the bands that the frame does not draw."""
    pencil.line(area.left(), area.bottom(), area.right(), area.bottom())
    pencil.line(area.right(), area.top(), area.right(), area.bottom())
    for x in (rect.left(), rect.right()):
        pencil.line(x, area.top(), x, rect.top(), HAIR)
        pencil.line(x, rect.bottom(), x, area.bottom(), HAIR)


def _draw_north_where_free(pencil: Pencil, window: Window, taken: list[QRectF]) -> None:
    """The north arrow in the first corner that nothing needs; the footer says it in any case."""
    rect = window.rect
    inset = window.cell
    for x in (rect.right() - 9, rect.right() - 9 - inset, rect.left() + 9, rect.left() + 9 + inset):
        for y in (rect.top() + 13, rect.top() + 13 + inset, rect.bottom() - 9, rect.bottom() - 9 - inset):
            around = QRectF(x - 7, y - 11, 14, 18)
            if not any(around.intersects(space) for space in taken):
                draw_north(pencil.painter, x, y, NORTH_RADIUS, NARROW, pencil.theme)
                return
