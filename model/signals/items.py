"""Items in slots: what goes in where, and what comes out first.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from model.parts import STACK
from model.pieces import Held

Slot = tuple[str, int] | None
"""An item and how many of it; ``None`` is an empty slot."""
Slots = tuple[Slot, ...]
"""The slots of a container, the empty ones too. A value: moving an item makes others."""

CART_SLOTS: Final = 27
"""Slots of a storage cart."""


def slots_of(held: Sequence[Held], count: int) -> Slots:
    """So many slots, the first of them filled with what is held, one an entry."""
    filled: list[Slot] = [(each.item, each.count) for each in held]
    return (*filled, *(None for _ in range(count - len(filled))))


def items_in(slots: Slots) -> int:
    """How many items there are in all."""
    return sum(slot[1] for slot in slots if slot)


def count_of(slots: Slots, item: str) -> int:
    """How many there are of one item."""
    return sum(slot[1] for slot in slots if slot and slot[0] == item)


def kinds_in(slots: Slots) -> Iterator[str]:
    """The items in the order of the slots; one that fills two slots comes twice."""
    return (slot[0] for slot in slots if slot)


def with_item(slots: Slots, item: str) -> Slots | None:
    """With one more item, in the first slot that is empty or has room; ``None`` where it does not fit."""
    for index, slot in enumerate(slots):
        if _fits(slot, item):
            return _one_more(slots, index, item)
    return None


def with_item_spread(slots: Slots, item: str) -> Slots | None:
    """The same for an auto-crafter: it goes to the emptiest slot that it fits, the first of several."""
    fitting = [index for index, slot in enumerate(slots) if _fits(slot, item)]
    if not fitting:
        return None
    return _one_more(slots, min(fitting, key=lambda index: _count(slots[index])), item)


def without_item(slots: Slots, item: str) -> Slots:
    """With one less of the item, out of the first slot with it. Raises ValueError where there is none."""
    index = next((index for index, slot in enumerate(slots) if slot and slot[0] == item), None)
    if index is None:
        raise ValueError(f"no {item}")
    return one_less(slots, index)


def one_less(slots: Slots, index: int) -> Slots:
    """With one item less in a slot that is not empty."""
    slot = slots[index]
    assert slot is not None
    left: Slot = (slot[0], slot[1] - 1) if slot[1] > 1 else None
    return (*slots[:index], left, *slots[index + 1 :])


def _fits(slot: Slot, item: str) -> bool:
    return slot is None or (slot[0] == item and slot[1] < STACK)


def _count(slot: Slot) -> int:
    return 0 if slot is None else slot[1]


def _one_more(slots: Slots, index: int, item: str) -> Slots:
    return (*slots[:index], (item, _count(slots[index]) + 1), *slots[index + 1 :])
