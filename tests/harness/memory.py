"""How much memory this process holds, and whether it grows by what is done over and over."""

from __future__ import annotations

import ctypes
import gc
import os
from collections.abc import Callable
from pathlib import Path
from typing import Final

PAGE: Final = os.sysconf("SC_PAGE_SIZE")
GROWTH: Final = 20 * 1024 * 1024
"""Bytes that 10,000 events may leave behind."""
PER: Final = 10_000


def resident() -> int:
    """Bytes in memory now, what nobody refers to any more taken away.

    What earlier tests gave back lies with the allocator, which would hand it out again unseen; it goes back
    to the system first.
    """
    gc.collect()
    ctypes.CDLL(None).malloc_trim(0)
    return int(Path("/proc/self/statm").read_text().split()[1]) * PAGE


def grows_little(act: Callable[[int], object], warm_up: int, events: int) -> None:
    """Does ``act`` so many times, after a warm-up that fills caches; fails where too much stays behind."""
    act(warm_up)
    before = resident()
    act(events)
    grown = resident() - before
    assert grown * PER <= GROWTH * events, f"{events:,} events left {grown / 1024 / 1024:.1f} MB behind"
