"""The words that the labels of edits are made of."""

from __future__ import annotations

from collections.abc import Sequence

from model.parts import Part
from model.pieces import WAYBILL, Held, Placed
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


def held_words(held: Held) -> str:
    """``22 waybills “Apple”``, ``3 ingot``."""
    if not held.item.startswith(WAYBILL):
        return f"{held.count:,} {held.item}"
    return tr("%n waybill(s) “{name}”", "", held.count, name=held.item.removeprefix(WAYBILL))


def replacing(step: str, foreign: Sequence[Placed]) -> str:
    """The label of a step, with what it takes away of what stood there."""
    return tr("{step}, replacing {count:,}", step=step, count=len(foreign)) if foreign else step
