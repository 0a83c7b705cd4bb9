"""Lengths as times and in words, and figures as the window writes them."""

from __future__ import annotations

from typing import Final

from app.translation import tr

CELLS_A_SECOND: Final = 8.0
"""The speed of a cart on boosted track.

Common practice of the trade, written from memory, no published source.
"""


def time_words(cells: int | None) -> str:
    """``52 s``, ``3 min 05 s``; a dash where there is no way."""
    if cells is None:
        return "—"
    seconds = round(cells / CELLS_A_SECOND)
    return (
        tr("{seconds} s", seconds=seconds)
        if seconds < 60
        else tr("{minutes} min {seconds:02} s", minutes=seconds // 60, seconds=seconds % 60)
    )


def length_words(cells: int) -> str:
    """``1,204 cells, 2 min 31 s``."""
    return tr("{length} cells, {time}", length=figure(cells), time=time_words(cells))


def clock_words(cells: int | None) -> str:
    """``0:52``, ``3:05``: minutes and seconds, for a narrow column."""
    if cells is None:
        return "—"
    seconds = round(cells / CELLS_A_SECOND)
    return f"{seconds // 60}:{seconds % 60:02}"


def figure(value: int | float) -> str:
    """``1,204``; ``3.5``."""
    return f"{value:,}" if value == int(value) else f"{value:,.2f}".rstrip("0")
