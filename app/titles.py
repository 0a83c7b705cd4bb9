"""Titles of windows that hold words of the user."""

from __future__ import annotations

from typing import Final

from PySide6.QtWidgets import QWidget

MARK: Final = "[*]"
"""Where Qt would put its own sign of a changed document; two of them stand for the characters themselves."""


def give_title(window: QWidget, words: str) -> None:
    """Call a window by these words, whatever the user has written among them."""
    window.setWindowTitle(words.replace(MARK, 2 * MARK))
