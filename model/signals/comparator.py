"""The comparator: what it makes of its back and its sides.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from typing import Final

from model.parts import Mode
from model.signals.containers import STRONGEST

DELAY: Final = 2
"""Ticks from the change of an input to its own."""


def called_for(mode: Mode, back: int, side: int) -> int:
    """The output for the back and the greater of the two sides, each 0 to 15.

    *Compare* lets the back through unless a side is greater; *subtract* takes the side off it, down to 0.
    """
    if mode is Mode.SUBTRACT:
        return max(0, back - side)
    return back if side <= back else 0


def through_block(power: int, reading: int) -> int:
    """The back where a container stands behind the block: its reading, unless the block has full power."""
    return power if power == STRONGEST else reading
