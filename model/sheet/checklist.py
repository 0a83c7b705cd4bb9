"""The test checklist: the fewest runs that show every fault, and what they cannot show."""

from __future__ import annotations

from collections.abc import Sequence
from functools import reduce
from typing import Final

import msgspec

from model.commissioning import Commissioning, Fault
from model.wording import tr

NAMED: Final = 4
"""Faults of one group that are named, at most."""


class ChecklistRun(msgspec.Struct, frozen=True):
    """A cart to push in, and where it must come out."""

    number: int
    start: str
    waybill: str | None
    """The one that the cart carries; ``None`` for an empty cart."""
    expect: str
    """The arm by which it leaves where nothing is wrong; ``stays`` where it reaches none."""


class Checklist(msgspec.Struct, frozen=True):
    """The fewest runs that show every single fault that any run can show."""

    runs: tuple[ChecklistRun, ...]
    faults: int
    """How many single faults are looked for."""
    hidden: tuple[str, ...]
    """Those that no run can show, as clauses."""
    alike: tuple[str, ...]
    """Those that no run can tell from one another, a group a clause."""

    @property
    def verdict(self) -> str:
        """How much the runs show."""
        if not self.faults:
            return tr("None of the faults that are looked for can be there: no run is needed.")
        shown = tr(
            "{shown:,} of {faults}",
            shown=self.faults - len(self.hidden),
            faults=tr("%n single fault(s)", "", self.faults),
        )
        runs = (
            tr("This run shows")
            if len(self.runs) == 1
            else tr("These {runs} show", runs=tr("%n run(s)", "", len(self.runs)))
        )
        return (
            tr("{runs} {shown}.", runs=runs, shown=shown)
            if self.runs
            else tr("No run can show any of {faults}.", faults=tr("%n fault(s)", "", self.faults))
        )


def checklist(commissioning: Commissioning) -> Checklist:
    """The test runs of a junction in words."""
    return Checklist(
        tuple(
            ChecklistRun(number, run.start, run.waybill, commissioning.outcome(run))
            for number, run in enumerate(commissioning.tests, start=1)
        ),
        len(commissioning.faults),
        tuple(fault.words for fault in commissioning.hidden),
        tuple(map(_either, commissioning.alike)),
    )


def _either(group: Sequence[Fault]) -> str:
    named = [fault.words for fault in group[:NAMED]]
    left = len(group) - len(named)
    return reduce(_or, [*named, tr("one of {left:,} more", left=left)] if left else named)


def _or(first: str, second: str) -> str:
    return tr("{first}, or {second}", first=first, second=second)
