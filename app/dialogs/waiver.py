"""Asks for the reason for which a finding is set aside."""

from __future__ import annotations

from PySide6.QtWidgets import QDialog, QLineEdit, QVBoxLayout, QWidget

from app.dialogs.asking import asking
from app.dialogs.buttons import answer_buttons
from app.panels.look import label, named
from app.translation import tr


class WaiverDialog(QDialog):
    """One line for the reason; without one the finding is not set aside."""

    def __init__(self, parent: QWidget | None, title: str) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Set aside"))
        self.reason = named(QLineEdit(self, placeholderText=tr("old loop, goes in spring")), tr("Reason"))
        buttons, self.ok = answer_buttons(self, tr("Set aside"))
        self.ok.setEnabled(False)
        column = QVBoxLayout(self)
        column.setSpacing(8)
        column.addWidget(label(title, "strong"))
        column.addWidget(label(tr("Why is this right as it is? The reason is kept in the file.")))
        column.addWidget(self.reason)
        column.addWidget(buttons)
        self.reason.textChanged.connect(lambda text: self.ok.setEnabled(bool(text.strip())))


def ask_reason(parent: QWidget, title: str) -> str | None:
    """The reason, or ``None`` when the user thinks better of it."""
    with asking(WaiverDialog(parent, title)) as dialog:
        return dialog.reason.text().strip() if dialog.exec() else None
