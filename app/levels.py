"""Which levels are kept from being changed, and which are left out of sight; neither is part of the plan."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtCore import QObject, Signal

from app.translation import tr
from model.grid import Cell


class Levels(QObject):
    """The locked and the hidden levels of one window."""

    changed = Signal()

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self.locked: frozenset[int] = frozenset()
        self.hidden: frozenset[int] = frozenset()

    def toggle_lock(self, level: int) -> None:
        """Let nothing on a level be changed, or all again."""
        self.locked ^= {level}
        self.changed.emit()

    def toggle_hidden(self, level: int) -> None:
        """Leave a level out while another one is drawn on, or show it again."""
        self.hidden ^= {level}
        self.changed.emit()

    def clear(self) -> None:
        """Another plan is open: nothing is locked or hidden."""
        self.locked = self.hidden = frozenset()
        self.changed.emit()

    def refusal(self, cells: Iterable[Cell]) -> str:
        """Why these cells are not changed; empty where they may be."""
        met = self.locked & {cell.y for cell in cells}
        return tr("Level {level} is locked: nothing on it is changed.", level=min(met)) if met else ""
