"""Colouring: the fewest colours so that no two that are at odds share one.

Readers are coloured with names, but nothing here knows of that: what is coloured are whole numbers from 0,
and bit w of ``odds[v]`` says that v and w are at odds. A clique, all of whose members are at odds with one
another, needs as many colours as it has members; that bounds the number from below.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Final

import msgspec

from model.network.colouring_clauses import ColourClauses
from model.ordering.clauses import Answer, Clauses

Odds = Sequence[int]
"""For each one the set of those that it is at odds with, as bits."""
CLIQUE_STEPS: Final = 20_000
"""How often a clique is widened, in the search for the largest, before the best so far is taken."""
CLAUSES_LIMIT: Final = 1_000_000
"""Sentences that a solver may be told; beyond, the greedy colouring is what there is."""
NO_PINS: Final[Mapping[int, int]] = {}


class Colouring(msgspec.Struct, frozen=True):
    """A colour for each, and how few colours there could be at the least."""

    colours: tuple[int, ...]
    bound: int
    """Proved: no colouring has fewer."""

    @property
    def number(self) -> int:
        """How many different colours there are."""
        return len(set(self.colours))

    @property
    def proved(self) -> bool:
        """Whether no colouring has fewer colours."""
        return self.bound >= self.number


def colourings(odds: Odds, pinned: Mapping[int, int] = NO_PINS) -> Iterator[Colouring]:
    """Colourings, each better or more certain than the one before, or as good; the last one is the result.

    ``pinned`` gives colours, from 0 without a gap, to some, no two of them at odds having the same. Gives the
    best so far after each step of the solver, so that a caller can stop between two. Ends when the number
    of colours is proved to be the fewest, or at once where that is too much for a solver.
    """
    clique = largest_clique(with_pins_at_odds(odds, pinned))
    best = Colouring(tuple(greedy_colours(odds, pinned)), len(clique))
    yield best
    if not best.proved and sum(map(int.bit_count, odds)) // 2 * best.number <= CLAUSES_LIMIT:
        yield from _fewer(odds, pinned, clique, best)


def _fewer(
    odds: Odds, pinned: Mapping[int, int], clique: Sequence[int], best: Colouring
) -> Iterator[Colouring]:
    """Asks a solver for fewer and fewer colours, until it proves that there are no fewer."""
    clauses = Clauses()
    try:
        palette = ColourClauses(clauses, len(odds), best.number, pinned)
        if not pinned:
            palette.give_in_order(clique)
        for one in range(len(odds)):
            palette.must_have(one)
            for other in members(odds[one] >> one):
                palette.at_odds(one, one + other)
        while not best.proved:
            answer = clauses.solve(palette.fewer_than(best.number))
            if answer is Answer.YES:
                best = Colouring(tuple(map(palette.colour, range(len(odds)))), best.bound)
            elif answer is Answer.NO:
                best = Colouring(best.colours, best.number)
            yield best
    finally:
        clauses.close()


def greedy_colours(odds: Odds, pinned: Mapping[int, int] = NO_PINS) -> list[int]:
    """A colouring by DSATUR: next comes whoever sees most colours, then whoever is at odds with most.

    Brélaz 1979, Communications of the ACM 22:251-256, cited from memory.
    """
    colours = [-1] * len(odds)
    seen = [0] * len(odds)
    weight = [each.bit_count() for each in odds]
    left = set(range(len(odds)))
    order = sorted(pinned)
    while left:
        if order:
            one = order.pop()
            colour = pinned[one]
        else:
            one = max(left, key=lambda each: (seen[each].bit_count(), weight[each], -each))
            colour = (~seen[one] & (seen[one] + 1)).bit_length() - 1
        left.remove(one)
        colours[one] = colour
        for other in members(odds[one]):
            seen[other] |= 1 << colour
    return colours


def largest_clique(odds: Odds, steps: int = CLIQUE_STEPS) -> list[int]:
    """A clique, the largest there is where so many steps are enough to find it.

    Branch and bound, those that are left being coloured greedily: they add no more than they need colours.
    Tomita & Seki 2003, from memory.
    """
    best: list[int] = []
    waiting: list[tuple[list[int], list[tuple[int, int]], int]] = []
    everyone = (1 << len(odds)) - 1
    chosen: list[int] = []
    ordered = _in_classes(odds, everyone)
    left = everyone
    for _ in range(steps):
        while ordered and len(chosen) + ordered[-1][1] <= len(best):
            if not waiting:
                return sorted(best)
            chosen, ordered, left = waiting.pop()
        if not ordered:
            if not waiting:
                break
            chosen, ordered, left = waiting.pop()
            continue
        one, _ = ordered.pop()
        left &= ~(1 << one)
        waiting.append((chosen, ordered, left))
        chosen = [*chosen, one]
        best = max(best, chosen, key=len)
        left &= odds[one]
        ordered = _in_classes(odds, left)
    return sorted(best)


def _in_classes(odds: Odds, left: int) -> list[tuple[int, int]]:
    """Those left, each with a number: it and those before it hold no clique with more members."""
    found: list[tuple[int, int]] = []
    number = 0
    while left:
        number += 1
        free = left
        while free:
            one = (free & -free).bit_length() - 1
            found.append((one, number))
            free &= ~(odds[one] | 1 << one)
            left &= ~(1 << one)
    return found


def with_pins_at_odds(odds: Odds, pinned: Mapping[int, int]) -> Odds:
    """Those that are pinned to unlike colours are at odds too."""
    if not pinned:
        return odds
    by_colour: dict[int, int] = {}
    for one, colour in pinned.items():
        by_colour[colour] = by_colour.get(colour, 0) | 1 << one
    everyone = sum(by_colour.values())
    return [
        each | (everyone & ~by_colour[pinned[one]] if one in pinned else 0) for one, each in enumerate(odds)
    ]


def members(bits: int) -> Iterator[int]:
    """The numbers in a set of bits, in order."""
    while bits:
        lowest = bits & -bits
        yield lowest.bit_length() - 1
        bits ^= lowest
