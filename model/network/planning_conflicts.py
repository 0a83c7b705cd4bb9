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
    odds: tuple[int, ...]
    """For each reader those that it is at odds with, as bits. It matters where both are called."""

    @property
    def readers(self) -> list[int]:
        """Those that are called, in order."""
        return list(members(self.called))

    def compact(self) -> list[int]:
        """``odds`` of those that are called only, numbered by their place in ``readers``."""
        place = {reader: number for number, reader in enumerate(self.readers)}
        result: list[int] = []
        for reader in self.readers:
            bits = bytearray(len(place) // 8 + 1)
            for other in members(self.odds[reader] & self.called):
                bits[place[other] >> 3] |= 1 << (place[other] & 7)
            result.append(int.from_bytes(bits, "little"))
        return result


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
    odds = list(before)
    for reader, others in enumerate(before):
        for other in members(others):
            odds[other] |= bits[reader]
    return Conflicts(called, tuple(odds))
