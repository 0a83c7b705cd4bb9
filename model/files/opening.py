"""The bytes of a file that is to be read, with a bound on how many they are."""

from __future__ import annotations

import os

from model.files.errors import PlanFileError


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
        raise PlanFileError(name, "the file itself", f"a file that can be read ({reason})") from error
    if max(size, len(data)) > limit:
        raise PlanFileError(name, "", at_most(limit))
    return data


def at_most(limit: int) -> str:
    """What is expected where a file is too large."""
    return f"at most {limit:,} bytes"
