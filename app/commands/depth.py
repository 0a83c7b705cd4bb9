"""The view in depth: brought up beside the plan view, and bound to it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from app.depth.window import DepthWindow

if TYPE_CHECKING:
    from app.window import MainWindow
    from model.grid import Cell

SHARED: Final = ("undo", "redo", "level_up", "level_down", "in_depth")
"""Actions whose keys work in the window of the view, too."""


class DepthCommands:
    """Makes the window of the view when it is first asked for, and keeps it."""

    def __init__(self, window: MainWindow) -> None:
        self._window = window
        self.shown: DepthWindow | None = None

    def show_or_hide(self) -> None:
        """Brings the view to the front; asked from there, goes back to the plan."""
        if self.shown is None:
            self.shown = self._made()
        if self.shown.isActiveWindow():
            self.shown.close()
            self._window.activateWindow()
            self._window.view.setFocus()
            return
        self.shown.show()
        self.shown.raise_()
        self.shown.activateWindow()
        self.shown.view.setFocus()

    def _made(self) -> DepthWindow:
        window = self._window
        made = DepthWindow(window.view, window)
        made.addActions([window.bound[name] for name in SHARED])
        made.view.cell_asked.connect(self._go_to)
        made.view.level_asked.connect(lambda up: window.go_to_level(window.view.level + up))
        return made

    def _go_to(self, cell: Cell) -> None:
        """Shows the cell on its level in the plan view, and chooses the piece in it."""
        view = self._window.view
        view.go_to(cell)
        view.choose([cell] if cell in self._window.document.plan.pieces else [])
