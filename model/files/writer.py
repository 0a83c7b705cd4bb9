"""The one place that writes files.

It never leaves a half-written file under the target's name: the old file stays until the new one is whole
and on the disk.
"""

from __future__ import annotations

import os
import shutil
import stat
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from typing import NamedTuple


class WriteError(Exception):
    """A file could not be written; what stood under its name before stands there still."""

    def __init__(self, file: str, reason: str) -> None:
        super().__init__(f"{file}: could not be written: {reason}")
        self.file = file
        self.reason = reason


def write_bytes(path: str | os.PathLike[str], data: bytes) -> None:
    """Write ``data`` under ``path``, all of it or nothing. Raises WriteError.

    The bytes go into a temporary file beside the target, which takes the target's place once it is whole.
    A link is followed; the mode of a file that is replaced is kept.
    """
    write_together({path: data})


def write_together(files: Mapping[str | os.PathLike[str], bytes]) -> None:
    """Write several files as ``write_bytes`` does: all of them, or none. Raises WriteError.

    None is replaced before all are on the disk whole; where one then cannot be, those before it are put back.
    """
    waiting: list[_Waiting] = []
    try:
        for path, data in files.items():
            with _told_as_write_error(path):
                target = os.path.realpath(path)
                waiting.append(_Waiting(path, target, _name_beside(target)))
                _write_whole(waiting[-1].temporary, data, _mode_of(target))
        if len(waiting) == 1:
            _replace(waiting[0])
        else:
            _replace_all(waiting)
    finally:
        for each in waiting:
            with suppress(OSError):
                os.unlink(each.temporary)


class _Waiting(NamedTuple):
    """A file that is on the disk whole, under another name than its own."""

    path: str | os.PathLike[str]
    target: str
    temporary: str


def _replace(file: _Waiting) -> None:
    with _told_as_write_error(file.path):
        os.replace(file.temporary, file.target)


def _replace_all(waiting: Sequence[_Waiting]) -> None:
    """Every file takes its place, or none does: the old ones are kept until the last new one stands."""
    kept: dict[str, str] = {}
    replaced: list[str] = []
    try:
        for file in waiting:
            with _told_as_write_error(file.path):
                if os.path.exists(file.target):
                    kept[file.target] = _kept_beside(file.target)
            _replace(file)
            replaced.append(file.target)
    except WriteError:
        for target in replaced:
            with suppress(OSError):
                os.replace(kept[target], target) if target in kept else os.unlink(target)
        raise
    finally:
        for old in kept.values():
            with suppress(OSError):
                os.unlink(old)


def _kept_beside(target: str) -> str:
    """Another name for a file, or a copy where the file system knows one name a file."""
    other = _name_beside(target)
    try:
        os.link(target, other)
    except OSError:
        shutil.copy2(target, other)
    return other


def _name_beside(target: str) -> str:
    return os.path.join(os.path.dirname(target), f".{os.urandom(8).hex()}.tmp")


def check_writable(path: str | os.PathLike[str]) -> None:
    """Raises WriteError where it is plain that nothing can be written there, before long work is begun."""
    with _told_as_write_error(path):
        target = os.path.realpath(path)
        folder = os.path.dirname(target)
        os.stat(folder)
        if _mode_of(target) is None and not os.access(folder, os.W_OK):
            raise OSError("nothing can be written into the folder")


@contextmanager
def _told_as_write_error(path: str | os.PathLike[str]) -> Iterator[None]:
    try:
        yield
    except (OSError, ValueError) as error:  # ValueError: a path with a NUL in it
        reason = getattr(error, "strerror", None) or str(error)
        raise WriteError(os.fspath(path), reason) from error


def _mode_of(target: str) -> int | None:
    """The permission bits of the file that stands there; ``None`` where there is none.

    A device or a pipe must not be replaced by a file, nor a file that its owner has protected.
    """
    try:
        mode = os.stat(target).st_mode
    except FileNotFoundError:
        return None
    if stat.S_ISDIR(mode):
        raise OSError("there is a folder of that name")
    if not stat.S_ISREG(mode):
        raise OSError("it is no ordinary file")
    if not os.access(target, os.W_OK):
        raise OSError("the file is write-protected")
    return stat.S_IMODE(mode)


def _write_whole(temporary: str, data: bytes, mode: int | None) -> None:
    """A new file with these bytes, known to be on the disk."""
    with open(temporary, "xb") as stream:
        stream.write(data)
        stream.flush()
        if os.fstat(stream.fileno()).st_size != len(data):
            raise OSError("only a part of it could be written")
        if mode is not None:
            os.chmod(temporary, mode)
        os.fsync(stream.fileno())
