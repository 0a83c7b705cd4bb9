"""One way of wiring a junction: drives and readers in their places, and lines between them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from msgspec import Struct

from model.plan import Plan
from model.progress import Progress
from model.wiring.laying.laid import Laid
from model.wiring.laying.laying import lay_lines
from model.wiring.modules.fitting import problem_about
from model.wiring.placing import Placing
from model.wiring.result import Unwired
from model.wiring.trial import Trial

_OF_A_LEVEL: Final = 6
_OF_A_COLUMN: Final = 1
"""Pieces that a level and a column of a wired plan count as."""


class Attempt(Struct, frozen=True):
    """A wired plan, not yet proved."""

    plan: Plan
    laid: tuple[Laid, ...]

    @property
    def size(self) -> int:
        """What it takes to build, levels and columns counted as pieces."""
        cells = [piece.at for piece in self.plan.pieces]
        columns = {(cell.x, cell.z) for cell in cells}
        lowest = min(cell.y for cell in cells)
        return len(cells) + _OF_A_COLUMN * len(columns) - _OF_A_LEVEL * lowest


def attempt(trial: Trial) -> Iterator[Progress | Attempt]:
    """Tries one way; an ``Attempt`` comes only where all lines are laid. Else ``trial`` knows why not."""
    placing = Placing(trial)
    if not placing.place_drives():
        trial.keep(placing.drives, {}, frozenset())
        return
    homeless = placing.place_readers()
    if homeless is not None:
        trial.keep(placing.drives, placing.places, frozenset({homeless}))
        return
    ground, seed = trial.ground(placing.pieces), trial.random.randrange(1 << 30)
    for step in lay_lines(ground, placing.lines(), seed, placing.limits()):
        if isinstance(step, Progress):
            yield step
        elif step.failed:
            for failure in step.failed:
                trial.note(Unwired(failure.line.name, failure.target, failure.reason))
            failed = frozenset(failure.line.name for failure in step.failed)
            trial.keep(placing.drives, placing.places, failed)
        else:
            plan = Plan(placing.with_lines(step.laid), trial.plan.details)
            yield from _sound(trial, placing, Attempt(plan, step.laid))


def _sound(trial: Trial, placing: Placing, made: Attempt) -> Iterator[Attempt]:
    """The attempt, unless something that stood there already would no longer do what it did."""
    there = trial.plan.pieces
    problem = problem_about(there, [piece for piece in made.plan.pieces if there.get(piece.at) != piece])
    if problem is None:
        trial.keep(placing.drives, placing.places, None)
        yield made
    else:
        trial.note(Unwired(None, None, problem))
        trial.keep({}, {}, frozenset())
