"""The buttons at the foot of a question."""

from __future__ import annotations

from PySide6.QtWidgets import QDialog, QDialogButtonBox, QPushButton


def answer_buttons(dialog: QDialog, word: str) -> tuple[QDialogButtonBox, QPushButton]:
    """Cancel, and a button that says what will be done."""
    box = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
    accept = box.addButton(word, QDialogButtonBox.ButtonRole.AcceptRole)
    # The look, not the state of being the default, makes the letters bold: the button is measured by it.
    accept.setProperty("look", "main")
    accept.setDefault(True)
    box.accepted.connect(dialog.accept)
    box.rejected.connect(dialog.reject)
    return box, accept
