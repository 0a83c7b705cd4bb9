"""How long buttons, detector rails, hoppers and auto-crafters take, in ticks.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from typing import Final

from model.pieces import Piece

PRESSED: Final = 20
"""For which a button stays on."""
PRESSED_WOODEN: Final = 30
LOOK: Final = 20
"""Between two looks of a detector rail that is on."""
HOPPER_REST: Final = 8
"""From one action of a hopper to the next."""
CRAFT: Final = 4
"""From the rise of the signal to the craft."""


def pressed_for(button: Piece) -> int:
    """For how many ticks a button stays on."""
    return PRESSED_WOODEN if button.wooden else PRESSED
