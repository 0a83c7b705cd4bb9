"""One line on the terminal that tells how far a long search has come; nothing where no terminal is."""

from __future__ import annotations

import shutil
import sys
import time
from contextlib import suppress
from types import TracebackType
from typing import Final, Self

from app.subcommands.streams import plain

TOLD_EVERY: Final = 0.25
"""Seconds between two lines."""


class Progress:
    """Writes over its own line on standard error, and wipes it at the end, also at a Ctrl-C."""

    def __enter__(self) -> Self:
        self._is_shown = sys.stderr is not None and sys.stderr.isatty()
        self._began = self._told = time.monotonic()
        return self

    def tell(self, words: str) -> None:
        """Say where the search is; what comes too soon after the last is left out."""
        now = time.monotonic()
        if self._is_shown and now - self._told >= TOLD_EVERY:
            self._told = now
            self._write(f"{now - self._began:.0f} s: {words}")

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self._is_shown:
            self._write("")

    def _write(self, words: str) -> None:
        room = shutil.get_terminal_size().columns - 1
        with suppress(OSError):
            sys.stderr.write("\r" + plain(words)[:room].ljust(room) + ("" if words else "\r"))
            sys.stderr.flush()
