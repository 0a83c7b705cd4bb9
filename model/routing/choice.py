"""A choice of wired switches: which are powered at idle, and which each reader throws."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

import msgspec

from model.grid import Cell


class Choice(msgspec.Struct, frozen=True):
    """Which switches are powered while no reader holds, and which each reader throws."""

    idle: frozenset[Cell] = frozenset()
    """Powered at idle: these need an inverter."""
    thrown: dict[str, frozenset[Cell]] = {}
    """By the arm of the reader: the switches whose signal it changes."""

    @property
    def wired(self) -> frozenset[Cell]:
        """The switches that some reader throws or that are powered at idle."""
        return self.idle.union(*self.thrown.values())

    def setting(self, held: Iterable[str] = ()) -> frozenset[Cell]:
        """The powered switches while the readers of these arms hold; one thrown by two stays thrown."""
        return self.idle ^ frozenset[Cell]().union(*(self.thrown.get(arm, frozenset()) for arm in held))

    def called_by(self, cell: Cell) -> tuple[str, ...]:
        """The arms whose reader throws the switch, sorted."""
        return tuple(sorted(arm for arm, cells in self.thrown.items() if cell in cells))


COUNT_BITS: Final = 48
"""Room for each count in a cost; more switches or throws than 2^48 do not fit into memory."""


class Costs:
    """Costs as whole numbers that add up, the graver part in the higher bits.

    From high to low: wanted routes not reached, inverters, throws summed over the readers, wired switches,
    then a bit for every "powered at idle" and "thrown by this reader", reading the switches in file order.
    """

    def __init__(self, switches: Sequence[int], readers: Sequence[str]) -> None:
        settings = 1 + len(readers)
        bits = len(switches) * settings
        self._rank = {switch: index for index, switch in enumerate(switches)}
        self._bits = bits
        self._settings = settings
        self.wired = 1 << bits
        self.throw = self.wired << COUNT_BITS
        self.inverter = self.throw << COUNT_BITS
        self.not_reached = self.inverter << COUNT_BITS

    def of_idle(self, switch: int) -> int:
        """A switch powered at idle."""
        return self.inverter + self._place(switch, 0)

    def of_throw(self, switch: int, reader: int) -> int:
        """A switch thrown by a reader, given by its place in the list of readers."""
        return self.throw + self._place(switch, 1 + reader)

    def _place(self, switch: int, column: int) -> int:
        return 1 << (self._bits - 1 - self._rank[switch] * self._settings - column)
