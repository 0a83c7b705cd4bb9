"""What the view in depth shows, in words: for screen readers, and for its foot."""

from __future__ import annotations

from collections.abc import Mapping

from app.depth.projection import Isometric
from app.depth.stack import Stack
from app.panels.words import number
from app.translation import QT_TR_NOOP, tr

FROM = {
    "south-east": QT_TR_NOOP("Seen from the south-east."),
    "north-east": QT_TR_NOOP("Seen from the north-east."),
    "north-west": QT_TR_NOOP("Seen from the north-west."),
    "south-west": QT_TR_NOOP("Seen from the south-west."),
}


def pieces_words(pieces: int) -> str:
    """``96 pieces``."""
    return tr("%n piece(s)", "", pieces)


def level_words(level: int) -> str:
    """``Level −3``."""
    return tr("Level {level}", level=number(level))


def seen_words(view: Isometric) -> str:
    """``Seen from the south-east.``"""
    return tr(FROM[view.seen_from])


def gap_words(gap: float) -> str:
    """``Levels 12 cells apart.``"""
    return tr("Levels %n cell(s) apart.", "", round(gap))


def picture_words(view: Isometric, stack: Stack, pieces: Mapping[int, int], own: int) -> str:
    """The picture for who cannot see it: the view, and each level from the top down."""
    if not stack.levels:
        return tr("No level is shown: nothing stands there.")
    said = [seen_words(view), gap_words(stack.gap)]
    for level in reversed(stack.levels):
        line = f"{level_words(level)}: {pieces_words(pieces[level])}"
        said.append(tr("{line}, drawn on.", line=line) if level == own else f"{line}.")
    return " ".join(said)
