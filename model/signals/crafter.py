"""What an auto-crafter makes. Common practice of the trade, written from memory, no published source."""

from __future__ import annotations

from typing import Final

from model.signals.items import Slots, one_less

INGOT: Final = "ingot"
NUGGET: Final = "nugget"


def craft(slots: Slots) -> tuple[str, int, Slots] | None:
    """What is made, how many of it, and the slots afterwards; ``None`` where there is nothing to make.

    An ingot alone, in the one slot that is used, gives nine nuggets; nuggets in all nine slots give an ingot.
    One item is used from each slot.
    """
    used = [index for index, slot in enumerate(slots) if slot]
    kinds = {slot[0] for slot in slots if slot}
    if len(used) == 1 and kinds == {INGOT}:
        made, count = NUGGET, 9
    elif len(used) == len(slots) and kinds == {NUGGET}:
        made, count = INGOT, 1
    else:
        return None
    for index in used:
        slots = one_less(slots, index)
    return made, count, slots


def slots_in_use(slots: Slots) -> int:
    """What a comparator reads from it."""
    return sum(slot is not None for slot in slots)
