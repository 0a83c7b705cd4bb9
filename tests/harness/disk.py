"""Disks that are full, or that lose what they are given.

``room_for`` asks the kernel (RLIMIT_FSIZE) to refuse what goes beyond so many bytes of a file, which stops
any way of writing, Qt's too. ``losing_disk`` stands in for ``open`` and reports success for bytes that it
drops.
"""

from __future__ import annotations

import builtins
import resource
import signal
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import Any, Final

import pytest

from model.files.writer import WriteError

OLD: Final = b"what stood here before"
SIZES: Final = 8
"""At how many sizes a disk is full for an export."""


@contextmanager
def room_for(size: int) -> Iterator[None]:
    """Files can grow to so many bytes and no further."""
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    before = signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
        signal.signal(signal.SIGXFSZ, before)


def refuses_when_full(write: Callable[[], object], folder: Path, sizes: int = SIZES) -> None:
    """``write`` puts files into an empty folder; on a full disk it raises WriteError and changes nothing.

    Fails where it does not.
    """
    write()
    whole = contents(folder)
    assert whole, "nothing was written"
    for path in whole:
        path.write_bytes(OLD)
    before = contents(folder)
    longest = max(map(len, whole.values()))
    for number in range(sizes):
        with room_for(number * longest // sizes), pytest.raises(WriteError) as refusal:
            write()
        assert refusal.value.file in map(str, whole)
        assert refusal.value.reason
        assert contents(folder) == before, "the old files stay, and nothing half-written is left"
    write()
    assert contents(folder).keys() == whole.keys(), "once there is room, it goes on"


def contents(folder: Path) -> Mapping[Path, bytes]:
    """All files in a folder, hidden ones too."""
    return {path: path.read_bytes() for path in sorted(folder.iterdir())}


class _Losing:
    """A stream whose writes report success and lose the last byte."""

    def __init__(self, stream: Any) -> None:
        self._stream = stream

    def __getattr__(self, name: str) -> Any:
        return getattr(self._stream, name)

    def __enter__(self) -> _Losing:
        return self

    def __exit__(self, *error: object) -> None:
        self._stream.close()

    def write(self, data: bytes) -> int:
        self._stream.write(data[:-1])
        return len(data)


@contextmanager
def losing_disk() -> Iterator[None]:
    """Every file opened for writing comes out one byte short, and nobody is told."""
    real = builtins.open

    def losing(file: Any, mode: str = "r", *more: Any, **named: Any) -> Any:
        stream = real(file, mode, *more, **named)
        return stream if "r" in mode else _Losing(stream)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(builtins, "open", losing)
        yield


def notices_loss(write: Callable[[Path, bytes], object], folder: Path) -> None:
    """Fails where ``write`` takes the losing disk at its word, or loses the old file by it."""
    path = folder / "lossy"
    path.write_bytes(OLD)
    with losing_disk(), pytest.raises(WriteError):
        write(path, OLD * 3)
    assert path.read_bytes() == OLD
