"""The least wiring as sentences to a SAT solver: for junctions with too many ways to follow one by one.

A demand that is served holds at the start of each of its stages; where it holds at a state, one of the moves
from there is made, the cluster lies as that move needs, and the demand holds at the next state. No more than
one of the moves to a state is made, and none to the start: a circle would be entered by a second one.
What costs most is made as little as can be first, and then held to that.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import chain, combinations
from typing import NamedTuple

from model.clauses import Answer, Clauses, Statement
from model.pauses import pause
from model.routing.cheapest import IDLE, CheapestWiring, ClusterChoice
from model.routing.clusters import Wiring
from model.routing.demand import Demand
from model.routing.paths import Stage
from model.routing.runs import Goal


class Least(NamedTuple):
    """The least wiring, and how many demands it leaves unserved."""

    chosen: dict[int, ClusterChoice]
    left_out: int


class LeastWiring:
    """Says what serves the demands; ``must`` where all of them have to be served."""

    def __init__(
        self, cheapest: Sequence[CheapestWiring], readers: int, demands: Sequence[Demand], *, must: bool
    ) -> None:
        self._say = Clauses()
        passed = sorted(frozenset().union(*(demand.clusters for demand in demands)))
        self._wired = {index: _Wired(self._say, cheapest[index], readers) for index in passed}
        self._served = [self._say.true if must else self._say.new() for _ in demands]
        for demand, served in zip(demands, self._served, strict=True):
            for stage in demand.stages:
                self._follow(demand.setting, stage, served)

    def can_be(self) -> bool:
        """Whether any wiring does that."""
        return self._solve()

    def least(self) -> Least | None:
        """The least of all, ``None`` where there is none."""
        if not self._solve():
            return None
        wired = self._wired.values()
        self._make_few([-served for served in self._served])
        self._make_few([one for each in wired for one in each.idle])
        self._make_few([one for each in wired for thrown in each.thrown for one in thrown])
        self._make_few([one for each in wired for one in each.wired])
        self._make_late(list(chain.from_iterable(each.in_file_order() for each in wired)))
        chosen = {index: each.as_found() for index, each in self._wired.items()}
        return Least(chosen, sum(not self._say.holds(served) for served in self._served))

    def close(self) -> None:
        """Frees the solver."""
        self._say.close()

    def _make_few(self, statements: Sequence[Statement]) -> None:
        """Holds the number of these statements that hold to the smallest one possible."""
        fewest = self._number(statements)
        while fewest and self._solve([self._say.at_most(fewest - 1, statements)]):
            fewest = self._number(statements)
        self._say.say(self._say.at_most(fewest, statements))

    def _number(self, statements: Iterable[Statement]) -> int:
        return sum(map(self._say.holds, statements))

    def _make_late(self, statements: Sequence[Statement]) -> None:
        """Lets the first of these not hold where that can be, then the second, and so on."""
        for statement in statements:
            is_needed = self._say.holds(statement) and not self._solve([-statement])
            self._say.say(statement if is_needed else -statement)

    def _solve(self, assumed: Sequence[Statement] = ()) -> bool:
        answer = Answer.NOT_YET
        while answer is Answer.NOT_YET:
            pause()
            answer = self._say.solve(assumed)
        return answer is Answer.YES

    def _follow(self, setting: int, stage: Stage, served: Statement) -> None:
        """Says how a demand that is served comes through one of its stages."""
        say = self._say
        at: dict[Goal, Statement] = {state: say.new() for state in stage.moves}
        coming: dict[Goal, list[Statement]] = {state: [] for state in stage.moves}
        say.say_if([served], at.get(stage.start, say.false))
        for state, moves in stage.moves.items():
            made = [say.new() for _ in moves]
            say.say_if([at[state]], *made)
            for move, one in zip(moves, made, strict=True):
                say.say_if([one], self._wired[move.cluster].lies(setting, move.states))
                if move.following != stage.goal:
                    say.say_if([one], at[move.following])
                    coming[move.following].append(one)
        for following, made in coming.items():
            for one, other in combinations(made, 2):
                say.say(-one, -other)
            if following == stage.start:
                for one in made:
                    say.say(-one)


class _Wired:
    """What is said of the wiring of one cluster."""

    def __init__(self, say: Clauses, cheapest: CheapestWiring, readers: int) -> None:
        self._say = say
        self._cheapest = cheapest
        self._lying: dict[tuple[int, int], Statement] = {}
        switches = range(len(cheapest.cluster.switches))
        self.idle = [say.new() for _ in switches]
        self.thrown = [[say.new() for _ in switches] for _ in range(readers)]
        self.wired = [say.any_of(list(of_switch)) for of_switch in zip(self.idle, *self.thrown, strict=True)]
        self._powered = {IDLE: self.idle}
        for reader, thrown in enumerate(self.thrown):
            self._powered[reader] = [self._differ(*both) for both in zip(self.idle, thrown, strict=True)]
        unusable = cheapest.cluster.states.keys() - cheapest.usable
        for setting in self._powered:
            self._rule_out(setting, unusable)

    def lies(self, setting: int, states: int) -> Statement:
        """The cluster lies in one of these states, a mask, in a setting."""
        question = (setting, states)
        if question not in self._lying:
            numbers = self._cheapest.cluster.states
            lying = self._lying[question] = self._say.new()
            others = [wiring for wiring in self._cheapest.usable if not states >> numbers[wiring] & 1]
            self._rule_out(setting, others, lying)
        return self._lying[question]

    def in_file_order(self) -> Iterator[Statement]:
        """By switch, whether it is powered at idle, then whether each reader throws it."""
        return chain.from_iterable(zip(self.idle, *self.thrown, strict=True))

    def as_found(self) -> ClusterChoice:
        """The wiring in what was found last."""
        return self._cheapest.choice(self._mask(self.idle), [self._mask(thrown) for thrown in self.thrown])

    def _differ(self, one: Statement, other: Statement) -> Statement:
        """A statement that holds where just one of two does."""
        differ = self._say.new()
        for a, b in ((one, other), (-one, -other)):
            self._say.say(-a, -b, -differ)
            self._say.say(-a, b, differ)
        return differ

    def _rule_out(self, setting: int, wirings: Iterable[Wiring], *given: Statement) -> None:
        for wired, powered in wirings:
            bits = (*_as_bits(self.wired, wired), *_as_bits(self._powered[setting], powered))
            self._say.say_if((*given, *bits))

    def _mask(self, statements: Sequence[Statement]) -> int:
        return sum(1 << index for index, one in enumerate(statements) if self._say.holds(one))


def _as_bits(statements: Sequence[Statement], mask: int) -> Iterator[Statement]:
    return (one if mask >> index & 1 else -one for index, one in enumerate(statements))
