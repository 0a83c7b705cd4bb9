"""Into which file something is written that is no document of its own; nothing is written over unasked."""

from __future__ import annotations

import os
from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QWidget

from app.commands.files import may_write_over
from app.numbered_pages import pages_there


def ask_file(parent: QWidget, title: str, offered: Path, ending: str) -> Path | None:
    """The file that the user names, with that ending; ``None`` where there is to be none."""
    kind = f"{ending[1:].upper()} (*{ending})"
    name, _ = QFileDialog.getSaveFileName(parent, title, str(offered), kind)
    if not name:
        return None
    if name.lower().endswith(ending):
        return Path(name)
    # The dialog asked about the name as it was typed, not about this one.
    whole = Path(name + ending)
    return None if os.path.exists(whole) and not may_write_over(parent, whole) else whole


def may_write_pages(parent: QWidget, path: Path) -> bool:
    """Whether numbered pages may be written under that name: the dialog asked about no page."""
    there = pages_there(path)
    return not there or may_write_over(parent, path.with_name(there[0]))
