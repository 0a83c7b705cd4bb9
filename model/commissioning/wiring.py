"""Which switches are powered in a run, as designed and with faults in the wiring."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from model.commissioning.faults import Fault, Kind
from model.grid import Cell
from model.routing.choice import Choice


class Wiring:
    """The wired switches in file order, each a bit, so that a setting is a whole number."""

    def __init__(self, choice: Choice, wired: Sequence[Cell]) -> None:
        self._bit: dict[Cell | None, int] = {cell: 1 << index for index, cell in enumerate(wired)}
        self._idle = self.mask(choice.idle)
        self._thrown = {arm: self.mask(cells) for arm, cells in choice.thrown.items()}

    def mask(self, cells: Iterable[Cell]) -> int:
        """The bits of some wired switches."""
        return sum(self._bit[cell] for cell in cells)

    def powered(self, held: frozenset[str], faults: Iterable[Fault]) -> int:
        """The powered switches while the lines of these arms are thrown.

        An inverter too many, or one missing, turns the signal round whatever the lines do.
        """
        idle, thrown = self._idle, self._thrown
        for fault in faults:
            match fault.kind:
                case Kind.INVERTER_MISSING | Kind.INVERTER_EXTRA:
                    idle ^= self._bit[fault.at]
                case Kind.LINE_DEAD:
                    thrown = thrown | {str(fault.arm): 0}
                case Kind.LINE_MISSING:
                    thrown = thrown | {str(fault.arm): thrown[str(fault.arm)] & ~self._bit[fault.at]}
        changed = 0
        for arm in held:
            changed |= thrown.get(arm, 0)
        return idle ^ changed

    def reached_by(self, fault: Fault) -> int:
        """The switches whose signal a fault can change; none for a rail that lies otherwise."""
        if fault.arm is not None and fault.at is None:
            return self._thrown[fault.arm]
        return self._bit.get(fault.at, 0)
