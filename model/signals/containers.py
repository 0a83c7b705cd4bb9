"""What lies in the slots of a container, and the strength that a comparator reads from it.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from typing import Final

from model.parts import STACK, TRAITS, Part
from model.pieces import Held, Piece

STRONGEST: Final = 15
"""The strength of a full container."""


def slots(piece: Piece) -> tuple[Held, ...]:
    """The filled slots of a container, in order, none over a stack.

    An entry over the stack size goes on in the next slot. A hopper with a single entry that fills its slots
    keeps one item in each but the first, and the rest in the first: so the items do not wander.
    """
    count = TRAITS[piece.part].slots
    if piece.part is Part.HOPPER and len(piece.holds) == 1 and _can_spread(piece.holds[0], count):
        held = piece.holds[0]
        rest = held.count - (count - 1)
        return (Held(held.item, rest), *(Held(held.item, 1) for _ in range(count - 1)))
    return tuple(stack for held in piece.holds for stack in stacks(held))


def reading(piece: Piece) -> int:
    """The strength, 0 to 15, that a comparator reads: 0 when empty, else floor(1 + 14 · mean fill).

    The mean fill is the sum over the slots of count / stack size, divided by the number of slots. An
    auto-crafter reads as the number of its slots in use.
    """
    if piece.part is Part.AUTO_CRAFTER:
        return len(slots(piece))
    return strength_of(sum(held.count for held in slots(piece)), TRAITS[piece.part].slots)


def strength_of(items: int, slots: int) -> int:
    """The same for so many items, all of which stack alike, in so many slots."""
    return 1 + (STRONGEST - 1) * items // (STACK * slots) if items else 0


def _can_spread(held: Held, count: int) -> bool:
    return count <= held.count <= STACK + count - 1


def stacks(held: Held) -> list[Held]:
    """An entry as stacks, the last of them with what is left over."""
    full, over = divmod(held.count, STACK)
    return [Held(held.item, STACK)] * full + ([Held(held.item, over)] if over else [])
