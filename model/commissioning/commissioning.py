"""Commissioning: the runs that show whether a junction was built as designed, and what they show."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property

from model.commissioning.alike import groups_alike
from model.commissioning.cover import fewest_that_cover
from model.commissioning.faults import Fault, possible_faults
from model.commissioning.runs import Run, possible_runs
from model.commissioning.trials import Trials, numbers_in
from model.routing.junction import Junction


class Commissioning:
    """A junction about to be tested; each thing is worked out when it is first asked for."""

    def __init__(self, junction: Junction) -> None:
        self.junction = junction

    @cached_property
    def faults(self) -> tuple[Fault, ...]:
        """Every single fault that is looked for; see ``possible_faults``."""
        return possible_faults(self.junction)

    @cached_property
    def runs(self) -> tuple[Run, ...]:
        """Every run that a test can be made of; see ``possible_runs``."""
        return possible_runs(self.junction)

    @cached_property
    def trials(self) -> Trials:
        """Where carts go."""
        return Trials(self.junction, self.faults)

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
        return self.trials.seen(run, faults).outcome

    @cached_property
    def _shown_by(self) -> dict[Fault, dict[Run, str]]:
        """By fault the runs that show it, each with where the cart then goes."""
        shown: dict[Fault, dict[Run, str]] = {fault: {} for fault in self.faults}
        for run in self.runs:
            nominal = self.trials.seen(run)
            for number in numbers_in(nominal.bearing):
                fault = self.faults[number]
                outcome = self.outcome(run, (fault,))
                if outcome != nominal.outcome:
                    shown[fault][run] = outcome
        return shown
