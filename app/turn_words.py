"""The eight orientations in words, the same on the command line and in the window."""

from __future__ import annotations

from typing import Final

from app.translation import QT_TR_NOOP, tr
from model.grid import Turn

QUARTERS: Final = (
    "",
    QT_TR_NOOP("a quarter clockwise"),
    QT_TR_NOOP("half round"),
    QT_TR_NOOP("a quarter counter-clockwise"),
)


def turn_words(turn: Turn) -> str:
    """``as drawn``, ``mirrored, half round``: the mirror, east to west, comes before the turn."""
    said = [tr("mirrored")] if turn.mirror else []
    said += [tr(QUARTERS[turn.quarter])] if turn.quarter else []
    return ", ".join(said) or tr("as drawn")
