"""How many slots of a container its content takes.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from collections.abc import Iterable

from model.parts import STACK
from model.pieces import Held


def slots_needed(holds: Iterable[Held]) -> int:
    """One slot an entry; an entry over the stack size goes on in the next slot."""
    return sum(-(-held.count // STACK) for held in holds)
