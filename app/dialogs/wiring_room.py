"""The numbers that a search for a wiring goes by: seed, room beside the track, depth."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QSpinBox, QWidget

from app.panels.look import label, named
from app.panels.wrapped_row import WrappedRow
from app.translation import tr
from app.wire_words import FIRST_DEPTH, FIRST_GROW, MOST_CELLS

MOST_SEED: Final = 999_999
WIDTH: Final = 76


class RoomFields(QWidget):
    """Three whole numbers in a row."""

    changed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.seed = _number(
            tr("Seed"), tr("Another one may find other places for readers and lines"), MOST_SEED, 0
        )
        self.beside = _number(
            tr("Cells beside the track"),
            tr("How far the wiring may reach out beyond the track, on each side"),
            MOST_CELLS,
            FIRST_GROW,
        )
        self.below = _number(
            tr("Levels below the track"),
            tr("How deep it may go below the lowest rail"),
            MOST_CELLS,
            FIRST_DEPTH,
        )
        row = WrappedRow(gap=20)
        self.setLayout(row)
        for field in (self.seed, self.beside, self.below):
            row.add_together(label(field.accessibleName()), field)
            field.valueChanged.connect(self.changed)

    @property
    def numbers(self) -> tuple[int, int, int]:
        """Seed, cells beside the track, and levels below it."""
        return self.seed.value(), self.beside.value(), self.below.value()


def _number(name: str, tip: str, highest: int, value: int) -> QSpinBox:
    field = named(QSpinBox(minimum=0, maximum=highest, value=value), name)
    field.setToolTip(tip)
    field.setFixedWidth(WIDTH)
    return field
