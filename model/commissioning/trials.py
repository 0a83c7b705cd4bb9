"""Trials: where the carts of runs go with this or that wrong, and which faults bear on it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import cached_property
from typing import NamedTuple

from model.commissioning.faults import Fault, Kind
from model.commissioning.runs import STAYS, Run
from model.commissioning.simulation import Simulation, Turned
from model.commissioning.wiring import Wiring
from model.grid import Cell
from model.routing.junction import Junction
from model.routing.waybills import waybill_of


class Seen(NamedTuple):
    """What is seen of a cart, and the faults of which one is needed to make it otherwise."""

    outcome: str
    """The arm by which it leaves, or ``STAYS``."""
    bearing: int
    """A bit for each fault that could change the shape of a rail on the way: whatever else is wrong besides,
    with none of these the cart goes the same way."""


def numbers_in(mask: int) -> Iterator[int]:
    """The places of the bits of a mask, lowest first."""
    while mask:
        lowest = mask & -mask
        mask ^= lowest
        yield lowest.bit_length() - 1


class Trials:
    """Sends carts through a junction as designed and with faults; what was tried once is known.

    The wired switches stay as designed whatever is wrong, since there is wiring beside them. A reader takes
    only its own waybill, and no other reader holds in a run.
    """

    def __init__(self, junction: Junction, faults: Sequence[Fault]) -> None:
        self.wired = tuple(at for at in junction.switch_states if at in junction.choice.wired)
        """The wired switches in file order."""
        self._junction = junction
        self._faults = faults
        self._wiring = Wiring(junction.choice, self.wired)
        self._simulation = Simulation(junction.layout, self.wired)
        self._waybills = {r.start: waybill_of(junction, r) for r in junction.wanted if r.called}
        self._tried: dict[tuple[str, int, Turned], Seen] = {}

    def seen(self, run: Run, faults: Iterable[Fault] = ()) -> Seen:
        """What is seen of the cart of a run, by whose arm a cart can enter, with these faults."""
        faults = tuple(faults)
        held = self._held(run, faults)
        turned = frozenset((f.at, f.shape) for f in faults if f.at is not None and f.shape is not None)
        asked = (run.start, self._wiring.powered(held, faults), turned)
        if asked not in self._tried:
            self._tried[asked] = self._send(*asked)
        seen = self._tried[asked]
        return Seen(seen.outcome, seen.bearing & self._heard(held))

    def powered(self, run: Run) -> int:
        """The switches that are powered in a run as designed, a bit for each of the wired ones."""
        return self._wiring.powered(self._held(run, ()), ())

    def as_read(self, run: Run) -> Run:
        """The run as the reader of its arm sees it: a cart with a waybill that it does not take is empty."""
        takes = self._waybills.get(run.start)
        return run if run.waybill == takes else Run(run.start)

    def _held(self, run: Run, faults: Iterable[Fault]) -> frozenset[str]:
        """The arms whose lines are thrown: that of a reader that holds, and those that never let go."""
        holding = () if self.as_read(run).waybill is None else (run.start,)
        stuck = (fault.arm for fault in faults if fault.kind is Kind.LINE_STUCK and fault.arm is not None)
        return frozenset((*holding, *stuck))

    def _heard(self, held: Iterable[str]) -> int:
        """All faults but those that silence a line which is not thrown anyway."""
        silent = 0
        for arm, mask in self._silenced.items():
            silent |= 0 if arm in held else mask
        return ~silent

    @cached_property
    def _silenced(self) -> dict[str, int]:
        """By arm, the faults for which its line throws too little, a bit each."""
        silenced: dict[str, int] = {}
        for number, fault in enumerate(self._faults):
            if fault.kind in (Kind.LINE_DEAD, Kind.LINE_MISSING) and fault.arm is not None:
                silenced[fault.arm] = silenced.get(fault.arm, 0) | 1 << number
        return silenced

    def _send(self, start: str, powered: int, turned: Turned) -> Seen:
        arm = self._junction.plan.details.arm(start)
        assert arm is not None
        way = self._simulation.way(arm, powered, turned)
        bearing = 0
        for cell in way.path:
            bearing |= self._bearing_on.get(cell, 0)
        return Seen(way.arm or STAYS, bearing)

    @cached_property
    def _bearing_on(self) -> dict[Cell, int]:
        """By rail the faults that can change its shape, a bit each."""
        bearing: dict[Cell, int] = {}
        for number, fault in enumerate(self._faults):
            turned = fault.at if fault.kind is Kind.RAIL_TURNED else None
            for cell in self._simulation.reached(self._wiring.reached_by(fault), turned):
                bearing[cell] = bearing.get(cell, 0) | 1 << number
        return bearing
