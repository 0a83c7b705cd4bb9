"""The bytes of a file that is to be read, with a bound on how many they are."""

from __future__ import annotations

import os
import stat

from model.files.errors import PlanFileError
from model.wording import tr


def bytes_of(path: str | os.PathLike[str], limit: int) -> bytes:
    """What stands in a file. Raises PlanFileError: not to be opened, or over ``limit`` bytes."""
    name = os.fspath(path)
    try:
        with open(path, "rb") as stream:
            size = os.fstat(stream.fileno()).st_size
            # A pipe does not tell its size; one byte over is enough.
            data = b"" if size > limit else stream.read(limit + 1)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        expected = tr("a file that can be read ({reason})", reason=reason)
        raise PlanFileError(name, tr("the file itself"), expected) from error
    if max(size, len(data)) > limit:
        raise PlanFileError(name, "", at_most(limit))
    return data


def check_ordinary(path: str | os.PathLike[str]) -> None:
    """Raises PlanFileError for a pipe or a device: a window that reads one may wait without end.

    The command line takes pipes. A path at which nothing stands is left to whoever opens it.
    """
    try:
        mode = os.stat(path).st_mode
    except (OSError, ValueError):
        return
    if not (stat.S_ISREG(mode) or stat.S_ISDIR(mode)):
        expected = tr("an ordinary file, no pipe and no device")
        raise PlanFileError(os.fspath(path), tr("the file itself"), expected)


def at_most(limit: int) -> str:
    """What is expected where a file is too large."""
    return tr("at most {limit:,} bytes", limit=limit)
