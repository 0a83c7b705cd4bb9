"""Sentences in propositional logic, handed to a SAT solver as they are said.

A statement is a whole number, its opposite the negative of it, as is usual in the trade (DIMACS).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from enum import Enum
from itertools import product
from typing import Any, Final, TypeVar

CONFLICTS_A_STEP: Final = 500
"""Conflicts that the solver may meet before the caller is asked again whether to go on."""

Statement = int
Values = tuple[bool, ...]
Key = TypeVar("Key")


class Answer(Enum):
    """What the solver has to say after a step."""

    YES = "yes"
    NO = "no"
    NOT_YET = "not yet"


class Clauses:
    """A growing set of sentences, and what satisfies them."""

    def __init__(self) -> None:
        from pysat.solvers import Solver  # slow to import, and asked for by few

        self._solver: Any = Solver(name="glucose4", incr=False)
        self._top = 0
        self.true: Statement = self.new()
        self._model: frozenset[int] = frozenset()
        self.say(self.true)

    @property
    def false(self) -> Statement:
        """What never holds."""
        return -self.true

    def new(self) -> Statement:
        """A statement of which nothing is said yet."""
        self._top += 1
        return self._top

    def say(self, *any_of: Statement) -> None:
        """At least one of these holds."""
        self._solver.add_clause(list(any_of))

    def say_if(self, all_of: Iterable[Statement], *any_of: Statement) -> None:
        """Where all of the first hold, at least one of the others does."""
        self.say(*(-statement for statement in all_of), *any_of)

    def all_of(self, statements: Sequence[Statement]) -> Statement:
        """A statement that holds just where all of these do."""
        return -self.any_of([-statement for statement in statements])

    def any_of(self, statements: Sequence[Statement]) -> Statement:
        """A statement that holds just where one of these does."""
        if self.true in statements:
            return self.true
        known = [statement for statement in statements if statement != self.false]
        if len(known) < 2:
            return known[0] if known else self.false
        result = self.new()
        self.say(-result, *known)
        for statement in known:
            self.say(result, -statement)
        return result

    def same(self, one: Statement, other: Statement) -> None:
        """Both hold or neither does."""
        self.say(-one, other)
        self.say(one, -other)

    def same_if(
        self, given: Sequence[Statement], one: Mapping[Key, Statement], other: Mapping[Key, Statement]
    ) -> None:
        """Under these circumstances the statements of both mappings hold alike, key by key."""
        for key, statement in one.items():
            self.say_if([*given, statement], other[key])
            self.say_if([*given, -statement], -other[key])

    def exactly_one_of(self, statements: Sequence[Statement]) -> None:
        """One of these holds and no other."""
        self.say(*statements)
        for index, one in enumerate(statements):
            for other in statements[index + 1 :]:
                self.say(-one, -other)

    def rows(self, inputs: Sequence[Statement]) -> Iterator[tuple[Values, list[Statement]]]:
        """All values that the inputs can have, with the statements that say so."""
        choices = [(True,) if one == self.true else (False, True) for one in inputs]
        for values in product(*choices):
            yield values, [one if value else -one for one, value in zip(inputs, values, strict=True)]

    def at_most(self, number: int, statements: Sequence[Statement]) -> Statement:
        """A statement that, where it is assumed, lets no more than a number of others hold."""
        from pysat.card import CardEnc, EncType

        guard = self.new()
        if number < len(statements):
            count = CardEnc.atmost(
                lits=list(statements), bound=number, top_id=self._top, encoding=EncType.totalizer
            )
            self._top = max(self._top, count.nv)
            for clause in count.clauses:
                self.say(-guard, *clause)
        return guard

    def solve(self, assumed: Sequence[Statement] = ()) -> Answer:
        """Looks on for values that satisfy all, for one step."""
        self._solver.conf_budget(CONFLICTS_A_STEP)
        # Only where it may be interrupted does the solver let other threads run meanwhile.
        answer = self._solver.solve_limited(assumptions=list(assumed), expect_interrupt=True)
        if answer is None:
            return Answer.NOT_YET
        if answer:
            self._model = frozenset(value for value in self._solver.get_model() if value > 0)
        return Answer.YES if answer else Answer.NO

    def holds(self, statement: Statement) -> bool:
        """Whether a statement holds in what was found last."""
        return (abs(statement) in self._model) == (statement > 0)

    def as_found(self, statements: Iterable[Statement]) -> list[Statement]:
        """Each statement, or its opposite, as it holds in what was found last."""
        return [one if self.holds(one) else -one for one in statements]

    def at_odds(self) -> list[Statement]:
        """Of what was assumed last, a part that cannot hold together."""
        return list(self._solver.get_core() or ())

    def close(self) -> None:
        """Frees the solver."""
        self._solver.delete()
