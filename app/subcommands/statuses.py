"""What an exit status means."""

from __future__ import annotations

from typing import Final

DONE: Final = 0
"""And no error was found."""
WRONG_USE: Final = 2
ERROR_FOUND: Final = 3
"""A finding of severity error that is not set aside."""
NOT_READ_OR_WRITTEN: Final = 4
INTERRUPTED: Final = 130
"""By Ctrl-C: 128 and the number of the signal, as shells have it."""
