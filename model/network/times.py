"""How long carts are on their way, where nothing holds them up."""

from __future__ import annotations

from typing import Final

CELLS_A_SECOND: Final = 8
"""The highest speed of a cart. Common practice of the trade, written from memory, no published source."""
HOUR: Final = 3600
WEEK: Final = 7 * 24 * HOUR
"""Seconds."""


def seconds_for(cells: float) -> float:
    """For as many cells at the highest speed."""
    return cells / CELLS_A_SECOND
