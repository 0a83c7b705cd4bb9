"""The cover: the picture of the plan, what to carry, and what to know before the first block."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from typing import Final

from msgspec.structs import replace
from PySide6.QtCore import QRectF

from app.canvas.symbols import Manner, Stage, draw_marker, paint, paper
from app.canvas.symbols.lettering import em_for, printable
from app.export.arm_tags import bounds_with_tags, draw_tags, tags_of
from app.export.depth_page import left_out
from app.export.page import Job, Page
from app.export.papers import Paper
from app.export.pencil import HAIR, RULER, SECTION, TEXT, Align, Pencil, broken, headline
from app.export.plan_picture import PiecePainter, Window, draw_grid, window_about
from app.export.washes import KEY, draw_washes
from app.icons import rest_look
from app.names import part_name
from app.translation import QT_TR_NOOP, tr
from model.parts import RAILS
from model.sheet.cautions import Caution
from model.sheet.footprint import Bounds
from model.sheet.levels import LevelPage
from model.sheet.materials import Material

PADDING: Final = 3.0
PICTURE_END: Final = 148.0
"""Where the picture ends on paper that stands."""
LARGEST_CELL, SMALLEST_CELL, CELL_STEP = 10.0, 0.5, 0.5
"""mm a cell in the picture, which is to no scale."""
DETAIL_FROM: Final = 2.5
"""mm a cell from which grid and tags are drawn."""
UNTITLED: Final = QT_TR_NOOP("Untitled plan")


def cover(job: Job) -> Page:
    """The first page."""
    footer = tr("picture not to scale · north up")
    said = [footer, *([tr(KEY)] if job.washes else []), *filter(None, [left_out(job)])]
    footer = job.footer(" \u00b7 ".join(said))
    return Page(job.sheet.summary, footer, lambda pencil: _draw(pencil, job))


def _draw(pencil: Pencil, job: Job) -> None:
    frame, sheet = job.paper.frame, job.sheet
    left, room = frame.left() + PADDING, frame.width() - 2 * PADDING
    headline(pencil, left, frame.top() + 10.5, sheet.title or tr(UNTITLED), room)
    pencil.text(left, frame.top() + 18.5, _second_line(job), TEXT, widest=room)
    picture, materials, cautions = _areas(job.paper)
    _draw_picture(pencil, job, picture)
    _draw_materials(pencil, sheet.materials.parts, materials)
    _draw_cautions(pencil, sheet.cautions, cautions)
    pencil.line(materials.left(), materials.top(), cautions.right(), materials.top())
    if not job.paper.lies:
        pencil.line(cautions.left(), cautions.top(), cautions.left(), cautions.bottom())
    else:
        pencil.line(materials.left(), materials.top(), materials.left(), cautions.bottom())
        pencil.line(cautions.left(), cautions.top(), cautions.right(), cautions.top())


def _second_line(job: Job) -> str:
    parts = [job.sheet.data.owner, job.sheet.summary]
    if job.sheet.footprint is not None:
        parts.append(str(job.sheet.footprint))
    return " \u00b7 ".join(part for part in parts if part)


def _areas(paper: Paper) -> tuple[QRectF, QRectF, QRectF]:
    """Picture, materials, cautions."""
    frame, body = paper.frame, paper.body
    top = frame.top() + 23
    if not paper.lies:
        half, height = frame.width() / 2, body.bottom() - PICTURE_END
        picture = QRectF(frame.left() + PADDING, top, frame.width() - 2 * PADDING, PICTURE_END - top - 4)
        return (
            picture,
            QRectF(frame.left(), PICTURE_END, half + 4, height),
            QRectF(frame.left() + half + 4, PICTURE_END, half - 4, height),
        )
    left = paper.block.left()
    picture = QRectF(
        frame.left() + PADDING, top, left - frame.left() - 2 * PADDING, frame.bottom() - top - PADDING
    )
    middle = top + 0.55 * (body.bottom() - top)
    return (
        picture,
        QRectF(left, top, frame.right() - left, middle - top),
        QRectF(left, middle, frame.right() - left, body.bottom() - middle),
    )


def _draw_picture(pencil: Pencil, job: Job, area: QRectF) -> None:
    level = main_level(job.sheet.levels)
    if level is None:
        pencil.text(
            area.center().x(), area.center().y(), tr("Nothing is placed yet."), TEXT, align=Align.MIDDLE
        )
        return
    window = _picture_window(job, level, area)
    painter = PiecePainter(pencil, job.pieces)
    if window.cell >= DETAIL_FROM:
        draw_grid(pencil, window)
    for other in job.sheet.levels:
        rails = [one for one in other.pieces if one.piece.part in RAILS]
        if other.level == level.level - 1:
            painter.draw(window, level.below, Manner.BELOW)
        elif other.level != level.level:
            painter.draw(window, rails, Manner.BELOW if other.level < level.level else Manner.ABOVE)
    draw_washes(pencil, window, level.level, job.washes)
    painter.draw(window, level.pieces)
    if window.cell >= DETAIL_FROM:
        draw_tags(pencil, window, tags_of(job.arms))


def main_level(levels: Iterable[LevelPage]) -> LevelPage | None:
    """The level with the most rails, the lowest of these; ``None`` for an empty plan."""
    counts = Counter({page.level: sum(one.rail is not None for one in page.pieces) for page in levels})
    return max(levels, key=lambda page: counts[page.level], default=None)


def _picture_window(job: Job, level: LevelPage, area: QRectF) -> Window:
    """The whole plan with its tags, as large as it fits, cut out about the plan."""
    footprint = job.sheet.footprint
    whole = level.bounds if footprint is None else footprint.bounds
    bounds = Bounds(
        min(whole.west, level.bounds.west),
        min(whole.north, level.bounds.north),
        max(whole.east, level.bounds.east),
        max(whole.south, level.bounds.south),
    )
    tags, cell = tags_of(job.arms), LARGEST_CELL
    needed = bounds_with_tags(bounds, tags, cell)
    while cell > SMALLEST_CELL and (
        needed.width * cell > area.width() or needed.depth * cell > area.height()
    ):
        cell -= CELL_STEP
        needed = bounds_with_tags(bounds, tags, cell)
    cell = min(cell, area.width() / needed.width, area.height() / needed.depth)
    wide, high = needed.width * cell, needed.depth * cell
    middle = area.center()
    return window_about(needed, QRectF(middle.x() - wide / 2, middle.y() - high / 2, wide, high), cell)


def _draw_materials(pencil: Pencil, parts: tuple[Material, ...], area: QRectF) -> None:
    left, right, top = area.left() + PADDING, area.right() - 6, area.top()
    pencil.text(left, top + 8, tr("Materials"), SECTION, bold=True)
    pencil.text(right - 22, top + 8, tr("pieces"), RULER, align=Align.RIGHT)
    pencil.text(right, top + 8, tr("stacks of 64"), RULER, align=Align.RIGHT)
    if not parts:
        pencil.text(left, top + 18, tr("Nothing to carry."), TEXT)
        return
    height = min(9.6, (area.height() - 14) / len(parts))
    high, side = min(TEXT, 0.4 * height), min(7.2, height - 0.8)
    for index, material in enumerate(parts):
        y = top + 12 + index * height
        baseline = y + height / 2 + high / 2
        stage = Stage(pencil.painter, left, y + (height - side) / 2, paper(side), pencil.theme)
        paint(stage, rest_look(material.part))
        pencil.text(left + 11, baseline, part_name(material.part), high, widest=right - left - 56)
        pencil.text(right - 22, baseline, f"{material.pieces:,}", high, bold=True, align=Align.RIGHT)
        pencil.text(right, baseline, str(material.stacks), high, align=Align.RIGHT)
        if index:
            pencil.line(left, y, right, y, HAIR, pencil.theme.grid4)


def _draw_cautions(pencil: Pencil, cautions: tuple[Caution, ...], area: QRectF) -> None:
    left, top, bottom = area.left() + 4, area.top() + 12, area.bottom() - 2
    pencil.text(left, area.top() + 8, tr("Cautions"), SECTION, bold=True)
    shown = _fitting(cautions, area.right() - left - 3, bottom - top)
    gap = min(4.0, (bottom - top - _height(shown)) / max(1, len(shown)))
    for layout in shown:
        layout.draw(pencil, left, top)
        top += layout.height + gap


def _fitting(cautions: tuple[Caution, ...], width: float, room: float) -> list[_Caution]:
    """All cautions where they have room, else as many errors fewer as it takes: instructions always stand.

    Where instructions alone have too little room they keep to their titles.
    """
    errors = [caution for caution in cautions if caution.severity == "error"]
    others = [_Caution(caution, width) for caution in cautions if caution.severity != "error"]
    if _height(others) > room:
        others = [_Caution(replace(caution, text=""), width) for caution in cautions[len(errors) :]]
    for fewer in range(len(errors) + 1):
        kept = errors[: len(errors) - fewer]
        if fewer:
            kinds = tr("%n more kind(s)", "", fewer) if kept else tr("%n kind(s)", "", fewer)
            kept.append(
                Caution(
                    "error",
                    tr("{kinds} of error.", kinds=kinds),
                    tr("Listed in the findings: mend these first."),
                )
            )
        shown = [*(_Caution(caution, width) for caution in kept), *others]
        if _height(shown) <= room:
            return shown
    return others


def _height(layouts: Iterable[_Caution]) -> float:
    return sum(layout.height for layout in layouts)


class _Caution:
    """A caution broken into lines: marker, title in bold, one sentence or two. Lengths in mm."""

    MARKER, INDENT = 5.6, 10.0
    TITLE_FEED, TEXT_FEED, BELOW = 4.4, 3.8, 1.6

    def __init__(self, caution: Caution, width: float) -> None:
        self._severity = caution.severity
        self._room = width - self.INDENT
        self._title = broken(printable(caution.title), em_for(TEXT), self._room, bold=True, lines=3)
        self._text = broken(printable(caution.text), em_for(RULER), self._room, bold=False, lines=2)

    @property
    def height(self) -> float:
        """What it takes from the column."""
        return self.TITLE_FEED * len(self._title) + self.TEXT_FEED * len(self._text) + self.BELOW

    def draw(self, pencil: Pencil, left: float, top: float) -> None:
        """The marker beside the first lines."""
        middle = top + self.MARKER / 2 + 0.6
        draw_marker(pencil.painter, left + 3, middle, self._severity, pencil.theme, self.MARKER)
        baseline = top + TEXT
        for line in self._title:
            baseline += 0.4
            pencil.text(left + self.INDENT, baseline, line, TEXT, bold=True, widest=self._room)
            baseline += self.TITLE_FEED - 0.4
        baseline -= 0.2
        for line in self._text:
            pencil.text(left + self.INDENT, baseline, line, RULER, widest=self._room)
            baseline += self.TEXT_FEED
