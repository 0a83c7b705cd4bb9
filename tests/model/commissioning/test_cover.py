"""The fewest tests: published circuits, the trap for greedy choices, and all choices tried one by one."""

from __future__ import annotations

from itertools import combinations
from random import Random

import pytest

from model.commissioning.cover import fewest_that_cover
from tests.model.commissioning.circuits import C17, FULL_ADDER, TABLE_1_1, Circuit

GATES = ("X1", "X2", "A1", "A2", "O1")


def all_fewest(sets: list[frozenset]) -> list[tuple[int, ...]]:
    """Every smallest choice that covers all, in order: by trying."""
    everything = frozenset().union(*sets)
    for size in range(len(sets) + 1):
        chosen = [
            places
            for places in combinations(range(len(sets)), size)
            if frozenset().union(*(sets[place] for place in places)) == everything
        ]
        if chosen:
            return chosen
    raise AssertionError("all sets together cover everything")


def vectors(words: str) -> list[tuple[int, ...]]:
    return [tuple(map(int, word)) for word in words.split()]


@pytest.mark.parametrize(
    ("circuit", "lines", "faults", "fewest", "choices", "complete"),
    [
        # 34 faults: ffy062/VLSI_Testing_Final c17.pat; that none is hidden, 4, and 10 such sets: by trying.
        (
            C17,
            C17.lines,
            34,
            4,
            10,
            ["10010 01111 11010 10101", "00100 01100 10011 11111", "00101 01010 10000 11111"],
        ),
        # 18 faults and four vectors: stated in the book; the set by trying.
        (TABLE_1_1, TABLE_1_1.lines, 18, 4, None, ["001 011 100 110"]),
        # Gate outputs alone: 10 faults, 3 vectors, 14 such sets; by trying.
        (FULL_ADDER, GATES, 10, 3, 14, ["000 011 111"]),
    ],
    ids=["c17", "Table 1.1", "full adder"],
)
def test_published_circuits(
    circuit: Circuit,
    lines: tuple[str, ...],
    faults: int,
    fewest: int,
    choices: int | None,
    complete: list[str],
) -> None:
    shown = circuit.shown(lines)
    assert 2 * len(lines) == faults
    assert len(frozenset().union(*shown.values())) == faults
    for words in complete:
        assert len(frozenset().union(*(shown[vector] for vector in vectors(words)))) == faults
    taken = fewest_that_cover(list(shown.values()))
    assert len(taken) == fewest
    every = all_fewest(list(shown.values()))
    assert taken == every[0]
    assert choices is None or len(every) == choices


def test_a_choice_that_greed_misses() -> None:
    """The textbook case, from memory: taking the largest set first needs three, and two do."""
    sets = [{3, 4, 5, 6, 10, 11, 12, 13}, {1, 2, 8, 9}, {0, 7}, set(range(7)), set(range(7, 14))]
    assert fewest_that_cover(sets) == (3, 4)


def test_knuths_exact_cover() -> None:
    """Of A{1,4,7} B{1,4} C{4,5,7} D{3,5,6} E{2,3,6,7} F{2,7} only B, D and F cover 1 to 7 without overlap
    (Knuth, from memory); with overlaps allowed no two do, and A, D, E come first."""
    sets = [{1, 4, 7}, {1, 4}, {4, 5, 7}, {3, 5, 6}, {2, 3, 6, 7}, {2, 7}]
    assert fewest_that_cover(sets) == all_fewest([frozenset(s) for s in sets])[0]
    assert (1, 3, 5) in all_fewest([frozenset(s) for s in sets])
    assert len(fewest_that_cover(sets)) == 3


def test_nothing_to_cover() -> None:
    assert fewest_that_cover([]) == ()
    assert fewest_that_cover([set(), set()]) == ()


@pytest.mark.parametrize("seed", range(60))
def test_random_sets(seed: int) -> None:
    """The very first of the smallest choices; no smaller one covers."""
    random = Random(seed)
    elements = range(random.randint(1, 14))
    sets = [
        frozenset(random.sample(elements, random.randint(0, min(5, len(elements)))))
        for _ in range(random.randint(1, 9))
    ]
    assert fewest_that_cover(sets) == all_fewest(sets)[0]
