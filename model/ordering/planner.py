"""The order planner: from the wanted routes to an order of placing that needs the least wiring.

The routes say how the rails must lie, these say which neighbours must be linked, and that says which must
come before which. All of it is put as sentences to a SAT solver, which either finds an order or proves that
there is none. What the sentences leave open is tried out, and learned. The fewest inverters are looked for
first, then with these the fewest throws, then the fewest wired switches: each time fewer than the best so far
are asked for, until the solver proves that there are none.
"""

from __future__ import annotations

import time
from collections.abc import Generator, Iterator
from typing import Final

from model.clauses import Answer, Clauses, Statement
from model.edits import turn_plan
from model.grid import ALL_TURNS, Turn
from model.ordering.as_built import AsBuilt
from model.ordering.ground import Ground
from model.ordering.linking import Linking
from model.ordering.result import BuildOrder, BuiltRails, Cost, built_rails, judged
from model.ordering.trial import Trial
from model.ordering.ways import Ways, readers_of
from model.ordering.wiring import Wiring
from model.plan import Plan
from model.track.layout import Layout


def best_order(plan: Plan, seconds: float = 60) -> Iterator[BuildOrder]:
    """Orders of placing, each better or more certain than the one before; the last one is the result.

    Gives the best so far after each step of the solver, so that a caller can stop between two: many times a
    second in a compact junction, every few seconds in a large one. Begins with the plan's own order. Ends
    after that many seconds of work, proved or not.
    """
    deadline = time.monotonic() + seconds
    best = judged(plan, built_rails(plan), proved=not plan.routes)
    yield best
    if best.proved:
        return
    search = _Search(plan)
    try:
        for found in search.run(best):
            best = found
            yield best
            if time.monotonic() > deadline:
                break
    finally:
        search.close()
    if best.served and not best.proved:
        yield judged(plan, best.rails, proved=False)


def orders_by_orientation(plan: Plan, seconds: float = 60) -> Iterator[tuple[Turn, BuildOrder]]:
    """The best order in each of the eight orientations in turn, as ``best_order`` gives them.

    The rails are those of the turned plan. Each orientation gets an equal part of the time that is left.
    """
    deadline = time.monotonic() + seconds
    for index, turn in enumerate(ALL_TURNS):
        share = max(0.0, deadline - time.monotonic()) / (len(ALL_TURNS) - index)
        for order in best_order(turn_plan(plan, turn).applied(plan), share):
            yield turn, order


WIRED_AT_FIRST: Final = (2, 4, 8)
"""Wired switches at most in the first rounds: a junction that needs few is found sooner so."""


class _Search:
    """Asks the solver for ever less wiring."""

    def __init__(self, plan: Plan) -> None:
        self._ground = Ground(plan, Layout(plan))
        self._clauses = Clauses()
        self._linking = Linking(self._clauses, self._ground)
        as_built = AsBuilt(self._clauses, self._ground, self._linking)
        readers = len(readers_of(plan))
        self._wiring = Wiring(self._clauses, self._ground, self._linking, as_built, readers)
        self._ways = Ways(self._clauses, self._ground, self._wiring)
        of_cost = (self._wiring.idle, self._wiring.thrown, self._wiring.wired)
        self._counted = [list(statements.values()) for statements in of_cost]
        self._limits: dict[tuple[int, int], Statement] = {}

    def close(self) -> None:
        """Frees the solver."""
        self._clauses.close()

    def run(self, best: BuildOrder) -> Iterator[BuildOrder]:
        """Better and better orders; the last is proved, or the caller has stopped before."""
        for wired in WIRED_AT_FIRST:
            best = yield from self._round(best, [self._at_most(len(Cost._fields) - 1, wired)])
        best = yield from self._round(best, [])
        proved = not self._ground.crowded
        yield BuildOrder(best.rails, best.served, *best.cost, proved=proved)

    def _round(self, best: BuildOrder, assumed: list[Statement]) -> Generator[BuildOrder, None, BuildOrder]:
        """Makes one part of the cost after the other as small as it can be under what is assumed."""
        for place in range(len(Cost._fields)):
            while (less := self._less_than(best, place)) is not None:
                answer, found = self._step([*assumed, *less])
                if answer is Answer.NO:
                    break
                best = best if found is None else found
                yield best
            if not best.served:
                break
        return best

    def _step(self, assumed: list[Statement]) -> tuple[Answer, BuildOrder | None]:
        """Looks on for an order, and tries it out where the solver has one."""
        answer = self._clauses.solve(assumed)
        if answer is not Answer.YES:
            return answer, None
        if self._linking.forbid_rings() or self._ways.forbid_circles():
            return Answer.NOT_YET, None
        trial = Trial(self._clauses, self._ground, self._linking)
        found = self._found(trial.rails)
        return (Answer.NOT_YET, None) if trial.learn(self._wiring) else (answer, found)

    def _less_than(self, best: BuildOrder, place: int) -> list[Statement] | None:
        """What to assume for less of one part of the cost; ``None`` where nothing can be less."""
        if not best.served:
            return []
        if best.cost[place] == 0:
            return None
        wanted = [*best.cost[:place], best.cost[place] - 1]
        return [self._at_most(index, number) for index, number in enumerate(wanted)]

    def _at_most(self, place: int, number: int) -> Statement:
        if (place, number) not in self._limits:
            self._limits[place, number] = self._clauses.at_most(number, self._counted[place])
        return self._limits[place, number]

    def _found(self, rails: BuiltRails) -> BuildOrder:
        cost = Cost(*(sum(map(self._clauses.holds, statements)) for statements in self._counted))
        return BuildOrder(rails, True, *cost, proved=False)
