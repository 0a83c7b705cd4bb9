"""The survey: an order of placing that gives each rail the shape in which it stands already."""

from __future__ import annotations

import time
from collections.abc import Generator, Iterable, Iterator, Mapping, Sequence

import msgspec

from model.clauses import Answer, Clauses, Statement
from model.grid import Cell
from model.ordering.as_built import AsBuilt
from model.ordering.ground import Ground
from model.ordering.linking import Linking
from model.ordering.result import BuiltRails
from model.ordering.trial import Trial
from model.plan import Plan
from model.track.layout import Layout
from model.track.rails import pack, unpack
from model.track.shapes import Shape


class Survey(msgspec.Struct, frozen=True):
    """An order that gives the shapes as surveyed, or the rails that no order gives."""

    rails: BuiltRails | None = None
    """``None`` where there is no such order, or none is found yet."""
    impossible: tuple[Cell, ...] = ()
    """Rails that cannot stand as surveyed: each by itself, or else a smallest set of those that clash."""
    alone: bool = False
    """Whether each of the rails in ``impossible`` cannot stand so whatever the others do."""
    proved: bool = False
    """Whether the answer is certain: an order that was found always is."""


def survey(plan: Plan, shapes: Mapping[Cell, Shape], seconds: float = 60) -> Iterator[Survey]:
    """Looks for an order and facings which give the rails named just these shapes; the last is the answer.

    Other rails may lie as they like. Gives what is known after each step of the solver, so that a caller can
    stop between two. Raises KeyError for a cell without a rail.
    """
    deadline = time.monotonic() + seconds
    search = _Search(plan, shapes)
    try:
        for found in search.run():
            yield found
            if time.monotonic() > deadline:
                break
    finally:
        search.close()


class _Search:
    """Asks the solver for an order."""

    def __init__(self, plan: Plan, shapes: Mapping[Cell, Shape]) -> None:
        self._ground = Ground(plan, Layout(plan))
        self._clauses = Clauses()
        self._linking = Linking(self._clauses, self._ground)
        self._as_built = AsBuilt(self._clauses, self._ground, self._linking)
        self._wanted = {pack(cell): self._stands(pack(cell), shape) for cell, shape in shapes.items()}

    def close(self) -> None:
        """Frees the solver."""
        self._clauses.close()

    def run(self) -> Iterator[Survey]:
        """The order, or the rails at odds: those that no order gives alone, or else a smallest set."""
        found = yield from self._ask(self._wanted, Survey())
        if found is not None:
            yield found
            return
        at_odds = self._at_odds()
        blamed = yield from self._impossible_alone(at_odds)
        if not blamed.alone:
            blamed = yield from self._smallest(at_odds)
        yield msgspec.structs.replace(blamed, proved=not self._ground.crowded)

    def _impossible_alone(self, at_odds: Sequence[int]) -> Generator[Survey, None, Survey]:
        """All rails that cannot stand as wanted, whatever the others do; if there are none, those at odds."""
        blamed = _blamed(at_odds)
        alone: list[int] = []
        for key in self._wanted:
            if (yield from self._ask([key], blamed)) is None:
                alone.append(key)
                blamed = _blamed(alone, alone=True)
        return blamed

    def _smallest(self, at_odds: list[int]) -> Generator[Survey, None, Survey]:
        """Leaves out rails as long as the rest still cannot stand together."""
        for key in at_odds:
            rest = [other for other in at_odds if other != key]
            if (yield from self._ask(rest, _blamed(at_odds))) is None:
                at_odds = rest
        return _blamed(at_odds)

    def _ask(self, rails: Iterable[int], meanwhile: Survey) -> Generator[Survey, None, Survey | None]:
        """An order in which these rails stand as wanted, or ``None``; meanwhile says who is to blame."""
        wanted = [self._wanted[key] for key in rails]
        while (answer := self._clauses.solve(wanted)) is not Answer.NO:
            if answer is Answer.YES and (found := self._order()) is not None:
                return found
            yield meanwhile
        return None

    def _order(self) -> Survey | None:
        """The order that the solver found, where it comes out as it said."""
        if self._linking.forbid_rings():
            return None
        trial = Trial(self._clauses, self._ground, self._linking)
        return None if trial.learn_as_built(self._as_built) else Survey(trial.rails, proved=True)

    def _stands(self, key: int, shape: Shape) -> Statement:
        """The rail has this shape as built; one on a plain run has one shape only."""
        clauses = self._clauses
        if key in self._as_built.shapes:
            holds = self._as_built.shapes[key].get(shape, clauses.false)
        else:
            holds = clauses.true if self._ground.layout.rails[key] == shape else clauses.false
        # A statement of its own, so that the solver names the rail that is at odds with others.
        wanted = clauses.new()
        clauses.say(-wanted, holds)
        return wanted

    def _at_odds(self) -> list[int]:
        blamed = frozenset(self._clauses.at_odds())
        return [key for key, statement in self._wanted.items() if statement in blamed]


def _blamed(keys: Iterable[int], *, alone: bool = False) -> Survey:
    return Survey(impossible=tuple(map(unpack, keys)), alone=alone)
