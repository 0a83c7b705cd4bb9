"""What is the same in all attempts to wire a junction, and what the earlier ones have taught."""

from __future__ import annotations

from random import Random
from typing import Final, NamedTuple

from model.grid import Cell
from model.pieces import Pieces
from model.plan import Plan
from model.wiring.drives import Drive
from model.wiring.laying.ground import Ground
from model.wiring.needs import Needs
from model.wiring.readers import Stand, stands
from model.wiring.result import Unwired

_OF_THE_OTHERS: Final = 0.2
"""The share of what stood in nobody's way that is chosen anew all the same, since it may have been."""
_FOR_ANOTHER: Final = 0.5
"""The share that is chosen anew after a way was found, to find another."""


class Bounds(NamedTuple):
    """Within what a junction is wired."""

    grow: int
    """Cells by which the box allowed is wider than the rails on each side."""
    depth: int
    """Levels below the lowest rail."""
    random: Random
    """From which all choices are drawn."""


class Trial:
    """The plan with its needs; the places of drives and readers in the last attempt, and what they led to."""

    def __init__(self, plan: Plan, needs: Needs, bounds: Bounds) -> None:
        self.plan = plan
        self.needs = needs
        self.random = bounds.random
        self.stands = {reading.arm: tuple(stands(reading)) for reading in needs.readings}
        self.drives: dict[Cell, Drive] = {}
        """By switch: the drive of the last attempt, where it may stay."""
        self.places: dict[str, Stand] = {}
        """By arm: the place of its reader in the last attempt, where it may stay."""
        self.blame: dict[str, int] = {}
        """By arm: how often its reader or line found no place. The most blamed is placed first."""
        self.is_first = True
        """Whether nothing was tried yet. The first attempt takes all in the order of prices."""
        self._met: dict[Unwired, int] = {}
        self._bounds = bounds

    def ground(self, pieces: Pieces) -> Ground:
        """The ground with these pieces on it."""
        return Ground(Plan(pieces, self.plan.details), self._bounds.grow, self._bounds.depth)

    def note(self, problem: Unwired) -> None:
        """Notes why an attempt failed."""
        self._met[problem] = self._met.get(problem, 0) + 1
        if problem.arm is not None:
            self.blame[problem.arm] = self.blame.get(problem.arm, 0) + 1

    def problems(self) -> tuple[Unwired, ...]:
        """Of each arm that was in the way the reason met most often, the commonest first."""
        found: dict[str | None, Unwired] = {}
        for problem in sorted(self._met, key=lambda problem: -self._met[problem]):
            if all(problem.message != other.message for other in found.values()):
                found.setdefault(problem.arm, problem)
        return tuple(found.values())

    def keep(
        self, drives: dict[Cell, Drive], places: dict[str, Stand], failed: frozenset[str] | None
    ) -> None:
        """Notes how the last attempt stood; what belongs to the failed arms may not stay, nor some others.

        ``None`` where it failed in nothing.
        """
        self.is_first = False
        share = _FOR_ANOTHER if failed is None else _OF_THE_OTHERS
        failed = failed or frozenset()
        wrong = {
            switch for reading in self.needs.readings if reading.arm in failed for switch in reading.thrown
        }
        self.drives = {
            switch: drive
            for switch, drive in drives.items()
            if switch not in wrong and self.random.random() >= share
        }
        self.places = {
            arm: stand for arm, stand in places.items() if arm not in failed and self.random.random() >= share
        }
