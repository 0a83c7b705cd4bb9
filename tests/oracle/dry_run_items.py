"""Slots, hoppers and crafts.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from tests.oracle.dry_run_pieces import SLOTS, Piece, front, step
from tests.oracle.shapes import Place

STACK = 64
Slots = list[tuple[str, int] | None]
"""One entry a slot: the item and how many, or nothing."""


def filled(part: str, holds: tuple[tuple[str, int], ...]) -> Slots:
    """The slots of a container with that content."""
    size = SLOTS[part]
    if part == "hopper" and len(holds) == 1 and 5 <= holds[0][1] <= 68:
        item, count = holds[0]
        return [(item, count - size + 1), *[(item, 1)] * (size - 1)]
    slots = in_stacks(holds)
    assert len(slots) <= size
    return slots + [None] * (size - len(slots))


def in_stacks(holds: tuple[tuple[str, int], ...]) -> Slots:
    """One entry a slot, and what is over the stack size in the next."""
    slots: Slots = []
    for item, count in holds:
        while count > 0:
            slots.append((item, min(count, STACK)))
            count -= STACK
    return slots


def fitting(part: str, slots: Slots, item: str) -> int | None:
    """The slot that an item coming in goes to: in a crafter the emptiest, else the first with room."""
    room = [
        number for number, slot in enumerate(slots) if slot is None or (slot[0] == item and slot[1] < STACK)
    ]
    if part == "auto-crafter":
        room.sort(key=lambda number: count_in(slots[number]))
    return room[0] if room else None


def count_in(slot: tuple[str, int] | None) -> int:
    """How many a slot holds."""
    return 0 if slot is None else slot[1]


def put(part: str, slots: Slots, item: str) -> bool:
    """Put one item in; whether it found room."""
    number = fitting(part, slots, item)
    if number is None:
        return False
    slots[number] = (item, count_in(slots[number]) + 1)
    return True


def take_from(slots: Slots, number: int) -> None:
    """Take one item out of a slot."""
    item, count = slots[number] or ("", 0)
    slots[number] = (item, count - 1) if count > 1 else None


def give(hopper: Piece, parts: dict[Place, str], slots: dict[Place, Slots]) -> bool:
    """The hopper gives its very first item to the container that it faces; whether it did."""
    to = front(hopper)
    own = slots[hopper.at]
    number = next((number for number, slot in enumerate(own) if slot is not None), None)
    if number is None or to not in slots or not put(parts[to], slots[to], own[number][0]):
        return False
    take_from(own, number)
    return True


def take(hopper: Piece, above: Slots, own: Slots) -> bool:
    """The hopper takes the first item that fits from what is above it; whether it did."""
    for number, slot in enumerate(above):
        if slot is not None and put("hopper", own, slot[0]):
            take_from(above, number)
            return True
    return False


def craft(slots: Slots) -> list[str]:
    """Use up what a recipe needs, one from each slot; what comes of it, one by one."""
    used = [number for number, slot in enumerate(slots) if slot is not None]
    items = {slot[0] for slot in slots if slot is not None}
    if len(used) == 1 and items == {"ingot"}:
        made = ["nugget"] * 9
    elif len(used) == len(slots) and items == {"nugget"}:
        made = ["ingot"]
    else:
        return []
    for number in used:
        take_from(slots, number)
    return made


def touched(piece: Piece, slots: dict[Place, Slots]) -> set[Place]:
    """The containers that a hopper or auto-crafter may put into or take from."""
    cells = {piece.at, front(piece)}
    if piece.part == "hopper":
        cells.add(step(piece.at, "up"))
    return cells & set(slots)
