"""The pages of a level: the plan with its coordinates, and the key to what is on it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPen

from app.canvas.symbols import draw_north
from app.canvas.symbols.lettering import em_for, width
from app.export.arm_tags import draw_tags, on_level, tag_spaces, tags_of
from app.export.key import draw_key
from app.export.page import Job, Page
from app.export.papers import Paper
from app.export.pencil import HAIR, NARROW, RULER, Align, Pencil
from app.export.plan_picture import PiecePainter, Window, by_square, draw_grid, shown
from app.export.scale import BAND, Tile, tiles
from app.export.washes import KEY, draw_washes
from model.sheet.levels import LevelPage

Numbers = dict[tuple[int, int], int]
"""The sheets on which the parts of a level stand, by column and row."""
PLAN_HEIGHT: Final = 150.0
"""Of the plan with its bands on paper that stands."""
KEY_WIDTH: Final = 130.0
"""Beside the plan on paper that lies."""
RULER_LEAST: Final = 7.0
"""mm a cell from which each cell has its coordinate; below, each second."""
NORTH_RADIUS: Final = 4.5
SPLITS: Final = [16.0, 3.0, 3.0, 3.0]
"""A match line's dashes, in widths of the line."""


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
    parts = tiles(level.bounds, tags, plan_area(job.paper))
    if len(parts) > 1:
        squares = by_square(level.pieces)
        parts = [part for part in parts if shown(part.window, squares)]
    numbers = {(part.column, part.row): first_number + index for index, part in enumerate(parts)}
    drawing = _Drawing(job, level, numbers)
    return [_page(drawing, part) for part in parts]


class _Drawing:
    """What all pages of one level draw from."""

    def __init__(self, job: Job, level: LevelPage, numbers: Numbers) -> None:
        self.job = job
        self.level = level
        self.numbers = numbers
        self.tags = on_level(tags_of(level.arms), level.level)
        self.own = by_square(level.pieces)
        self.below = by_square(level.below)


def _page(drawing: _Drawing, part: Tile) -> Page:
    job, level, parts = drawing.job, drawing.level, len(drawing.numbers)
    scale = f"1 cell = {part.window.cell:g} mm \u00b7 north up"
    own = list(drawing.numbers).index((part.column, part.row)) + 1
    supplement = level.title if parts == 1 else f"{level.title} \u00b7 part {own} of {parts}"
    footer = job.footer(f"{scale} \u00b7 {KEY}" if job.washes else scale)
    return Page(supplement, footer, lambda pencil: _draw(pencil, drawing, part))


def _draw(pencil: Pencil, drawing: _Drawing, part: Tile) -> None:
    window, job, level = part.window, drawing.job, drawing.level
    own, below = shown(window, drawing.own), shown(window, drawing.below)
    painter = PiecePainter(pencil, job.pieces)
    _shade_overlaps(pencil, part, drawing.numbers)
    draw_grid(pencil, window)
    painter.draw_below(window, below)
    draw_washes(pencil, window, level.level, job.washes)
    painter.draw(window, own)
    painter.draw_marks(window, own)
    draw_tags(pencil, window, drawing.tags)
    _draw_bands(pencil, window, plan_area(job.paper))
    _draw_match_lines(pencil, part, drawing.numbers)
    spaces = [*map(window.space, (one.piece.at for one in (*own, *below))), *tag_spaces(window, drawing.tags)]
    _draw_north_where_free(pencil, window, spaces)
    draw_key(
        pencil, key_area(job.paper), level, "On this page" if len(drawing.numbers) == 1 else "On this level"
    )


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
    pencil.text(x, y + RULER / 2, text, RULER, align=Align.MIDDLE, widest=room - 0.6)


def _divide(pencil: Pencil, area: QRectF, rect: QRectF) -> None:
    """The outer edges of the bands that the frame does not draw."""
    pencil.line(area.left(), area.bottom(), area.right(), area.bottom())
    pencil.line(area.right(), area.top(), area.right(), area.bottom())
    for x in (rect.left(), rect.right()):
        pencil.line(x, area.top(), x, rect.top(), HAIR)
        pencil.line(x, rect.bottom(), x, area.bottom(), HAIR)


def _neighbours(part: Tile, numbers: Numbers) -> Iterator[tuple[int, int, int]]:
    """(dx, dz, sheet) for each part beside this one that has a page."""
    for dx, dz in ((0, -1), (1, 0), (0, 1), (-1, 0)):
        number = numbers.get((part.column + dx, part.row + dz))
        if number is not None:
            yield dx, dz, number


def _overlap(window: Window, dx: int, dz: int) -> QRectF:
    """The row or column of cells that the neighbour shows too."""
    rect, cell = window.rect, window.cell
    if dx:
        left = rect.left() if dx < 0 else rect.right() - cell
        return QRectF(left, rect.top(), cell, rect.height())
    top = rect.top() if dz < 0 else rect.bottom() - cell
    return QRectF(rect.left(), top, rect.width(), cell)


def _shade_overlaps(pencil: Pencil, part: Tile, numbers: Numbers) -> None:
    for dx, dz, _ in _neighbours(part, numbers):
        pencil.painter.fillRect(_overlap(part.window, dx, dz), pencil.theme.fill)


def _draw_match_lines(pencil: Pencil, part: Tile, numbers: Numbers) -> None:
    """The inner edge of what a neighbour shows too, with the sheet on which it goes on."""
    for dx, dz, number in _neighbours(part, numbers):
        shared = _overlap(part.window, dx, dz)
        pen = QPen(pencil.theme.ink, NARROW, c=Qt.PenCapStyle.FlatCap)
        pen.setDashPattern(SPLITS)
        pencil.painter.setPen(pen)
        if dx:
            x = shared.right() if dx < 0 else shared.left()
            pencil.painter.drawLine(QPointF(x, shared.top()), QPointF(x, shared.bottom()))
        else:
            y = shared.bottom() if dz < 0 else shared.top()
            pencil.painter.drawLine(QPointF(shared.left(), y), QPointF(shared.right(), y))
        _label(pencil, shared, dx, f"match line, sheet {number}")


def _label(pencil: Pencil, shared: QRectF, dx: int, text: str) -> None:
    middle = shared.center()
    long = width(text, em_for(RULER)) + 2
    if not dx:
        pencil.painter.fillRect(
            QRectF(shared.left() + 1, middle.y() - RULER, long, 2 * RULER), pencil.theme.fill
        )
        pencil.text(shared.left() + 2, middle.y() + RULER / 2, text, RULER)
        return
    pencil.painter.save()
    pencil.painter.translate(middle.x() + RULER / 2, shared.bottom() - 2)
    pencil.painter.rotate(-90)
    pencil.painter.fillRect(QRectF(-1, -1.5 * RULER, long, 2 * RULER), pencil.theme.fill)
    pencil.text(0, 0, text, RULER)
    pencil.painter.restore()


def _draw_north_where_free(pencil: Pencil, window: Window, taken: list[QRectF]) -> None:
    """The north arrow in the first corner that nothing needs; the footer says it in any case."""
    rect = window.rect
    for x in (rect.right() - 9, rect.left() + 9):
        for y in (rect.top() + 13, rect.bottom() - 9):
            around = QRectF(x - 7, y - 11, 14, 18)
            if not any(around.intersects(space) for space in taken):
                draw_north(pencil.painter, x, y, NORTH_RADIUS, NARROW, pencil.theme)
                return
