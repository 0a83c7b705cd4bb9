"""The signal torch: lit unless its block is powered, and put out when it changes too often.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

DELAY: Final = 2
"""Ticks from the change of its block to its own."""
CHANGES: Final = 9
"""So many changes, to either side, within ``WITHIN`` put it out."""
WITHIN: Final = 60
"""Ticks between the first and the last of them, at most."""
OUT_FOR: Final = 160
"""Ticks for which it stays out then."""


def called_for(block_power: int) -> int:
    """The output that the power of its block calls for."""
    return 0 if block_power else 15


def burns_out(changes: Sequence[int]) -> bool:
    """Whether the last of these changes, each with its tick, puts a torch out."""
    return len(changes) >= CHANGES and changes[-1] - changes[-CHANGES] <= WITHIN
