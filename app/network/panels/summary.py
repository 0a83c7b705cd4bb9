"""The strip under the map: the figures of the plan."""

from __future__ import annotations

from typing import Final, NamedTuple

from PySide6.QtCore import QRect, QSize
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from app import theme as themes
from app.network.document import NetworkDocument
from app.network.times import figure
from app.panels.look import font, panel
from app.panels.rows import paint_text
from app.translation import tr
from model.network.result import NetworkPlan
from model.progress import Progress

HEIGHT: Final = 56
LEAST: Final = 104
APART: Final = 28
CLOSE: Final = 12
"""px between two figures, where there is room for all, and where not."""


class Figure(NamedTuple):
    """A number and what it counts."""

    number: str
    words: str


class Summary(QWidget):
    """Waybills, names, readers, trips; grey while they are of an earlier network."""

    def __init__(self, document: NetworkDocument, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self.setFixedHeight(HEIGHT)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._document = document
        self._progress: Progress | None = None
        document.plan_updated.connect(self._take_over)
        document.progressed.connect(self._take_progress)
        self._take_over()

    @property
    def figures(self) -> list[Figure]:
        """What is shown, from the left."""
        plan = self._document.plan
        network = self._document.planned
        if plan is None or not (network.trips or plan.readers):
            return []
        return figures_of(self._document, plan)

    def _take_progress(self, progress: Progress) -> None:
        self._progress = progress
        self.update()

    def _take_over(self) -> None:
        if not self._document.plan_is_old:
            self._progress = None
        said = ", ".join(f"{each.number} {each.words}" for each in self.figures)
        self.setAccessibleName(
            tr("The plan: {said}", said=said) if said else tr("The plan is being worked out")
        )
        self.setToolTip(said)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Figures side by side, each in 16 px above its words in 11 px."""
        theme, painter = themes.current(), QPainter(self)
        painter.fillRect(self.rect(), theme.panel)
        old = self._document.is_old_for_long
        left = 14
        widths = [_width(each) for each in self.figures]
        # Side by side as far as they go; where not all do, they stand closer before the last are left out.
        beside = APART if left + sum(max(LEAST, width + APART) for width in widths) <= self.width() else CLOSE
        for each, width in zip(self.figures, widths, strict=True):
            wide = max(LEAST, width + APART) if beside == APART else width + CLOSE
            if left + width > self.width():
                break
            box = QRect(left, 8, wide, 22)
            paint_text(painter, box, each.number, font(16, True), theme.ink2 if old else theme.ink)
            paint_text(painter, box.translated(0, 20), each.words, font(11), theme.ink2)
            left += wide
        if old:
            room = QRect(left, 8, self.width() - left - 14, 22)
            paint_text(painter, room, self._working_words(), font(11), theme.ink2, right=True)

    def _working_words(self) -> str:
        progress = self._progress
        if progress is None:
            return tr("working out the plan…")
        return (
            tr("{stage} {done:,} of {of:,}", stage=progress.stage, done=progress.done, of=progress.of)
            if progress.of
            else f"{progress.stage}…"
        )

    def sizeHint(self) -> QSize:
        return QSize(400, HEIGHT)


def figures_of(document: NetworkDocument, plan: NetworkPlan) -> list[Figure]:
    """The figures of a plan, each with the words that say how sure it is."""
    names, bound = plan.distinct_names, plan.names_bound
    sure = tr("proved fewest") if plan.proved else tr("at least {bound} needed", bound=bound)
    called = sum(planned.name is not None for planned in plan.readers.values())
    lost = sum(trip.length is None for trip in plan.trips)
    riders = sum(trip.per_week for trip in document.planned.trips)
    return [
        Figure(figure(plan.waybills_per_week), tr("waybills a week")),
        Figure(
            figure(names), tr("name, {sure}", sure=sure) if names == 1 else tr("names, {sure}", sure=sure)
        ),
        Figure(
            tr("{part} of {whole}", part=figure(called), whole=figure(len(plan.readers))),
            tr("readers are called"),
        ),
        Figure(
            figure(len(plan.trips)),
            tr("trips, %n without a way", "", lost) if lost else tr("trips"),
        ),
        Figure(figure(riders), tr("carts a week")),
    ]


def _width(each: Figure) -> int:
    words = QFontMetrics(font(11)).horizontalAdvance(each.words)
    return max(words, QFontMetrics(font(16, True)).horizontalAdvance(each.number))
