"""Asks for the title, and for what the title block of the build sheet says."""

from __future__ import annotations

from typing import Final

from PySide6.QtWidgets import QDialog, QFormLayout, QLineEdit, QVBoxLayout, QWidget

from app.dialogs.buttons import answer_buttons
from app.panels.look import label, named
from app.translation import QT_TR_NOOP, tr
from model.plan import SheetData

FIELDS: Final = {
    "owner": QT_TR_NOOP("Legal owner"),
    "number": QT_TR_NOOP("Identification number"),
    "revision": QT_TR_NOOP("Revision"),
    "date": QT_TR_NOOP("Date of issue"),
    "created_by": QT_TR_NOOP("Created by"),
    "approved_by": QT_TR_NOOP("Approved by"),
}
"""In the words of the title block (ISO 7200, from memory)."""


class LinesDialog(QDialog):
    """A few lines of text, each with its name."""

    def __init__(
        self, parent: QWidget | None, title: str, sentence: str, lines: dict[str, tuple[str, str]]
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.setMinimumWidth(420)
        self.fields = {key: named(QLineEdit(value), name) for key, (name, value) in lines.items()}
        buttons, _ = answer_buttons(self, tr("Set"))
        form = QFormLayout()
        for key, (name, _) in lines.items():
            form.addRow(label(name, "field"), self.fields[key])
        column = QVBoxLayout(self)
        column.setSpacing(12)
        column.addWidget(label(sentence))
        column.addLayout(form)
        column.addWidget(buttons)
        # What is typed first takes the place of what stands there, as where Tab leads to a field.
        next(iter(self.fields.values())).selectAll()

    @property
    def texts(self) -> dict[str, str]:
        """What was given, by key."""
        return {key: field.text().strip() for key, field in self.fields.items()}


def title_dialog(parent: QWidget, title: str) -> LinesDialog:
    """Asks for the plan's title."""
    return LinesDialog(
        parent,
        tr("Title"),
        tr("The name of the plan, here and on the build sheet."),
        {"title": (tr("Title"), title)},
    )


def sheet_dialog(parent: QWidget, sheet: SheetData) -> LinesDialog:
    """Asks for the title block; a field may stay blank."""
    lines = {key: (tr(name), str(getattr(sheet, key))) for key, name in FIELDS.items()}
    return LinesDialog(parent, tr("Sheet data"), tr("What the title block of the build sheet says."), lines)
