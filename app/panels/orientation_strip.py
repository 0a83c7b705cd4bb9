"""The eight orientations under the plan, and their counts alone where the window is narrow."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtGui import QFontMetrics, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QStackedLayout, QToolButton, QVBoxLayout, QWidget

from app.document import Document
from app.panels.look import font, label, panel
from app.panels.mini_plan import LINES_UP_TO, NOTHING, MiniPlan, mini_plan, mini_plan_of
from app.panels.orientation_tile import OrientationTile, tile_words
from app.translation import tr
from model.grid import ALL_TURNS, Turn
from model.routing.orientations import Orientation

TALL: Final = 140
FOLDED: Final = 28
MARGIN: Final = 10
"""px left and right of the line."""
COUNT_TEXT: Final = 11
BESIDE_COUNT: Final = 10
"""px beside the words of a count."""
NOT_SERVED: Final = "—"
"""In the line, where it has no room for words; the tooltips have them."""


class OrientationStrip(QWidget):
    """Choosing an orientation turns the plan as one undo step."""

    turn_chosen = Signal(object)

    def __init__(self, document: Document, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self._document = document
        self.tiles = [OrientationTile(turn, self) for turn in ALL_TURNS]
        self.counts = [_count_button(turn) for turn in ALL_TURNS]
        self.word = label(tr("Inverters"), "section")
        self._counted: dict[Turn, tuple[str, str]] = {}
        """What the line says of each orientation: in words, and as a figure."""
        self._stack = QStackedLayout(self)
        self._stack.addWidget(self._lay_out_tiles())
        self._stack.addWidget(self._lay_out_line())
        for button, turn in zip((*self.tiles, *self.counts), (*ALL_TURNS, *ALL_TURNS), strict=True):
            button.clicked.connect(lambda _=False, turn=turn: self._choose(turn))
        self._is_of_another = True
        """Whether the small plans show a plan that is open no more."""
        document.reset.connect(self._note_another)
        document.work_out_beside(mini_plan_of)
        document.orientations_updated.connect(self.take_over)
        self.set_folded(False)
        self.take_over()

    def set_folded(self, folded: bool) -> None:
        """Show a line of eight counts in place of the tiles."""
        self._stack.setCurrentIndex(1 if folded else 0)
        self.setFixedHeight(FOLDED if folded else TALL)

    @property
    def is_folded(self) -> bool:
        """Whether only the counts are shown."""
        return self._stack.currentIndex() == 1

    def take_over(self) -> None:
        """Show the orientations that the document has now."""
        document = self._document
        found = {entry.turn: entry for entry in document.orientations}
        is_old = document.orientations_are_old
        plan = self._mini_plan()
        for tile, count in zip(self.tiles, self.counts, strict=True):
            self._show(tile, count, found.get(tile.turn), plan, is_old)

    def _mini_plan(self) -> MiniPlan | None:
        """``None``: while the plan is worked out the small plans stay as they are, drawing must not wait."""
        document, is_of_another = self._document, self._is_of_another
        self._is_of_another = False
        if not document.orientations_are_old:
            return document.shown(mini_plan_of)
        if not is_of_another:
            return None
        return mini_plan(document.layout) if len(document.layout.rails) <= LINES_UP_TO else NOTHING

    def _note_another(self) -> None:
        self._is_of_another = True

    def _show(
        self,
        tile: OrientationTile,
        count: QToolButton,
        orientation: Orientation | None,
        plan: MiniPlan | None,
        is_old: bool,
    ) -> None:
        tile.show_orientation(orientation, plan, is_old)
        self._counted[tile.turn] = tile_words(orientation), _figure(orientation)
        self._say_counts()
        count.setAccessibleName(tile.accessibleName())
        count.setToolTip(tile.toolTip())

    def _choose(self, turn: Turn) -> None:
        if turn != Turn():
            self.turn_chosen.emit(turn)

    def _lay_out_tiles(self) -> QWidget:
        made = QWidget()
        column = QVBoxLayout(made)
        column.setContentsMargins(14, 4, 14, 8)
        column.setSpacing(4)
        head = QHBoxLayout()
        head.setSpacing(12)
        head.addWidget(label(tr("Orientations"), "section"))
        head.addWidget(label(tr("inverters needed; choosing one turns the plan"), "second"))
        head.addStretch(1)
        column.addLayout(head)
        row = QHBoxLayout()
        row.setSpacing(8)
        for tile in self.tiles:
            row.addWidget(tile, 1)
        column.addLayout(row)
        return made

    def _lay_out_line(self) -> QWidget:
        made = QWidget()
        row = QHBoxLayout(made)
        row.setContentsMargins(MARGIN, 0, MARGIN, 0)
        row.setSpacing(0)
        row.addWidget(self.word)
        for count in self.counts:
            row.addWidget(count, 1)
        return made

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._say_counts()

    def _say_counts(self) -> None:
        """Words where the line has room for them beside its title, else figures."""
        words = [f"{turn.number}: {said}" for turn, (said, _) in self._counted.items()]
        figures = [f"{turn.number}: {figure}" for turn, (_, figure) in self._counted.items()]
        metrics = QFontMetrics(font(COUNT_TEXT))
        widest = max((metrics.horizontalAdvance(said) for said in words), default=0) + BESIDE_COUNT
        room = self.width() - 2 * MARGIN - self.word.sizeHint().width()
        for count, said in zip(self.counts, words if len(words) * widest <= room else figures, strict=False):
            count.setText(said)
        # Only a language with a very long word for them leaves it out, where modules stand beside the plan.
        self.word.setVisible(sum(count.sizeHint().width() for count in self.counts) <= room)


def _figure(orientation: Orientation | None) -> str:
    if orientation is None:
        return "…"
    is_served = orientation.buildable and orientation.inverters is not None
    return str(orientation.inverters) if is_served else NOT_SERVED


def _count_button(turn: Turn) -> QToolButton:
    button = QToolButton()
    button.setProperty("look", "count")
    button.setText(str(turn.number))
    return button
