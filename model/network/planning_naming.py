"""The fewest names, where defaults and ways are still open: all that cost no more are looked through.

A SAT solver decides defaults, ways and names at one time. On a journey the names that a cart still carries
are followed from the end to the start: those of readers that are called, until they are. A reader that is
passed by its default has none of them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import msgspec

from model.clauses import Answer, Clauses, Statement
from model.network.colouring import largest_clique, members
from model.network.colouring_clauses import ColourClauses
from model.network.planning_choice import Choice, choice_of
from model.network.planning_narrowing import Narrowed
from model.network.planning_parts import Part
from model.network.planning_weights import limit_weight
from model.network.ways import NO_TURN


class Named(msgspec.Struct, frozen=True):
    """A choice with a name for each reader that is called, and how few names there could be at the least."""

    choice: Choice
    names: tuple[int | None, ...]
    """By reader; those that are pinned come first."""
    bound: int
    """Proved: no choice that costs as little has fewer."""

    @property
    def number(self) -> int:
        """How many different names there are."""
        return len({name for name in self.names if name is not None})


def effort(narrowed: Narrowed, names: int) -> int:
    """About how many sentences it takes to look for fewer names than so many."""
    stretches = sum(len(narrowed.journeys[number].stretches) for number in _open_journeys(narrowed))
    return 3 * names * stretches


def fewer_names(narrowed: Narrowed, costs: Sequence[tuple[Part, int]], best: Named) -> Iterator[Named]:
    """Plans with fewer and fewer names; the last one is proved to have the fewest, unless the caller stops.

    ``costs``: what each part costs at the least. Gives the best so far after each step of the solver.
    """
    clauses = Clauses()
    try:
        sentences = _Sentences(clauses, narrowed, best.number)
        for part, cost in costs:
            sentences.cost_no_more(part, cost)
        for reader in narrowed.open_readers:
            sentences.cost_no_more_alone(reader, costs)
        while best.bound < best.number:
            # By turns from above and from below: neither alone may come to an end in time.
            for names in (best.number - 1, best.bound):
                answer = clauses.solve(sentences.palette.at_most(names))
                if answer is Answer.YES:
                    best = sentences.found(best.bound)
                elif answer is Answer.NO:
                    best = msgspec.structs.replace(best, bound=max(best.bound, names + 1))
                yield best
                if answer is not Answer.NOT_YET:
                    break
    finally:
        clauses.close()


def _open_journeys(narrowed: Narrowed) -> list[int]:
    """Those with several ways, or past a reader whose default is open."""
    stretches = narrowed.task.tracks.stretches
    open_readers = set(narrowed.open_readers)
    return [
        number
        for number, journey in enumerate(narrowed.journeys)
        if not journey.only or any(stretches[each].turn >> 1 in open_readers for each in journey.stretches)
    ]


class _Sentences:
    """What is true of any plan, in sentences."""

    def __init__(self, clauses: Clauses, narrowed: Narrowed, names: int) -> None:
        self._clauses, self._narrowed = clauses, narrowed
        self._stretches = narrowed.task.tracks.stretches
        readers = len(narrowed.defaults)
        pinned = narrowed.task.names
        self.palette = ColourClauses(clauses, readers, names, pinned)
        self._second = [
            clauses.new() if default is None else clauses.true if default else clauses.false
            for default in narrowed.defaults
        ]
        self._taken: dict[int, dict[int, Statement]] = {}
        self._say_what_is_sure(narrowed)
        for number in _open_journeys(narrowed):
            self._taken[number] = self._say_of_journey(number)

    def _say_what_is_sure(self, narrowed: Narrowed) -> None:
        sure = narrowed.sure_conflicts()
        for reader in sure.readers:
            self.palette.must_have(reader)
        for reader, before in enumerate(sure.before):
            # Who is passed by default may be called or not: without a name it is at odds with nobody.
            for other in members(before):
                self.palette.at_odds(reader, other)
        if not narrowed.task.names:
            readers = sure.readers
            self.palette.give_in_order([readers[each] for each in largest_clique(sure.odds())])

    def _is_default(self, turn: int) -> Statement:
        second = self._second[turn >> 1]
        return second if turn & 1 else -second

    def _say_of_journey(self, number: int) -> dict[int, Statement]:
        """Where a journey runs, what its carts carry, and that they lose none of it."""
        journey = self._narrowed.journeys[number]
        taken = {
            each: self._clauses.true if journey.only else self._clauses.new() for each in journey.stretches
        }
        if not journey.only:
            self._say_that_it_arrives(journey.stretches, taken)
        last = self._stretches[journey.stretches[-1]].end
        carried: dict[int, list[Statement]] = {last: []}
        for each in reversed(journey.stretches):
            start, end, _, _, turn = self._stretches[each]
            if start not in carried:
                carried[start] = [self._clauses.new() for _ in self.palette.has(0)]
            self._say_of_stretch(taken[each], turn, carried[start], carried[end])
        return taken

    def _say_that_it_arrives(self, stretches: Sequence[int], taken: dict[int, Statement]) -> None:
        onward: dict[int, list[Statement]] = {}
        for each in stretches:
            onward.setdefault(self._stretches[each].start, []).append(taken[each])
        self._clauses.say(*onward[self._stretches[stretches[0]].start])
        for each in stretches:
            if self._stretches[each].end in onward:
                self._clauses.say_if([taken[each]], *onward[self._stretches[each].end])

    def _say_of_stretch(
        self, taken: Statement, turn: int, before: Sequence[Statement], after: Sequence[Statement]
    ) -> None:
        """What a cart carries before a stretch follows from what it carries after it."""
        for here, there in zip(before, after, strict=False):
            self._clauses.say_if([taken, there], here)
        if turn == NO_TURN:
            return
        empty = self._is_default(turn)
        names = self.palette.has(turn >> 1)
        self.palette.must_have(turn >> 1, taken, -empty)
        for here, name in zip(before, names, strict=True):
            self._clauses.say_if([taken, -empty, name], here)
        for there, name in zip(after, names, strict=False):
            self._clauses.say_if([taken, empty, there], -name)

    def cost_no_more(self, part: Part, limit: int) -> None:
        """What is paid in a part has a limit."""
        weights: dict[Statement, int] = {}
        for reader in part.readers:
            limit -= self._add_default(reader, weights)
        for number in part.journeys:
            journey, sure = self._narrowed.journeys[number], {*self._narrowed.sure[number], NO_TURN}
            for each in journey.stretches:
                turn = self._stretches[each].turn
                if turn not in sure and journey.weight:
                    called = self._clauses.all_of([self._taken[number][each], -self._is_default(turn)])
                    weights[called] = weights.get(called, 0) + journey.weight
        weights.pop(self._clauses.false, None)
        limit_weight(self._clauses, list(weights.items()), limit)

    def cost_no_more_alone(self, reader: int, costs: Sequence[tuple[Part, int]]) -> None:
        """A reader that belongs to no part has a default that is cheapest."""
        if not any(reader in part.readers for part, _ in costs):
            weights: dict[Statement, int] = {}
            self._add_default(reader, weights)
            for statement in weights:
                self._clauses.say(-statement)

    def _add_default(self, reader: int, weights: dict[Statement, int]) -> int:
        """Adds what is paid for a default; gives what is paid with either."""
        first, second = self._narrowed.tally.sure[2 * reader : 2 * reader + 2]
        if first != second:
            dearer = self._second[reader] if first > second else -self._second[reader]
            weights[dearer] = abs(first - second)
        return min(first, second)

    def found(self, bound: int) -> Named:
        """What the solver found."""
        defaults = [int(self._clauses.holds(second)) for second in self._second]
        runs = [
            self._run(number) if number in self._taken else journey.stretches
            for number, journey in enumerate(self._narrowed.journeys)
        ]
        choice = choice_of(self._narrowed, defaults, runs)
        called = set(choice.conflicts(self._stretches).readers)
        names = tuple(
            self.palette.colour(reader) if reader in called else None for reader in range(len(defaults))
        )
        return Named(choice, names, bound)

    def _run(self, number: int) -> tuple[int, ...]:
        """A way of a journey that the solver took."""
        journey = self._narrowed.journeys[number]
        onward: dict[int, int] = {}
        for each in journey.stretches:
            if self._clauses.holds(self._taken[number][each]):
                onward.setdefault(self._stretches[each].start, each)
        place = self._stretches[journey.stretches[0]].start
        run: list[int] = []
        while place in onward:
            run.append(onward[place])
            place = self._stretches[run[-1]].end
        return tuple(run)
