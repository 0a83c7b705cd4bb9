"""Commissioning: the runs that show whether a junction was built as designed, and what each would show."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cached_property
from typing import NamedTuple

from model.commissioning.alike import groups_alike
from model.commissioning.cover import fewest_that_cover
from model.commissioning.faults import Fault, Kind, possible_faults
from model.commissioning.runs import STAYS, Run, possible_runs
from model.commissioning.simulation import Simulation, Turned
from model.commissioning.wiring import Wiring
from model.grid import Cell
from model.routing.junction import Junction
from model.routing.waybills import waybill_of


class Seen(NamedTuple):
    """What is seen of a cart, and the faults that might have made it otherwise."""

    outcome: str
    """The arm by which it leaves, or ``STAYS``."""
    bearing: int
    """A bit for each of ``Commissioning.faults`` that can change the shape of a rail on its way: with none of
    these, whatever else is wrong, the cart goes the same way."""


def numbers_in(mask: int) -> Iterator[int]:
    """The places of the bits of a mask, lowest first."""
    while mask:
        lowest = mask & -mask
        mask ^= lowest
        yield lowest.bit_length() - 1


class Commissioning:
    """A junction about to be tested; each thing is worked out when it is first asked for.

    The wired switches stay as designed whatever is wrong, since there is wiring beside them. A reader takes
    only its own waybill, and no other reader holds in a run.
    """

    def __init__(self, junction: Junction) -> None:
        self.junction = junction
        self.wired = tuple(at for at in junction.switch_states if at in junction.choice.wired)
        """The wired switches in file order."""
        self._wiring = Wiring(junction.choice, self.wired)
        self._simulation = Simulation(junction.layout, self.wired)
        self._seen: dict[tuple[str, int, Turned], Seen] = {}

    @cached_property
    def faults(self) -> tuple[Fault, ...]:
        """Every single fault that is looked for; see ``possible_faults``."""
        return possible_faults(self.junction)

    @cached_property
    def runs(self) -> tuple[Run, ...]:
        """Every run that a test can be made of; see ``possible_runs``."""
        return possible_runs(self.junction)

    @cached_property
    def tests(self) -> tuple[Run, ...]:
        """The fewest runs that show every fault that some run shows; among such choices the earliest runs."""
        shown = [{fault for fault, by in self._shown_by.items() if run in by} for run in self.runs]
        return tuple(self.runs[place] for place in fewest_that_cover(shown))

    @cached_property
    def hidden(self) -> tuple[Fault, ...]:
        """The faults that no run can show."""
        return tuple(fault for fault, by in self._shown_by.items() if not by)

    @cached_property
    def alike(self) -> tuple[tuple[Fault, ...], ...]:
        """Groups of faults that some run shows, but none tells from one another."""
        responses = {fault: tuple(by.items()) for fault, by in self._shown_by.items() if by}
        return tuple(group for group in groups_alike(responses) if len(group) > 1)

    def can_send(self, run: Run) -> bool:
        """Whether a cart can come in by the arm of a run."""
        return self.junction.can_enter(run.start)

    def outcome(self, run: Run, faults: Iterable[Fault] = ()) -> str:
        """The arm by which the cart of a run leaves with these faults, or ``STAYS``. Needs ``can_send``."""
        return self.seen(run, faults).outcome

    def seen(self, run: Run, faults: Iterable[Fault] = ()) -> Seen:
        """The same with the faults that bear on it."""
        faults = tuple(faults)
        powered = self.powered(run, faults)
        turned = frozenset((f.at, f.shape) for f in faults if f.at is not None and f.shape is not None)
        asked = (run.start, powered, turned)
        if asked not in self._seen:
            self._seen[asked] = self._send(*asked)
        return self._seen[asked]

    def powered(self, run: Run, faults: Iterable[Fault] = ()) -> int:
        """The switches that are powered in a run, a bit for each of the wired ones."""
        holds = self.as_read(run).waybill is not None
        return self._wiring.powered(run.start if holds else None, faults)

    def as_read(self, run: Run) -> Run:
        """The run as the reader of its arm sees it: a cart with a waybill that it does not take is empty."""
        takes = self._waybills.get(run.start)
        return run if run.waybill == takes else Run(run.start)

    @cached_property
    def _waybills(self) -> dict[str, str | None]:
        """By arm, what its reader takes."""
        return {r.start: waybill_of(self.junction, r) for r in self.junction.wanted if r.called}

    @cached_property
    def _shown_by(self) -> dict[Fault, dict[Run, str]]:
        """By fault the runs that show it, each with where the cart then goes."""
        shown: dict[Fault, dict[Run, str]] = {fault: {} for fault in self.faults}
        for run in self.runs:
            nominal = self.seen(run)
            for number in numbers_in(nominal.bearing):
                fault = self.faults[number]
                outcome = self.outcome(run, (fault,))
                if outcome != nominal.outcome:
                    shown[fault][run] = outcome
        return shown

    def _send(self, start: str, powered: int, turned: Turned) -> Seen:
        arm = self.junction.plan.details.arm(start)
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
        for number, fault in enumerate(self.faults):
            turned = fault.at if fault.kind is Kind.RAIL_TURNED else None
            for cell in self._simulation.reached(self._wiring.reached_by(fault), turned):
                bearing[cell] = bearing.get(cell, 0) | 1 << number
        return bearing
