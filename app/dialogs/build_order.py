"""The search for the best order of placing, beside the window, in each of the eight orientations."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QRect, Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QDialog, QFormLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from app import theme as themes
from app.dialogs.build_order_model import MARK, OrdersModel, longest_words
from app.dialogs.buttons import search_buttons
from app.document import Document
from app.order_words import needs_words, proof_words
from app.panels.look import font, label, named
from app.panels.rows import paint_text
from app.panels.table_model import Index
from app.panels.tables import CellDelegate, Table
from app.search import Search
from app.translation import QT_TR_NOOP, tr
from model.grid import ALL_TURNS, Turn
from model.ordering import BuildOrder, orders_by_orientation
from model.plan import Plan

SECONDS: Final = 60
"""For each orientation, at most."""
WIDTHS: Final = (34, 236, 66, 54, 50, 0, 112)
SIZE: Final = (720, 500)
MARGIN: Final = 16
STOP, AGAIN = QT_TR_NOOP("Stop"), QT_TR_NOOP("Search again")
PLACE, TURN_AND_PLACE = QT_TR_NOOP("Place in this order"), QT_TR_NOOP("Turn, and place in this order")


class BuildOrderDialog(QDialog):
    """Searches from when it is begun, on the plan as it is then. The plan can be worked on meanwhile."""

    placed = Signal(object, object)
    """The turn and the order that were chosen."""

    def __init__(self, parent: QWidget | None, document: Document) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Build order"))
        self._document = document
        self._plan: Plan = document.plan
        self._is_old = False
        self._found: dict[Turn, BuildOrder] = {}
        self._drawn: BuildOrder | None = None
        self._searched = Turn()
        self.search = Search(self)
        self.state = label("", "strong")
        self.as_drawn = label()
        self.chosen = label()
        self.model = OrdersModel(self)
        self.table = Table(tr("Orientations"), self.model, self)
        self.table.setItemDelegate(_Delegate(self.table))
        self.table.set_widths(WIDTHS, longest_words())
        self.table.fit_rows()
        self.again = QPushButton(tr(STOP))
        self.close_button = QPushButton(tr("Close"))
        self.place = QPushButton(tr(TURN_AND_PLACE))
        self._lay_out()
        self.resize(max(SIZE[0], self.table.wanted_width + 2 * MARGIN), SIZE[1])
        self._connect()

    @property
    def turn(self) -> Turn:
        """The orientation of the chosen row."""
        return ALL_TURNS[max(0, self.table.currentIndex().row())]

    def begin(self) -> None:
        """Forget what was found, and search the plan as it is now."""
        plan = self._plan = self._document.plan
        self._is_old = False
        self._found, self._drawn, self._searched = {}, None, Turn()
        self.search.start(lambda: orders_by_orientation(plan, SECONDS * len(ALL_TURNS)))
        self.table.setCurrentIndex(self.model.index(self.turn.number - 1, 0))
        self.take_over()

    def take_over(self) -> None:
        """Show what was found so far, and how far the search is."""
        is_running = self.search.is_running
        self.state.setText(self._state_words())
        self.model.show(self._found, self._searched if is_running else None)
        self.as_drawn.setText(needs_words(self._drawn) if self._drawn else "…")
        self.chosen.setText(self._chosen_words())
        self.again.setText(tr(STOP) if is_running else tr(AGAIN))
        named(self.again, tr("Stop the search") if is_running else tr("Search the plan as it is now"))
        self.place.setText(tr(PLACE) if self.turn == Turn() else tr(TURN_AND_PLACE))
        self.place.setEnabled(self._can_place())

    def done(self, result: int) -> None:
        """Whatever closes it ends the search."""
        self.search.stop()
        super().done(result)

    def _lay_out(self) -> None:
        form = QFormLayout()
        form.setHorizontalSpacing(16)
        form.addRow(label(tr("As drawn now")), self.as_drawn)
        form.addRow(label(tr("Best order found")), self.chosen)
        self.place.setDefault(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(MARGIN, MARGIN, MARGIN, MARGIN)
        column.setSpacing(12)
        column.addWidget(self.state)
        column.addLayout(form)
        column.addWidget(self.table, 1)
        column.addWidget(_note())
        column.addLayout(search_buttons(self.again, tr(AGAIN), self.close_button, self.place))

    def _connect(self) -> None:
        self.search.found.connect(self._take)
        self.search.ended.connect(self.take_over)
        self.search.ticked.connect(self.take_over)
        self.again.clicked.connect(self._stop_or_begin)
        self.close_button.clicked.connect(self.reject)
        self.place.clicked.connect(self._place)
        self.table.selectionModel().currentRowChanged.connect(self.take_over)
        self._document.changed.connect(self._look_at_plan)
        self._document.reset.connect(self.reject)

    def _stop_or_begin(self) -> None:
        if self.search.is_running:
            self.search.stop()
            self.take_over()
        else:
            self.begin()

    def _take(self, result: object) -> None:
        assert isinstance(result, tuple)
        turn, order = result
        # The planner begins each orientation with the order that the plan has.
        if turn == Turn() and self._drawn is None:
            self._drawn = order
        self._searched = turn
        self._found[turn] = order
        self.take_over()

    def _look_at_plan(self) -> None:
        """What was found holds as long as the pieces, the arms and the routes are the same."""
        now, then = self._document.plan, self._plan
        if now.pieces is not then.pieces or (now.arms, now.routes) != (then.arms, then.routes):
            self._is_old = True
            self.search.stop()
            self.take_over()

    def _place(self) -> None:
        if self._can_place():
            turn, order = self.turn, self._found[self.turn]
            self.accept()
            self.placed.emit(turn, order)

    def _can_place(self) -> bool:
        """An order that serves, and is better than the one that the plan has; or another orientation."""
        order = self._found.get(self.turn)
        if self._is_old or order is None or not order.served:
            return False
        return self.turn != Turn() or not self._is_as_good_now(order)

    def _is_as_good_now(self, order: BuildOrder) -> bool:
        drawn = self._drawn
        return drawn is not None and (drawn.served, drawn.cost) == (order.served, order.cost)

    def _state_words(self) -> str:
        seconds = self.search.seconds
        if self._is_old:
            return tr("The plan has changed since: what stands here is of the plan before.")
        if not self._plan.routes:
            return tr("No routes are wanted yet, so every order serves.")
        if self.search.is_running:
            return tr(
                "Searching, {seconds} s: orientation {number} of {count}",
                seconds=seconds,
                number=self._searched.number,
                count=len(ALL_TURNS),
            )
        if len(self._found) == len(ALL_TURNS) and self._searched == ALL_TURNS[-1]:
            return tr("All eight orientations were searched in {seconds} s.", seconds=seconds)
        return tr("Stopped after {seconds} s.", seconds=seconds)

    def _chosen_words(self) -> str:
        order = self._found.get(self.turn)
        if order is None:
            return "…"
        said = f"{needs_words(order)}; {proof_words(order)}"
        is_no_gain = order.served and self.turn == Turn() and self._is_as_good_now(order)
        return tr("{said}: as good as now", said=said) if is_no_gain else said


class _Delegate(CellDelegate):
    def paint_content(self, painter: QPainter, room: QRect, index: Index) -> None:
        theme, column = themes.current(), index.column()
        paint_text(painter, room, str(index.data()), font(11, column == MARK), theme.ink)


def _note() -> QLabel:
    made = label(tr("Choose another orientation to turn the plan and place it so, as one step."), "second")
    made.setWordWrap(True)
    return made
