"""The words that the labels of edits are made of."""

from __future__ import annotations

from collections.abc import Sequence

from model.parts import Part
from model.pieces import Placed
from model.wording import tr


def part_word(part: Part) -> str:
    """A part in running text: ``booster rail``, ``auto-crafter``."""
    return tr(plain_word(part))


def plain_word(part: Part) -> str:
    """The same in English, as the catalogue of texts has it."""
    return part.value if part is Part.AUTO_CRAFTER else part.value.replace("-", " ")


def counted(number: int, word: str) -> str:
    """``1 piece``, ``2 pieces``: for what is said in English alone."""
    return f"{number:,} {word}" if number == 1 else f"{number:,} {word}s"


def counted_text(part: Part) -> str:
    """Parts that are counted, for ``tr`` to look up: ``%n booster rail(s)``."""
    return f"%n {plain_word(part)}(s)"


def replacing(foreign: Sequence[Placed]) -> str:
    """What a label adds when pieces that stood there are taken away; nothing when none did."""
    return tr(", replacing {count:,}", count=len(foreign)) if foreign else ""
