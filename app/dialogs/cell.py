"""Asks for a cell: x, y and z."""

from __future__ import annotations

from PySide6.QtWidgets import QDialog, QFormLayout, QSpinBox, QVBoxLayout, QWidget

from app.dialogs.buttons import answer_buttons
from app.panels.look import label, named
from app.translation import tr
from model.grid import XZ_LIMIT, Y_HIGHEST, Y_LOWEST, Cell


class CellDialog(QDialog):
    """Three whole numbers within the limits of plans."""

    def __init__(self, parent: QWidget | None, title: str, sentence: str, word: str, cell: Cell) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.x_field = _number(tr("x, to the east"), -XZ_LIMIT, XZ_LIMIT, cell.x)
        self.y_field = _number(tr("y, the level"), Y_LOWEST, Y_HIGHEST, cell.y)
        self.z_field = _number(tr("z, to the south"), -XZ_LIMIT, XZ_LIMIT, cell.z)
        buttons, _ = answer_buttons(self, word)
        form = QFormLayout()
        for name, field in (("x", self.x_field), ("y", self.y_field), ("z", self.z_field)):
            form.addRow(label(name, "field"), field)
        column = QVBoxLayout(self)
        column.setSpacing(12)
        told = label(sentence)
        told.setWordWrap(True)
        column.addWidget(told)
        column.addLayout(form)
        column.addWidget(buttons)
        self.x_field.selectAll()

    @property
    def cell(self) -> Cell:
        """What was given."""
        return Cell(self.x_field.value(), self.y_field.value(), self.z_field.value())


def _number(name: str, lowest: int, highest: int, value: int) -> QSpinBox:
    field = named(QSpinBox(minimum=lowest, maximum=highest, value=value), name)
    field.setToolTip(name)
    return field
