"""The words that the labels of edits are made of."""

from __future__ import annotations

from collections.abc import Sequence

from model.parts import Part
from model.pieces import Placed


def part_word(part: Part) -> str:
    """A part in running text: ``booster rail``, ``auto-crafter``."""
    return part.value if part is Part.AUTO_CRAFTER else part.value.replace("-", " ")


def counted(number: int, word: str) -> str:
    """``1 piece``, ``2 pieces``."""
    return f"{number:,} {word}" if number == 1 else f"{number:,} {word}s"


def replacing(foreign: Sequence[Placed]) -> str:
    """What a label adds when pieces that stood there are taken away; nothing when none did."""
    return f", replacing {len(foreign):,}" if foreign else ""
