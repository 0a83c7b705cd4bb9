"""Which readers must take different waybills.

A cart that passes a reader by its default while it still carries a waybill for a later one loses it there if
both take the same. Two readers that are both called may take the same: the cart carries two of it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import msgspec

from model.network.colouring import members


class Conflicts(msgspec.Struct, frozen=True):
    """Readers that are called, and which of them need different names."""

    called: int
    """As bits."""
    before: tuple[int, ...]
    """For each reader those that are passed by their default with a waybill for it, as bits.

    They need another name than it, if they have one, being called by somebody.
    """

    @property
    def readers(self) -> list[int]:
        """Those that are called, in order."""
        return list(members(self.called))

    def odds(self) -> list[int]:
        """Which of those that are called need different names, numbered by their place in ``readers``."""
        place = {reader: number for number, reader in enumerate(self.readers)}
        rows = [bytearray(len(place) // 8 + 1) for _ in place]
        for reader, here in place.items():
            row, byte, bit = rows[here], here >> 3, 1 << (here & 7)
            for other in members(self.before[reader] & self.called):
                there = place[other]
                row[there >> 3] |= 1 << (there & 7)
                rows[there][byte] |= bit
        return [int.from_bytes(row, "little") for row in rows]


def conflicts(defaults: Sequence[int | None], runs: Iterable[Sequence[int]]) -> Conflicts:
    """What follows from runs, each the turns that a cart takes, in order.

    Where a default is unknown neither passing nor calling is counted.
    """
    bits = [1 << reader for reader in range(len(defaults))]
    before = [0] * len(defaults)
    called = 0
    for turns in runs:
        passed = 0
        for turn in turns:
            reader, way = turn >> 1, turn & 1
            default = defaults[reader]
            if default == way:
                passed |= bits[reader]
            elif default is not None:
                called |= bits[reader]
                before[reader] |= passed
    return Conflicts(called, tuple(before))
