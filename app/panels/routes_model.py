"""The wanted routes as a table that is edited in place; every edit is one undo step."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from msgspec import structs
from PySide6.QtCore import QObject, Qt

from app.document import Document
from app.panels.table_model import Index, TableModel
from app.translation import QT_TR_NOOP, tr
from model.edits import remove_route, set_route, start_route_at
from model.plan import Plan, Route
from model.routing.junction import RouteResult

FROM, IDLE, CALLED, WAYBILL = range(4)
TITLES: Final = (QT_TR_NOOP("from"), QT_TR_NOOP("idle"), QT_TR_NOOP("called"), QT_TR_NOOP("waybill"))
FIELDS: Final = ("start", "idle", "called", "waybill")
TIPS: Final = (
    QT_TR_NOOP("The arm by which the cart comes in"),
    QT_TR_NOOP("The arm by which an empty cart must leave"),
    QT_TR_NOOP("The arm by which a cart with the waybill must leave"),
    QT_TR_NOOP("The waybill that calls the route; the arm's name where it is left out"),
)
REACHED_ROLE: Final = Qt.ItemDataRole.UserRole
"""Whether the wanted arm is reached; ``None`` where that is not known or not asked."""


class RoutesModel(TableModel):
    """A row a wanted route: from, idle, called, waybill."""

    titles = TITLES
    tips = TIPS

    def __init__(self, document: Document, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self._routes = document.plan.routes
        document.details_changed.connect(self._take_over)
        document.junction_updated.connect(self._tell_reached)

    def rows(self) -> Sequence[Route]:
        """What stands in the table, a row each."""
        return self._routes

    @property
    def routes(self) -> tuple[Route, ...]:
        """The wanted routes in file order."""
        return self._routes

    def add(self) -> bool:
        """Add a route from the first arm that has none. Whether there was one."""
        route = next_route(self._document.plan)
        return route is not None and self._document.edit(set_route, route)

    def remove(self, row: int) -> None:
        """Take a route away."""
        self._document.edit(remove_route, self._routes[row].start)

    def result(self, row: int) -> RouteResult | None:
        """What the control table says of a route, once it is known."""
        junction = self._document.junction
        if junction is None or self._document.junction_is_old:
            return None
        start = self._routes[row].start
        return next((result for result in junction.routes if result.start == start), None)

    def _take_over(self) -> None:
        routes = self._document.plan.routes
        if len(routes) == len(self._routes):
            self._routes = routes
            self._tell_reached()
        else:
            self.beginResetModel()
            self._routes = routes
            self.endResetModel()

    def _tell_reached(self) -> None:
        if self._routes:
            self.dataChanged.emit(self.index(0, 0), self.index(len(self._routes) - 1, WAYBILL))

    def _reached(self, index: Index) -> bool | None:
        result = self.result(index.row())
        if result is None or index.column() not in (IDLE, CALLED):
            return None
        return result.idle_reached if index.column() == IDLE else result.called_reached

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        value = getattr(self._routes[index.row()], FIELDS[index.column()])
        if role == Qt.ItemDataRole.DisplayRole:
            return value or "—"
        if role == Qt.ItemDataRole.EditRole:
            return value or ""
        if role == REACHED_ROLE:
            return self._reached(index)
        if role == Qt.ItemDataRole.ToolTipRole and self._reached(index) is False:
            return tr("Not reached as the plan stands")
        if role == Qt.ItemDataRole.AccessibleTextRole:
            said = {None: [], True: [tr("reached")], False: [tr("not reached")]}[self._reached(index)]
            return f"{tr(TITLES[index.column()])}: {', '.join([value or tr('none'), *said])}"
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        return super().flags(index) | Qt.ItemFlag.ItemIsEditable

    def setData(self, index: Index, value: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        route = self._routes[index.row()]
        field = FIELDS[index.column()]
        # The called way may be left open; where a route comes from and where an empty cart goes may not.
        word = str(value).strip() or (None if index.column() in (CALLED, WAYBILL) else "")
        if role != Qt.ItemDataRole.EditRole or word == "" or getattr(route, field) == word:
            return False
        if field == "start" and word is not None:
            return self._document.edit(start_route_at, route.start, word)
        return self._document.edit(set_route, structs.replace(route, **{field: word}))


def next_route(plan: Plan) -> Route | None:
    """A route from the first arm in that has none yet, to the first other arm out."""
    taken = {route.start for route in plan.routes}
    start = next((arm.name for arm in plan.arms if arm.enter and arm.name not in taken), None)
    if start is None:
        return None
    goal = next((arm.name for arm in plan.arms if arm.leave and arm.name != start), start)
    return Route(start, goal)
