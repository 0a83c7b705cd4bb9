"""The steps: each with its number, what to place, a picture, what is to be seen then, and a box to tick.

They run down the columns of a page; a step is never cut in two. Lengths in mm.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import partial
from typing import Final

from PySide6.QtCore import QRectF

from app.canvas.symbols.lettering import em_for, printable
from app.canvas.symbols.lettering import width as lettering_width
from app.export.flow import Placed, Strip, Table, draw_strips, paginate
from app.export.page import Job, Page
from app.export.papers import Paper
from app.export.pencil import HAIR, LEGEND, NARROW, SECTION, TEXT, Pencil, broken
from app.export.step_key import draw_step_key
from app.export.step_pictures import Drawing
from model.sheet.steps import StepPicture

PADDING: Final = 3.0
HEADING: Final = 16.0
GUTTER: Final = 8.0
"""Between two columns."""
COLUMNS: Final = {False: 2, True: 4}
"""By whether the paper lies."""
TICK_BOX: Final = 5.0
TITLE_LEFT: Final = 9.0
TITLE_TOP, SEE_TOP, GAP, END = 3.0, 2.0, 0.8, 2.8
"""Above the title, above what is to be seen, above the picture, and below all."""
TITLE_FEED, TEXT_FEED = 4.4, 3.8
MOST_LINES: Final = 12
TOGETHER: Final = re.compile(r"(?<=\d) (?=\u2212?\d)|(?<=\d) (?=\u00d7 \d)|(?<=\u00d7) (?=\d)")
NO_BREAK: Final = "\u00a0"
SEE: Final = "You should now see: "


def step_pages(job: Job) -> list[Page]:
    """All steps in order; no page where there is none."""
    if not job.sheet.steps:
        return []
    area = job.paper.body.adjusted(PADDING, HEADING, -PADDING, 0)
    columns = COLUMNS[job.paper.lies]
    width = (area.width() - GUTTER * (columns - 1)) / columns
    cards = [Card(picture, width) for picture in job.sheet.steps]
    filled = paginate([Table((), tuple(card.strip for card in cards))], area.height())
    return [*_pages(job, filled, columns, width)]


def _pages(job: Job, filled: list[list[Placed]], columns: int, width: float) -> Iterator[Page]:
    last = 0
    for start in range(0, len(filled), columns):
        shown = filled[start : start + columns]
        first, last = last + 1, last + sum(map(len, shown))
        words = f"Step {first}" if first == last else f"Steps {first} to {last}"
        footer = job.footer("north up")
        yield Page(f"{words} of {len(job.sheet.steps)}", footer, partial(_draw, job.paper, shown, width))


def _draw(paper: Paper, columns: list[list[Placed]], width: float, pencil: Pencil) -> None:
    body = paper.body
    left, top = body.left() + PADDING, body.top() + HEADING
    pencil.text(left, body.top() + 9.5, "Steps", SECTION * 1.2, bold=True)
    draw_step_key(pencil, QRectF(left + 24, body.top() + 4, body.width() - 2 * PADDING - 24, 8))
    pencil.line(body.left(), top, body.right(), top)
    for index, placed in enumerate(columns):
        x = left + index * (width + GUTTER)
        if index:
            pencil.line(x - GUTTER / 2, top, x - GUTTER / 2, body.bottom(), HAIR)
        draw_strips(pencil, placed, QRectF(x, top, width, body.bottom() - top))


class Card:
    """A step as it stands in its column; its height is known before it is drawn."""

    def __init__(self, picture: StepPicture, width: float) -> None:
        step = picture.step
        self._drawing = Drawing(picture, width)
        self._number = f"{step.number:,}"
        self._indent = max(TITLE_LEFT, lettering_width(self._number, em_for(SECTION), bold=True) + 2)
        self._room = width - self._indent - TICK_BOX - 2
        self._title = _lines(step.title, TEXT, self._room, bold=True)
        self._why = _lines(step.why or "", LEGEND, self._room)
        self._see = _lines(f"{SEE}{step.see}", LEGEND, width - self._drawing.band)

    @property
    def strip(self) -> Strip:
        """What stands in the column."""
        return Strip(self._below + SEE_TOP + TEXT_FEED * len(self._see) + END, self._draw)

    @property
    def _above(self) -> float:
        """Down to the picture."""
        return TITLE_TOP + TITLE_FEED * len(self._title) + TEXT_FEED * len(self._why) + GAP

    @property
    def _below(self) -> float:
        """Down to the end of the picture."""
        return self._above + self._drawing.height

    def _draw(self, pencil: Pencil, space: QRectF) -> None:
        left, top, width = space.left(), space.top(), space.width()
        baseline = top + TITLE_TOP + TEXT
        pencil.text(left, baseline + 0.5, self._number, SECTION, bold=True)
        for line in self._title:
            pencil.text(left + self._indent, baseline, line, TEXT, bold=True, widest=self._room)
            baseline += TITLE_FEED
        for line in self._why:
            pencil.text(left + self._indent, baseline, line, LEGEND, widest=self._room)
            baseline += TEXT_FEED
        pencil.box(QRectF(space.right() - TICK_BOX, top + TITLE_TOP - 1, TICK_BOX, TICK_BOX), NARROW)
        self._drawing.draw(pencil, left, top + self._above)
        baseline = top + self._below + SEE_TOP + LEGEND
        for line in self._see:
            pencil.text(left + self._drawing.band, baseline, line, LEGEND, widest=width - self._drawing.band)
            baseline += TEXT_FEED


def _lines(text: str, high: float, widest: float, *, bold: bool = False) -> list[str]:
    """The text in lines; a place and a size, ``−3 64 1`` and ``6 × 3``, stay together."""
    whole = TOGETHER.sub(NO_BREAK, printable(text))
    return broken(whole, em_for(high), widest, bold, MOST_LINES)
