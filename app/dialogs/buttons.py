"""The buttons at the foot of a question."""

from __future__ import annotations

from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QHBoxLayout, QPushButton

from app.panels.look import font


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


def search_buttons(again: QPushButton, widest: str, close: QPushButton, place: QPushButton) -> QHBoxLayout:
    """The foot of a search beside the window: stop or search again, close, place what was found.

    ``again`` and ``place`` say other things in turn and keep room for the ``widest``: nothing moves.
    """
    place.setProperty("look", "main")
    for button in (again, place):
        # Either may be the default one, whose letters are bold.
        room = QFontMetrics(font(12, True)).horizontalAdvance(widest) + 32
        button.setMinimumWidth(max(button.sizeHint().width(), room))
    for button in (again, close):
        button.setAutoDefault(False)
    feet = QHBoxLayout()
    feet.setSpacing(8)
    feet.addWidget(again)
    feet.addStretch(1)
    feet.addWidget(close)
    feet.addWidget(place)
    return feet
