"""The eight orientations in words, the same on the command line and in the window."""

from __future__ import annotations

from typing import Final

from app.translation import tr
from model.grid import Turn

QUARTERS: Final = ("", "a quarter clockwise", "half round", "a quarter counter-clockwise")


def turn_words(turn: Turn) -> str:
    """``as drawn``, ``mirrored, half round``: the mirror, east to west, comes before the turn."""
    said = ["mirrored"] if turn.mirror else []
    said += [QUARTERS[turn.quarter]] if turn.quarter else []
    return ", ".join(said) or tr("as drawn")
