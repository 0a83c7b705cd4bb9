"""One way of wiring a junction: drives and readers in their places, and lines between them."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random
from typing import Final

from msgspec import Struct

from model.grid import Cell
from model.pieces import Pieces
from model.plan import Plan
from model.wiring.drives import Drive, drives
from model.wiring.fitting import Fitted, fit
from model.wiring.ground import Ground
from model.wiring.laid import Laid, Line
from model.wiring.laying import lay_lines
from model.wiring.needs import Needs, Reading
from model.wiring.progress import Progress
from model.wiring.readers import Stand, stands
from model.wiring.result import Unwired

_SHAKE: Final = 12
"""How far the prices of two places of a reader may be apart for the dearer one to be tried first."""


class Attempt(Struct, frozen=True):
    """A wired plan, not yet proved."""

    plan: Plan
    laid: tuple[Laid, ...]


class Trial:
    """What is the same in all attempts, and what the earlier ones have taught."""

    def __init__(self, plan: Plan, needs: Needs, grow: int, depth: int) -> None:
        self.plan = plan
        self.needs = needs
        self.grow = grow
        self.depth = depth
        self.stands = {reading.arm: tuple(stands(reading)) for reading in needs.readings}
        self.blame: dict[str, int] = {}
        """By arm: how often its reader or line found no place. The most blamed is placed first."""
        self.problems: tuple[Unwired, ...] = ()
        """Why the last attempt failed."""

    def ground(self, pieces: Pieces) -> Ground:
        """The ground with these pieces on it."""
        return Ground(Plan(pieces, self.plan.details), self.grow, self.depth)


def attempt(trial: Trial, random: Random) -> Iterator[Progress | Attempt]:
    """Tries one way; an ``Attempt`` comes only where all lines are laid. Else ``trial`` says why not."""
    placing = _Placing(trial, random)
    if not (placing.place_drives() and placing.place_readers()):
        trial.problems = tuple(placing.problems)
        return
    ground, seed = trial.ground(placing.pieces), random.randrange(1 << 30)
    for step in lay_lines(ground, placing.lines(), seed, placing.limits()):
        if isinstance(step, Progress):
            yield step
        elif step.failed:
            for failure in step.failed:
                placing.blame(failure.line.name, failure.target, failure.reason)
            trial.problems = tuple(placing.problems)
        else:
            yield Attempt(Plan(placing.with_lines(step.laid), trial.plan.details), step.laid)


class _Placing:
    """Where drives and readers stand in one attempt."""

    def __init__(self, trial: Trial, random: Random) -> None:
        self.trial = trial
        self.random = random
        self.pieces = trial.plan.pieces
        self.drives: dict[Cell, Drive] = {}
        self.stands: dict[str, Stand] = {}
        self.problems: list[Unwired] = []

    def blame(self, arm: str, at: Cell | None, reason: str) -> None:
        """Notes that an arm's reader or line found no place."""
        self.trial.blame[arm] = self.trial.blame.get(arm, 0) + 1
        self.problems.append(Unwired(arm, at, reason))

    def place_drives(self) -> bool:
        """Puts a drive under every switch that needs one."""
        ground = self.trial.ground(self.pieces)
        for driven in self.trial.needs.driven:
            found = list(drives(ground, driven))
            possible = [drive for drive in found if isinstance(drive, Drive)]
            if possible:
                self._put(possible[self._place_of_choice(len(possible))])
            else:
                self.problems += [Unwired(None, driven.at, why) for why in found if isinstance(why, str)]
        return not self.problems

    def _place_of_choice(self, count: int) -> int:
        """The first; once something failed any, the earlier ones more often."""
        return int(count * self.random.random() ** 2) if self.trial.blame else 0

    def _put(self, drive: Drive) -> None:
        self.drives[drive.switch] = drive
        self._apply(drive.fitted)

    def place_readers(self) -> bool:
        """Puts down a reader for every arm that needs one."""
        blame = self.trial.blame
        in_order = sorted(self.trial.needs.readings, key=lambda reading: -blame.get(reading.arm, 0))
        return all(self._place_reader(reading) for reading in in_order)

    def _place_reader(self, reading: Reading) -> bool:
        ground = self.trial.ground(self.pieces)
        why = "no straight of it is long enough before the first switch that it must throw."
        for stand in self._shaken(self.trial.stands[reading.arm]):
            if any(limit < 0 for limit in self._limits(reading, stand).values()):
                why = "its signal would come too late at the first switch."
                continue
            fitted = fit(ground, stand.module)
            if isinstance(fitted, Fitted) and ground.allows(stand.start):
                self._apply(fitted)
                self.stands[reading.arm] = stand
                return True
            why = fitted if isinstance(fitted, str) else f"its line cannot start at {stand.start}."
        self.blame(reading.arm, reading.first, f"There is no place for the reader of {reading.arm}: {why}")
        return False

    def _shaken(self, found: tuple[Stand, ...]) -> list[Stand]:
        """In the order of their prices; once something failed, with the order shaken."""
        if not self.trial.blame:
            return list(found)
        return sorted(found, key=lambda stand: stand.price + self.random.random() * _SHAKE)

    def lines(self) -> list[Line]:
        """What is to be laid."""
        return [
            Line(
                reading.arm,
                self.stands[reading.arm].start,
                tuple((self.drives[switch].target,) for switch in reading.thrown),
            )
            for reading in self.trial.needs.readings
        ]

    def limits(self) -> dict[tuple[str, int], int]:
        """How late each line may be at each of its targets."""
        return {
            (reading.arm, place): limit
            for reading in self.trial.needs.readings
            for place, limit in self._limits(reading, self.stands[reading.arm]).items()
        }

    def _limits(self, reading: Reading, stand: Stand) -> dict[int, int]:
        return {
            place: slack - self.drives[switch].delay
            for place, switch in enumerate(reading.thrown)
            if (slack := stand.slack[switch]) is not None
        }

    def with_lines(self, laid: tuple[Laid, ...]) -> Pieces:
        """All pieces, those of the lines last."""
        self._apply(Fitted((), tuple(piece for each in laid for piece in each.pieces)))
        return self.pieces

    def _apply(self, fitted: Fitted) -> None:
        self.pieces = fitted.applied(self.pieces)
