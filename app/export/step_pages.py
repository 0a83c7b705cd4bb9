"""The steps: each with its number, what to place, a picture, what is to be seen then, and a box to tick.

They run down the columns of a page; a step is never cut in two. Lengths in mm.
"""

from __future__ import annotations

from collections.abc import Generator, Iterator, Sequence
from functools import partial
from itertools import cycle, pairwise
from typing import Final

from PySide6.QtCore import QRectF

from app.canvas.symbols.lettering import em_for
from app.canvas.symbols.lettering import width as lettering_width
from app.export.flow import Placed, Strip, draw_strips, fill
from app.export.page import Job, Page
from app.export.papers import Paper
from app.export.pencil import HAIR, LEGEND, NARROW, SECTION, TEXT, Pencil
from app.export.step_key import draw_step_key
from app.export.step_pictures import Drawing
from app.export.strips import LINE_FEED, lines_of
from app.translation import QT_TR_NOOP, tr
from model.progress import Progress
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
TITLE_FEED: Final = 4.4
SEE: Final = QT_TR_NOOP("You should now see: {sight}")


def step_pages(job: Job) -> Generator[Progress, None, list[Page]]:
    """All steps in order, laid out one by one; no page where there is none."""
    spaces, steps = _columns(job.paper), job.sheet.steps
    cards = []
    for done, picture in enumerate(steps):
        yield Progress(tr("Laying out the steps"), done, len(steps))
        cards.append(Card(picture, spaces[0].width()))
    filled = fill((card.strip for card in cards), cycle(space.height() for space in spaces))
    return [*_pages(job, filled, spaces)]


def _columns(paper: Paper) -> list[QRectF]:
    """The columns of a page; beside the title block they reach down to the frame."""
    count, frame, body = COLUMNS[paper.lies], paper.frame, paper.body
    width = (frame.width() - 2 * PADDING - GUTTER * (count - 1)) / count
    top, beside = frame.top() + HEADING, paper.block.left() - width - PADDING
    lefts = [frame.left() + PADDING + index * (width + GUTTER) for index in range(count)]
    ends = [frame.bottom() if left <= beside else body.bottom() for left in lefts]
    return [QRectF(left, top, width, end - top) for left, end in zip(lefts, ends, strict=True)]


def _pages(job: Job, filled: list[list[Placed]], spaces: list[QRectF]) -> Iterator[Page]:
    last = 0
    for start in range(0, len(filled), len(spaces)):
        shown = filled[start : start + len(spaces)]
        first, last = last + 1, last + sum(map(len, shown))
        steps = (
            tr("Step {first:,}", first=first)
            if first == last
            else tr("Steps {first:,} to {last:,}", first=first, last=last)
        )
        supplement = tr("{steps} of {count:,}", steps=steps, count=len(job.sheet.steps))
        yield Page(supplement, job.footer(tr("north up")), partial(_draw, job.paper, shown, spaces))


def _draw(paper: Paper, columns: Sequence[list[Placed]], spaces: list[QRectF], pencil: Pencil) -> None:
    frame, left, top = paper.frame, spaces[0].left(), spaces[0].top()
    pencil.text(left, frame.top() + 9.5, tr("Steps"), SECTION * 1.2, bold=True)
    draw_step_key(pencil, QRectF(left, frame.top() + 4, frame.width() - 2 * PADDING, 8))
    pencil.line(frame.left(), top, frame.right(), top)
    for before, space in pairwise(spaces):
        x, end = space.left() - GUTTER / 2, max(before.bottom(), space.bottom())
        pencil.line(x, top, x, end, HAIR)
    for space, placed in zip(spaces, columns, strict=False):
        draw_strips(pencil, placed, space)


class Card:
    """A step as it stands in its column; its height is known before it is drawn."""

    def __init__(self, picture: StepPicture, width: float) -> None:
        step = picture.step
        self._drawing = Drawing(picture, width)
        self._number = f"{step.number:,}"
        self._indent = max(TITLE_LEFT, lettering_width(self._number, em_for(SECTION), bold=True) + 2)
        self._room = width - self._indent - TICK_BOX - 2
        self._title = lines_of(step.title, TEXT, self._room, bold=True)
        self._why = lines_of(step.why or "", LEGEND, self._room)
        self._see = lines_of(tr(SEE, sight=step.see), LEGEND, width - self._drawing.band)

    @property
    def strip(self) -> Strip:
        """What stands in the column."""
        return Strip(self._below + SEE_TOP + LINE_FEED * len(self._see) + END, self._draw)

    @property
    def _above(self) -> float:
        """Down to the picture."""
        return TITLE_TOP + TITLE_FEED * len(self._title) + LINE_FEED * len(self._why) + GAP

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
            baseline += LINE_FEED
        pencil.box(QRectF(space.right() - TICK_BOX, top + TITLE_TOP - 1, TICK_BOX, TICK_BOX), NARROW)
        self._drawing.draw(pencil, left, top + self._above)
        baseline = top + self._below + SEE_TOP + LEGEND
        for line in self._see:
            pencil.text(left + self._drawing.band, baseline, line, LEGEND, widest=width - self._drawing.band)
            baseline += LINE_FEED
