"""The menu of the plan view: what can be done with what is chosen, or with the piece under the pointer."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from PySide6.QtCore import QEvent, QObject, QPoint
from PySide6.QtGui import QAction, QContextMenuEvent
from PySide6.QtWidgets import QMenu

from app.canvas.rulers import LEFT, TOP
from app.canvas.view import PlanView
from app.commands.letters import letter_menu

GROUPS: Final = (
    ("probe", "rewire"),
    ("cut", "copy", "paste", "delete"),
    ("turn_chosen", "mirror_chosen", "contents"),
)


class ContextMenu(QObject):
    """Opens by the right button and by the menu key."""

    def __init__(self, view: PlanView, actions: Mapping[str, QAction]) -> None:
        super().__init__(view)
        self._view = view
        self.menu = QMenu(view)
        for group in GROUPS:
            self.menu.addSeparator()
            for name in group:
                self.menu.addAction(actions[name])
        letter_menu(self.menu)
        view.installEventFilter(self)

    def open_at(self, cell_at: QPoint | None) -> None:
        """Open for the cell there, or for that of the cursor, and choose what is there."""
        view = self._view
        if view.hands.tool.is_busy:
            return
        viewport = view.navigator.view
        if cell_at is not None:
            view.put_cursor(viewport.cell_at(cell_at.x(), cell_at.y(), view.level), by_key=False)
        cell = view.cursor
        if cell not in view.selection:
            view.selection = frozenset({cell} if cell in view.document.plan.pieces else ())
        left, top = viewport.corner(cell.x, cell.z)
        at = QPoint(round(left + viewport.scale), round(top)) if cell_at is None else cell_at
        self.menu.popup(view.mapToGlobal(at))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if not isinstance(event, QContextMenuEvent):
            return False
        by_key = event.reason() is QContextMenuEvent.Reason.Keyboard
        if by_key or (event.pos().x() >= LEFT and event.pos().y() >= TOP):
            self.open_at(None if by_key else event.pos())
        return True
