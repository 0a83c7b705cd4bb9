"""Colours as sentences for a SAT solver."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from model.clauses import Clauses, Statement


class ColourClauses:
    """Says who has which colour. Pinned colours come first, the others are used in the order of numbers."""

    def __init__(self, clauses: Clauses, count: int, colours: int, pinned: Mapping[int, int]) -> None:
        """``colours``: how many there may be besides those that are pinned."""
        self._clauses = clauses
        self._pinned = len(set(pinned.values()))
        self._colours = range(self._pinned + colours)
        self._used = [clauses.new() for _ in self._colours]
        self._has = [[clauses.new() for _ in self._colours] for _ in range(count)]
        for has in self._has:
            for colour in self._colours:
                clauses.say(-has[colour], self._used[colour])
        for colour in self._colours[self._pinned + 1 :]:
            clauses.say(-self._used[colour], self._used[colour - 1])
        for one, colour in pinned.items():
            for other in self._colours:
                if other != colour:
                    clauses.say(-self._has[one][other])
        self._limits: dict[int, Statement] = {}

    def has(self, one: int) -> Sequence[Statement]:
        """For each colour whether one has it."""
        return self._has[one]

    def must_have(self, one: int, *given: Statement) -> None:
        """One has a colour, where what is given holds."""
        self._clauses.say_if(given, *self._has[one])

    def at_odds(self, one: int, other: int) -> None:
        """Two share no colour."""
        for has, too in zip(self._has[one], self._has[other], strict=True):
            self._clauses.say(-has, -too)

    def give_in_order(self, clique: Sequence[int]) -> None:
        """A clique has the first colours: which of them have which colours is all the same without pins."""
        for colour, one in zip(self._colours, clique, strict=False):
            self._clauses.say(self._has[one][colour])

    def at_most(self, number: int) -> list[Statement]:
        """What to assume for no more colours in all."""
        if not self._pinned:
            return [-used for used in self._used[number:]]
        if number not in self._limits:
            self._limits[number] = self._clauses.at_most(number, self._used)
        return [self._limits[number]]

    def colour(self, one: int) -> int:
        """The first colour that one has in what was found last; -1 where it has none."""
        return next((colour for colour in self._colours if self._clauses.holds(self._has[one][colour])), -1)
