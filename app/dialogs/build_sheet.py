"""Asks how the build sheet is to be written."""

from __future__ import annotations

from typing import Final, NamedTuple

from PySide6.QtWidgets import (
    QButtonGroup,
    QCheckBox,
    QDialog,
    QFormLayout,
    QHBoxLayout,
    QLayout,
    QRadioButton,
    QVBoxLayout,
    QWidget,
)

from app.dialogs.buttons import answer_buttons
from app.panels.look import label, named

PAPERS: Final = ("A4", "A3")
FORMATS: Final = ("PDF", "SVG", "PNG")


class SheetChoice(NamedTuple):
    """How the build sheet is written."""

    paper: str = "A4"
    format: str = "PDF"
    colour: bool = False
    steps: bool = True


class BuildSheetDialog(QDialog):
    """Paper, format, whether the steps are drawn, and whether colour is laid over the black drawing."""

    def __init__(self, parent: QWidget | None, choice: SheetChoice) -> None:
        super().__init__(parent)
        self.setWindowTitle("Build sheet")
        self.setMinimumWidth(380)
        self._papers = QButtonGroup(self)
        self._formats = QButtonGroup(self)
        self.colour = named(QCheckBox("Lay colour over the drawing"), "Lay colour over the drawing")
        self.colour.setChecked(choice.colour)
        self.steps = named(QCheckBox("Steps, with pictures"), "Steps, with pictures")
        self.steps.setChecked(choice.steps)
        form = QFormLayout()
        form.addRow(label("Paper"), _one_of(self._papers, PAPERS, choice.paper))
        form.addRow(label("Format"), _one_of(self._formats, FORMATS, choice.format))
        form.addRow(label("Pages"), self.steps)
        form.addRow(label("Colour"), self.colour)
        buttons, _ = answer_buttons(self, "Choose a file…")
        told = label("PDF is one file; SVG and PNG are one a page. All can be read in black and white.")
        told.setWordWrap(True)
        column = QVBoxLayout(self)
        column.setSpacing(12)
        column.addLayout(form)
        column.addWidget(told)
        column.addWidget(buttons)

    @property
    def choice(self) -> SheetChoice:
        """What was chosen."""
        return SheetChoice(
            PAPERS[self._papers.checkedId()],
            FORMATS[self._formats.checkedId()],
            self.colour.isChecked(),
            self.steps.isChecked(),
        )


def _one_of(group: QButtonGroup, words: tuple[str, ...], chosen: str) -> QLayout:
    row = QHBoxLayout()
    row.setSpacing(16)
    for number, word in enumerate(words):
        button = named(QRadioButton(word), word)
        button.setChecked(word == chosen)
        group.addButton(button, number)
        row.addWidget(button)
    row.addStretch(1)
    return row
