"""How much memory this process uses, and whether that grows by what is done over and over."""

from __future__ import annotations

import ctypes
import gc
import os
import re
import sys
from collections.abc import Callable
from tempfile import TemporaryFile
from typing import Final

GROWTH: Final = 20 * 1024 * 1024
"""Bytes that 10,000 events may leave behind."""
PER: Final = 10_000


def in_use() -> int:
    """Bytes that are in use now, what nobody refers to any more taken away.

    What was used once and is free again is not counted, though it may stay with the process: how much that is
    hangs on the most that was ever used at once.
    """
    gc.collect()
    return _of_python() + _of_c()


def grows_little(act: Callable[[int], object], warm_up: int, events: int) -> None:
    """Does ``act`` so many times, after a warm-up that fills caches; fails where too much stays behind."""
    act(warm_up)
    before = in_use()
    act(events)
    grown = in_use() - before
    assert grown * PER <= GROWTH * events, f"{events:,} events left {grown / 1024 / 1024:.1f} MB behind"


def _of_python() -> int:
    """What small objects take; Python tells it on the standard error of C alone."""
    sys.stderr.flush()
    kept = os.dup(2)
    with TemporaryFile() as file:
        os.dup2(file.fileno(), 2)
        try:
            sys._debugmallocstats()
        finally:
            os.dup2(kept, 2)
            os.close(kept)
        file.seek(0)
        told = re.search(rb"# bytes in allocated blocks\s*=\s*([\d,]+)", file.read())
    assert told is not None, "Python tells its memory in other words"
    return int(told[1].replace(b",", b""))


class _Mallinfo2(ctypes.Structure):
    """As in ``malloc.h`` of the GNU C library, 2.33 or later (mallinfo(3))."""

    _fields_ = tuple(
        (name, ctypes.c_size_t)
        for name in (
            "arena", "ordblks", "smblks", "hblks", "hblkhd", "usmblks", "fsmblks", "uordblks", "fordblks",
            "keepcost",
        )
    )  # fmt: skip


def _of_c() -> int:
    """What all others take, Qt among them: from the heap, and large blocks of their own."""
    ask = ctypes.CDLL(None).mallinfo2
    ask.restype = _Mallinfo2
    told = ask()
    return int(told.uordblks + told.hblkhd)
