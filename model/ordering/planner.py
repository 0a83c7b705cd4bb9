"""The order planner: from the wanted routes to an order of placing that needs the least wiring.

The routes say how the rails must lie, these say which neighbours must be linked, and that says which must
come before which. All of it is put as sentences to a SAT solver, which either finds an order or proves that
there is none. What the sentences leave open is tried out, and learned. The fewest inverters are looked for
first, then with these the fewest throws, then the fewest wired switches: each time fewer than the best so far
are asked for, until the solver proves that there are none.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from model.edits import turn_plan
from model.grid import ALL_TURNS, Turn
from model.ordering.as_built import AsBuilt
from model.ordering.clauses import Answer, Clauses, Statement
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

    Gives the best so far many times a second, so that a caller can stop between two. Begins with the plan's
    own order. After that many seconds of work it ends, proved or not.
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


class _Counted(NamedTuple):
    """One part of the cost: what is counted, and what to assume for a number at most."""

    statements: Sequence[Statement]
    at_most: Callable[[int], list[Statement]]


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
        wiring = self._wiring
        self._counts = [self._counted(list(of.values())) for of in (wiring.idle, wiring.thrown, wiring.wired)]

    def close(self) -> None:
        """Frees the solver."""
        self._clauses.close()

    def run(self, best: BuildOrder) -> Iterator[BuildOrder]:
        """Better and better orders; the last is proved, or the caller has stopped before."""
        for place in range(len(Cost._fields)):
            fewer: bool | None = True
            while fewer is not False:
                fewer, best = self._step(best, place)
                yield best
            if not best.served:
                break
        proved = not self._ground.crowded
        yield BuildOrder(best.rails, best.served, *best.cost, proved=proved)

    def _step(self, best: BuildOrder, place: int) -> tuple[bool | None, BuildOrder]:
        """Looks for an order with less of one part of the cost; ``None`` where the answer is not out yet."""
        assumed = self._less_than(best, place)
        if assumed is None:
            return False, best
        answer = self._clauses.solve(assumed)
        if answer is Answer.NO:
            return False, best
        if answer is Answer.NOT_YET or self._linking.forbid_rings() or self._ways.forbid_circles():
            return None, best
        trial = Trial(self._clauses, self._ground, self._linking)
        found = self._found(trial.rails)
        if trial.learn(self._wiring):
            return None, best
        return True, found

    def _less_than(self, best: BuildOrder, place: int) -> list[Statement] | None:
        """What to assume of the cost; ``None`` where nothing can be less."""
        if not best.served:
            return []
        if best.cost[place] == 0:
            return None
        wanted = [*best.cost[:place], best.cost[place] - 1]
        counts = zip(self._counts, wanted, strict=False)
        return [statement for count, number in counts for statement in count.at_most(number)]

    def _found(self, rails: BuiltRails) -> BuildOrder:
        cost = Cost(*(sum(map(self._clauses.holds, count.statements)) for count in self._counts))
        return BuildOrder(rails, True, *cost, proved=False)

    def _counted(self, statements: Sequence[Statement]) -> _Counted:
        return _Counted(statements, self._clauses.at_most(statements))
