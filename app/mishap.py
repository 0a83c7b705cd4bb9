"""What happens when the program itself makes a mistake: it is noted, the plan is copied, the user is told."""

from __future__ import annotations

import logging
import sys
import traceback
from collections.abc import Callable
from pathlib import Path
from types import TracebackType
from typing import Final

from app.translation import tr
from model.files.writer import WriteError, write_bytes

LOG: Final = "last-mishap.txt"


class MishapHook:
    """In the place of ``sys.excepthook``: Qt goes on after an exception in a slot, so somebody must tell."""

    def __init__(self, rescue: Callable[[], None], tell: Callable[[str], None], folder: Path) -> None:
        self._rescue = rescue
        self._tell = tell
        self._folder = folder
        self._is_busy = False

    def install(self) -> None:
        """Take the place of the hook of the interpreter."""
        sys.excepthook = self

    def __call__(self, kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        """Write the mishap down, copy the plan, tell the user."""
        if issubclass(kind, KeyboardInterrupt):
            sys.__excepthook__(kind, error, trace)
            return
        logging.getLogger("platelayer").error("a mistake of the program", exc_info=(kind, error, trace))
        if self._is_busy:
            return
        self._is_busy = True
        try:
            self._rescue()
            self._tell(self._sentence(kind, error, trace))
        finally:
            self._is_busy = False

    def _sentence(self, kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> str:
        said = tr(
            "The program made a mistake ({kind}: {error}). A recovery copy of the plan is kept.",
            kind=kind.__name__,
            error=error,
        )
        log = self._folder / LOG
        try:
            write_bytes(log, "".join(traceback.format_exception(kind, error, trace)).encode())
        except WriteError:
            return said
        return tr("{said} What happened is written in {log}.", said=said, log=log)
