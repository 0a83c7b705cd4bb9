"""The wanted routes, edited in place."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QAbstractItemModel, QRect, Qt, Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import (
    QComboBox,
    QHBoxLayout,
    QLineEdit,
    QPushButton,
    QStyleOptionViewItem,
    QVBoxLayout,
    QWidget,
)

from app import theme as themes
from app.canvas.symbols import draw_marker
from app.document import Document
from app.panels.choice_box import CellChoice
from app.panels.crossing_words import crossing_sentence
from app.panels.editing_delegate import EditingDelegate
from app.panels.look import font, label, named, panel
from app.panels.routes_model import CALLED, FROM, IDLE, REACHED_ROLE, TIPS, WAYBILL, RoutesModel, next_route
from app.panels.row_menu import RowMenu
from app.panels.rows import paint_text
from app.panels.table_model import Index
from app.panels.tables import Table
from app.translation import tr
from model.plan import NAME_LIMIT
from model.routing.control import WantedRoute
from model.rules import Severity

MARK: Final = 14
NO_CHOICE: Final = "—"


class RoutesPanel(QWidget):
    """The table, and buttons that add and take away a route."""

    count_changed = Signal(int)

    def __init__(self, document: Document, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self._document = document
        self.model = RoutesModel(document, self)
        self.table = Table(tr("Wanted routes"), self.model, self)
        self.table.setItemDelegate(_RouteDelegate(document, self.table))
        self.table.set_widths((0, 0, 0, 0))
        self.table.setSelectionBehavior(Table.SelectionBehavior.SelectItems)
        self.table.setEditTriggers(
            Table.EditTrigger.DoubleClicked
            | Table.EditTrigger.SelectedClicked
            | Table.EditTrigger.EditKeyPressed
            | Table.EditTrigger.AnyKeyPressed
        )
        self.hint = label("", "second")
        self.hint.setWordWrap(True)
        self.crossing = label("", "second")
        self.crossing.setWordWrap(True)
        self.add_button = QPushButton(tr("Add route"), self)
        self.remove_button = named(QPushButton(tr("Remove"), self), tr("Remove the chosen route"))
        self._lay_out()
        self.add_button.clicked.connect(self._add)
        self.remove_button.clicked.connect(self._remove)
        RowMenu(self.table, (self.add_button, self.remove_button))
        # A click changes the current cell first, a key the selection: both say what is chosen.
        self.table.selectionModel().currentChanged.connect(self._offer)
        self.table.selectionModel().selectionChanged.connect(self._offer)
        self.model.modelReset.connect(self._offer)
        document.details_changed.connect(self._offer)
        document.reset.connect(self._offer)
        document.junction_updated.connect(self._tell_crossing)
        self._offer()

    def _lay_out(self) -> None:
        below = QHBoxLayout()
        below.setContentsMargins(14, 8, 14, 8)
        below.setSpacing(8)
        below.addWidget(self.add_button)
        below.addWidget(self.remove_button)
        below.addStretch(1)
        self.hint.setContentsMargins(14, 0, 14, 8)
        self.crossing.setContentsMargins(14, 0, 14, 12)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.table, 1)
        column.addLayout(below)
        column.addWidget(self.hint)
        column.addWidget(self.crossing)
        column.addStretch(0)

    def _offer(self, *_: object) -> None:
        plan = self._document.plan
        self.count_changed.emit(len(plan.routes))
        self.table.fit_rows()
        self.add_button.setEnabled(next_route(plan) is not None)
        self.remove_button.setEnabled(self.table.selectionModel().hasSelection())
        if not plan.arms:
            self.hint.setText(tr("Draw arms first: with the Arm tool, drag across the end of a track."))
        elif not plan.routes:
            self.hint.setText(tr("Add a route for each arm by which carts come in."))
        else:
            self.hint.setText(tr("Double-click or F2 edits a cell; the waybill may be any name."))
        self._tell_crossing()

    def _tell_crossing(self) -> None:
        """Which routes the chosen one crosses: the called one when its cell is chosen, else the idle one."""
        route, junction = self._chosen(), self._document.junction
        if route is None or junction is None or self._document.junction_is_old:
            self.crossing.clear()
        else:
            self.crossing.setText(crossing_sentence(junction, route))

    def _chosen(self) -> WantedRoute | None:
        index = self.table.currentIndex()
        if not index.isValid():
            return None
        route = self.model.routes[index.row()]
        if index.column() in (CALLED, WAYBILL):
            return None if route.called is None else WantedRoute(route.start, True, route.called)
        return WantedRoute(route.start, False, route.idle)

    def _add(self) -> None:
        if self.model.add():
            row = len(self.model.routes) - 1
            self.table.setCurrentIndex(self.model.index(row, IDLE))
            self.table.setFocus()

    def _remove(self) -> None:
        index = self.table.currentIndex()
        if index.isValid():
            self.model.remove(index.row())


class _RouteDelegate(EditingDelegate):
    """Arms are offered as choices."""

    def __init__(self, document: Document, parent: QWidget) -> None:
        super().__init__(parent)
        self._document = document

    def paint_content(self, painter: QPainter, room: QRect, index: Index) -> None:
        theme = themes.current()
        words = str(index.data())
        if index.data(REACHED_ROLE) is False:
            middle = room.center().y() + 0.5
            draw_marker(painter, room.left() + MARK / 2, middle, Severity.ERROR, theme, MARK)
            room = room.adjusted(MARK + 4, 0, 0, 0)
        colour = theme.ink2 if words == NO_CHOICE else theme.ink
        paint_text(painter, room, words, font(12, index.column() == FROM), colour)

    def createEditor(self, parent: QWidget, option: QStyleOptionViewItem, index: Index) -> QWidget:
        name = tr(
            "{headerData} of the route",
            headerData=index.model().headerData(index.column(), Qt.Orientation.Horizontal),
        )
        if index.column() == WAYBILL:
            line = named(QLineEdit(parent, maxLength=NAME_LIMIT), name)
            line.setToolTip(tr(TIPS[WAYBILL]))
            return line
        box = named(CellChoice(parent), name)
        box.setToolTip(tr(TIPS[index.column()]))
        box.addItems(self._choices(index))
        # A choice made is an edit made; no second key is needed to end it.
        box.activated.connect(lambda: self.end(box))
        return box

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        # Asked again whenever the background has news of the table; what is being typed must stay.
        if editor.property("filled"):
            return
        editor.setProperty("filled", True)
        value = str(index.data(Qt.ItemDataRole.EditRole))
        if isinstance(editor, QComboBox):
            editor.setCurrentText(value or NO_CHOICE)
            return
        super().setEditorData(editor, index)

    def setModelData(self, editor: QWidget, model: QAbstractItemModel, index: Index) -> None:
        if isinstance(editor, QComboBox):
            word = editor.currentText()
            model.setData(index, "" if word == NO_CHOICE else word)
            return
        super().setModelData(editor, model, index)

    def _choices(self, index: Index) -> list[str]:
        arms = self._document.plan.arms
        if index.column() == FROM:
            taken = {route.start for route in self._document.plan.routes}
            names = [arm.name for arm in arms if arm.enter and arm.name not in taken]
        else:
            # Few carts go back where they came from, so that comes last.
            start = self._document.plan.routes[index.row()].start
            leaving = [arm.name for arm in arms if arm.leave]
            names = sorted(leaving, key=lambda name: name == start)
        present = str(index.data(Qt.ItemDataRole.EditRole))
        # What stands there now stays a choice, even when no such arm is drawn.
        if present and present not in names:
            names.insert(0, present)
        return [NO_CHOICE, *names] if index.column() == CALLED else names
