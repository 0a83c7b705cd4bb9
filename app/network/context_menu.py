"""The menu of the map: what can be done with what is chosen, or with the thing under the pointer."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from PySide6.QtCore import QEvent, QObject, QPoint, QPointF
from PySide6.QtGui import QAction, QContextMenuEvent
from PySide6.QtWidgets import QMenu

from app.commands.letters import letter_menu
from app.network.map_view import MapView

GROUPS: Final = (("properties", "open_plan"), ("delete",), ("fit_selection", "fit_all"))


class MapMenu(QObject):
    """Opens by the right button and by the menu key."""

    def __init__(self, view: MapView, actions: Mapping[str, QAction]) -> None:
        super().__init__(view)
        self._view = view
        self.menu = QMenu(view)
        for group in GROUPS:
            self.menu.addSeparator()
            for name in group:
                self.menu.addAction(actions[name])
        letter_menu(self.menu)
        view.installEventFilter(self)

    def open_at(self, pixel: QPoint | None) -> None:
        """Open for the thing there, or for that at the cursor, and choose it."""
        view = self._view
        if view.hands.tool.is_busy:
            return
        at = view.pixel_of(view.cursor_spot) if pixel is None else QPointF(pixel)
        place = view.hands.place_under(at)
        hit = view.document.picture.item_at(place.x, place.y, place.reach)
        if hit is None or hit not in view.selection:
            view.choose(frozenset() if hit is None else frozenset({hit}))
        self.menu.popup(view.mapToGlobal(at.toPoint()))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Takes the wish for a menu."""
        if not isinstance(event, QContextMenuEvent):
            return False
        self.open_at(None if event.reason() is QContextMenuEvent.Reason.Keyboard else event.pos())
        return True
