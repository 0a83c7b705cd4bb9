"""The wide buttons of the start screen, which show their keys."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QPushButton

from app.panels.dark_button import DarkButton
from app.panels.look import label, named


def wide_button(text: str, keys: str, look: str, note: str = "") -> QPushButton:
    """A button as wide as its column, with its keys or a note on the right; the look is ``dark`` or none."""
    button = named(DarkButton() if look == "dark" else QPushButton(), text)
    # The window's style sheet sets the height of buttons, and only a style sheet can overrule it.
    button.setStyleSheet("min-height: 34px;")
    # The keys of the window do not reach a screen that stands before it.
    button.setShortcut(keys)
    row = QHBoxLayout(button)
    row.setContentsMargins(14, 0, 12, 0)
    for words, kind in ((text, "strong"), (note or keys, "second")):
        told = label(words, f"on{look}" if look else kind)
        told.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        row.addWidget(told)
        if kind == "strong":
            row.addStretch(1)
    button.setMinimumWidth(row.sizeHint().width())
    return button
