"""Wires a junction: readers, drives and lines below its track, and the proof that all of it works.

The readers and drives are tried in several ways, drawn by a seed. Of those whose lines can all be laid the
smallest is taken, and proved. Nothing is given out that did not pass.
"""

from __future__ import annotations

from collections.abc import Iterator
from random import Random
from typing import Final

from model.parts import RAILS
from model.plan import Change, Plan
from model.progress import Progress
from model.routing.junction import Junction
from model.wiring.attempt import Attempt, attempt
from model.wiring.drives import is_touched
from model.wiring.forbidding import forbidding, too_large
from model.wiring.needs import Needs, needs_of
from model.wiring.proof.proof import Proof, prove
from model.wiring.result import LineReport, Unwired, Wiring
from model.wiring.trial import Bounds, Trial
from model.wording import tr

ATTEMPTS: Final = 100
"""Ways of placing readers and drives that are tried at most."""
ROUNDS: Final = 3
"""Proofs that may fail before it is given up."""
ENOUGH: Final = 5
"""Ways in which all lines could be laid, of which the smallest is taken."""


def wire(plan: Plan, seed: int = 0, grow: int = 1, depth: int = 6) -> Iterator[Progress | Wiring]:
    """Wires all wanted routes; the last that comes is the result. A caller may stop between two.

    ``grow``: cells by which the box allowed is wider than the rails on each side. ``depth``: levels below
    the lowest rail. The same seed gives the same wiring. A plan that passes the proof as it stands is left
    as it is.
    """
    junction = Junction(plan)
    yield Progress(tr("control table"), 0, 1)
    problems = forbidding(junction, depth)
    if problems:
        yield _unwired(problems)
        return
    needs = needs_of(junction)
    if all(is_touched(plan.pieces, driven.at) for driven in needs.driven):
        works = False
        for step in _proved(plan, needs, Attempt(plan, ())):
            if isinstance(step, Progress) or step.wired or not needs.driven:
                yield step
            works = isinstance(step, Wiring) and step.wired
        if works or not needs.driven:
            return
    problems = too_large(plan, grow, depth)
    if problems:
        yield _unwired(problems)
        return
    yield from _wired_and_proved(plan, needs, Bounds(grow, depth, Random(seed)))


def _wired_and_proved(plan: Plan, needs: Needs, bounds: Bounds) -> Iterator[Progress | Wiring]:
    """Wires part after part, then proves the whole; where that fails all once more in other ways."""
    last = _unwired(())
    for _ in range(ROUNDS):
        made = Attempt(plan, ())
        for part in needs.apart():
            trial = Trial(made.plan, part, bounds)
            smallest: Attempt | None = None
            for step in _smallest(trial):
                if isinstance(step, Progress):
                    yield step
                else:
                    smallest = step
            if smallest is None:
                yield _unwired(trial.problems())
                return
            made = Attempt(smallest.plan, made.laid + smallest.laid)
        for outcome in _proved(plan, needs, made):
            if isinstance(outcome, Progress):
                yield outcome
            else:
                last = outcome
        if last.wired:
            break
    yield last


def _smallest(trial: Trial) -> Iterator[Progress | Attempt]:
    """Lays the lines in several ways; the last ``Attempt`` that comes is the smallest."""
    smallest: Attempt | None = None
    found = 0
    for number in range(ATTEMPTS):
        yield Progress("attempts", number, ATTEMPTS)
        for step in attempt(trial):
            if isinstance(step, Progress):
                yield step
                continue
            found += 1
            if smallest is None or step.size < smallest.size:
                smallest = step
                yield smallest
        if found == ENOUGH:
            return


def _proved(plan: Plan, needs: Needs, made: Attempt) -> Iterator[Progress | Wiring]:
    proof = Proof(0)
    for proof in prove(made.plan):
        yield Progress("proof", proof.runs, proof.of)
        if proof.failed:
            break
    if proof.holds:
        yield _wired(plan, needs, made, proof)
    else:
        yield _unwired(tuple(Unwired(None, None, sentence) for sentence in proof.failed))


def _wired(plan: Plan, needs: Needs, made: Attempt, proof: Proof) -> Wiring:
    thrown = {reading.arm: tuple(reading.thrown) for part in needs.apart() for reading in part.readings}
    lines = (
        LineReport(each.line.name, thrown[each.line.name], each.dust, each.repeaters) for each in made.laid
    )
    change = _change(plan, made.plan, len(made.laid))
    lowest_rail = min((piece.at.y for piece in plan.pieces if piece.part in RAILS), default=0)
    return Wiring(
        True,
        change,
        tuple(sorted(lines, key=lambda line: list(thrown).index(line.arm))),
        len({(piece.at.x, piece.at.z) for piece in made.plan.pieces}),
        max((lowest_rail - cell.y for cell in change.cells), default=0),
        proof.runs,
        proof.passed,
        (),
        proof.headways,
    )


def _change(before: Plan, after: Plan, lines: int) -> Change:
    """One undo step from one to the other."""
    old, new = before.pieces.in_order(), after.pieces.in_order()
    kept = set(old) & set(new)
    taken = tuple(entry for entry in old if entry not in kept)
    placed = tuple(entry for entry in new if entry not in kept)
    return Change(tr("Wire {lines}", lines=tr("%n line(s)", "", lines)), taken, placed)


def _unwired(problems: tuple[Unwired, ...]) -> Wiring:
    return Wiring(False, None, (), 0, 0, 0, 0, problems)
