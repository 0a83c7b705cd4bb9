"""Asks for the reason for which a finding is set aside."""

from __future__ import annotations

from PySide6.QtWidgets import QDialog, QDialogButtonBox, QLineEdit, QVBoxLayout, QWidget

from app.panels.look import label, named


class WaiverDialog(QDialog):
    """One line for the reason; without one the finding is not set aside."""

    def __init__(self, parent: QWidget | None, title: str) -> None:
        super().__init__(parent)
        self.setWindowTitle("Set aside")
        self.reason = named(QLineEdit(self, placeholderText="old loop, goes in spring"), "Reason")
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
        self.ok = buttons.addButton("Set aside", QDialogButtonBox.ButtonRole.AcceptRole)
        self.ok.setEnabled(False)
        column = QVBoxLayout(self)
        column.setSpacing(8)
        column.addWidget(label(title, "strong"))
        column.addWidget(label("Why is this right as it is? The reason is kept with the plan."))
        column.addWidget(self.reason)
        column.addWidget(buttons)
        self.reason.textChanged.connect(lambda text: self.ok.setEnabled(bool(text.strip())))
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)


def ask_reason(parent: QWidget, title: str) -> str | None:
    """The reason, or ``None`` when the user thinks better of it."""
    dialog = WaiverDialog(parent, title)
    return dialog.reason.text().strip() if dialog.exec() else None
