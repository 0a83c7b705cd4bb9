"""What the dialog over long work says while it is done."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from PySide6.QtWidgets import QLabel

from app.dialogs.working import WorkingDialog


def hear(monkeypatch: pytest.MonkeyPatch, heard: Callable[[WorkingDialog, str], object]) -> list[str]:
    """Has ``heard`` told of each thing that the dialog says; gives all of them, the latest last."""
    said: list[str] = []
    set_text = QLabel.setText

    def note(label: QLabel, words: str) -> None:
        set_text(label, words)
        dialog = label.window()
        if isinstance(dialog, WorkingDialog):
            said.append(words)
            heard(dialog, words)

    monkeypatch.setattr(QLabel, "setText", note)
    return said
