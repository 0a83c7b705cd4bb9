"""Fault finding: what explains what the carts did, and which run to make next."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from math import log2
from typing import Final

import msgspec

from model.commissioning.built_otherwise import turns_that_fit
from model.commissioning.commissioning import Commissioning
from model.commissioning.faults import Fault, go_together
from model.commissioning.hitting import hitting_tree
from model.commissioning.runs import Observed, Run
from model.commissioning.trials import numbers_in
from model.grid import Turn

MOST_FAULTS: Final = 2
"""Faults in one diagnosis."""
LIKELIHOOD: Final = 0.01
"""Of one fault more, beside one fault less."""

Faults = tuple[Fault, ...]


class Diagnosis(msgspec.Struct, frozen=True):
    """What may be wrong with a junction."""

    built_otherwise: tuple[Turn, ...]
    """Where the plan as designed does not explain what was seen: the turns after which it would."""
    diagnoses: tuple[Faults, ...]
    """The smallest sets of faults that explain all that was seen, by increasing size; the empty one alone
    where nothing is wrong. None where no one or two faults do."""
    next_run: Run | None
    """The run that tells most of the diagnoses from one another; ``None`` where none does."""


def diagnose(commissioning: Commissioning, observed: Sequence[Observed]) -> Diagnosis:
    """All diagnoses of up to two faults, and what to do next. Each run observed needs ``can_send``.

    A fault is there in all runs; one that comes and goes is no diagnosis.
    """
    unexpected_first = sorted(observed, key=lambda each: commissioning.outcome(each.run) == each.saw)
    faults, trials = commissioning.faults, commissioning.trials

    def missing(chosen: frozenset[int]) -> Iterable[int] | None:
        """The faults of which one must be added: of the runs not explained, those that bear on the one on
        which the fewest bear."""
        there = tuple(faults[number] for number in chosen)
        tried = ((trials.seen(each.run, there), each.saw) for each in unexpected_first)
        bearing = (seen.bearing for seen, saw in tried if seen.outcome != saw)
        if len(chosen) == MOST_FAULTS:
            fewest = next(bearing, None)  # none will be added, so that any will do
        else:
            fewest = min(bearing, key=int.bit_count, default=None)
        return None if fewest is None else _besides(commissioning, there, fewest)

    found = hitting_tree(missing, MOST_FAULTS)
    diagnoses = tuple(tuple(faults[number] for number in chosen) for chosen in found)
    return Diagnosis(
        () if () in diagnoses else turns_that_fit(commissioning, observed),
        diagnoses,
        _next_run(commissioning, diagnoses, {commissioning.trials.as_read(each.run) for each in observed}),
    )


def _besides(commissioning: Commissioning, there: Faults, bearing: int) -> Iterator[int]:
    """The numbers of the faults of a mask that may be there besides others."""
    for number in numbers_in(bearing):
        fault = commissioning.faults[number]
        if fault not in there and go_together((*there, fault)):
            yield number


def _next_run(commissioning: Commissioning, diagnoses: Sequence[Faults], made: set[Run]) -> Run | None:
    """The run not made yet whose outcome tells most: that of the greatest entropy, the earliest of several.

    After de Kleer and Williams, *Diagnosing multiple faults*, Artificial Intelligence 32 (1987), from memory.
    One fault is taken to be a hundred times as likely as two.
    """
    best, most = None, 0.0
    for run in commissioning.runs:
        if run not in made:
            told = _told_by(commissioning, diagnoses, run)
            if told > most:
                best, most = run, told
    return best


def _told_by(commissioning: Commissioning, diagnoses: Sequence[Faults], run: Run) -> float:
    """The entropy of what a run would show, in bits; rounded, so that equal runs come out equal."""
    weights: dict[str, float] = {}
    for diagnosis in diagnoses:
        outcome = commissioning.outcome(run, diagnosis)
        weights[outcome] = weights.get(outcome, 0.0) + LIKELIHOOD ** len(diagnosis)
    total = sum(weights.values())
    return round(-sum(weight / total * log2(weight / total) for weight in weights.values()), 9)
