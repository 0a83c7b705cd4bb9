"""Colouring: the fewest colours so that no two that are at odds share one.

Readers are coloured with names, but nothing here knows of that: what is coloured are whole numbers from 0,
and bit w of ``odds[v]`` says that v and w are at odds. A clique, all of whose members are at odds with one
another, needs as many colours as it has members; that bounds the number from below.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from heapq import heapify, heappop, heappush
from typing import Final

import msgspec

from model.clauses import Answer, Clauses
from model.network.colouring_clauses import ColourClauses

Odds = Sequence[int]
"""For each one the set of those that it is at odds with, as bits."""
CLIQUE_WORK: Final = 300_000
"""How often anyone is looked at, in the search for the largest clique, before the best so far is taken."""
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
            answer = clauses.solve(palette.at_most(best.number - 1))
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
    weight = [-each.bit_count() for each in odds]
    # Those with a pinned colour come before all others. Who sees more than when it was put in is there again.
    waiting = [(-len(odds) if one in pinned else 0, weight[one], one) for one in range(len(odds))]
    heapify(waiting)
    while waiting:
        _, _, one = heappop(waiting)
        if colours[one] >= 0:
            continue
        colour = colours[one] = pinned.get(one, (~seen[one] & (seen[one] + 1)).bit_length() - 1)
        for other in members(odds[one]):
            if colours[other] < 0 and not seen[other] >> colour & 1:
                seen[other] |= 1 << colour
                heappush(waiting, (-seen[other].bit_count(), weight[other], other))
    return colours


def largest_clique(odds: Odds, work: int = CLIQUE_WORK) -> list[int]:
    """A clique, the largest there is where so much work is enough to find it.

    Branch and bound: those that are left are coloured greedily, and add no more members than they need
    colours. Tomita & Seki 2003, cited from memory.
    """
    best = _greedy_clique(odds)
    left = (1 << len(odds)) - 1
    waiting = [_Branch([], left, _in_classes(odds, left))]
    while waiting and work > 0:
        branch = waiting[-1]
        if not branch.ordered or len(branch.chosen) + branch.ordered[-1][1] <= len(best):
            waiting.pop()
            continue
        one, _ = branch.ordered.pop()
        branch.left &= ~(1 << one)
        chosen, left = [*branch.chosen, one], branch.left & odds[one]
        best = max(best, chosen, key=len)
        waiting.append(_Branch(chosen, left, _in_classes(odds, left)))
        work -= 1 + len(waiting[-1].ordered)
    return sorted(best)


def _greedy_clique(odds: Odds) -> list[int]:
    """Whoever is at odds with all before, those first that are at odds with most."""
    clique: list[int] = []
    left = (1 << len(odds)) - 1
    for one in sorted(range(len(odds)), key=lambda each: -odds[each].bit_count()):
        if left >> one & 1:
            clique.append(one)
            left &= odds[one]
    return clique


class _Branch:
    """A clique that is growing: its members, and those at odds with all of them that are left to be tried."""

    def __init__(self, chosen: list[int], left: int, ordered: list[tuple[int, int]]) -> None:
        self.chosen, self.left, self.ordered = chosen, left, ordered


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
