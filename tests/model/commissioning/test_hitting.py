"""Minimal hitting sets: published families, any order of the input, and a second program."""

from __future__ import annotations

from itertools import chain, combinations, permutations
from random import Random

import pytest
from pysat.examples.hitman import Hitman

from model.commissioning.hitting import hitting_tree, minimal_hitting_sets


def families(*sets: str | set[int]) -> list[frozenset]:
    return [frozenset(members) for members in sets]


def found(sets: list[frozenset]) -> list[set]:
    return [set(chosen) for chosen in minimal_hitting_sets(sets)]


GREINER = families("ab", "bc", "ac", "bd", "b")
REITER = families({2, 4, 5}, {1, 2, 3}, {1, 3, 5}, {2, 4, 6}, {2, 4}, {2, 3, 5}, {1, 6})


@pytest.mark.parametrize("order", list(permutations(GREINER)))
def test_greiner_in_every_order(order: tuple[frozenset[str], ...]) -> None:
    """The case in which comparing labels loses a set: Greiner, Smith and Wilkerson, Artificial Intelligence
    41 (1989) 79-88; citation from memory, sets found again by hand.
    """
    assert minimal_hitting_sets(order) == [("a", "b"), ("b", "c")]


def test_reiter_in_every_order() -> None:
    """The figure of the tree in Reiter, Artificial Intelligence 32 (1987) 57-95; from memory."""
    wanted = [(1, 2), (1, 3, 4), (1, 4, 5), (2, 3, 6), (2, 5, 6), (3, 4, 6)]
    for order in permutations(REITER):
        assert minimal_hitting_sets(order) == wanted


def test_example_of_hitman() -> None:
    """The example in the documentation of PySAT's Hitman: nine sets."""
    wanted = [{1, 5}, {1, 6}, {1, 7}, *({one, 4, other} for one in (2, 3) for other in (5, 6, 7))]
    assert found(families({1, 2, 3}, {1, 4}, {5, 6, 7})) == wanted


@pytest.mark.parametrize(
    ("sets", "wanted"),
    [
        ([{1, 3}, {1, 4}], [{1}, {3, 4}]),
        ([{1, 2}, {3, 4}, {1, 2, 5}], [{1, 3}, {1, 4}, {2, 3}, {2, 4}]),
        (
            [{1, 2, 3, 4}, {3}, {2, 4}, {15}, {9, 2, 15}, {9, 3}, {8, 7}, {8, 9, 1, 7}],
            [{2, 3, 7, 15}, {2, 3, 8, 15}, {3, 4, 7, 15}, {3, 4, 8, 15}],
        ),
    ],
)
def test_values_of_minihit(sets: list[set[int]], wanted: list[set[int]]) -> None:
    """From the tests of TheMatjaz/minihit, test_hsdag.py."""
    assert found(families(*sets)) == wanted


def test_nothing_to_meet_and_nothing_that_meets() -> None:
    assert minimal_hitting_sets([]) == [()]
    assert minimal_hitting_sets(families({1}, set())) == []


def random_family(random: Random) -> list[frozenset[int]]:
    elements = range(1, random.randint(3, 9))
    sizes = (random.randint(1, len(elements)) for _ in range(random.randint(1, 8)))
    return [frozenset(random.sample(elements, size)) for size in sizes]


def minimal_members(sets: list[frozenset[int]]) -> set[frozenset[int]]:
    return {members for members in sets if not any(other < members for other in sets)}


@pytest.mark.parametrize("seed", range(150))
def test_random_families(seed: int) -> None:
    """Hitman, a program of its own, finds the same; and meeting what meets gives back the smallest members
    (Berge's duality of hypergraphs, from memory)."""
    random = Random(seed)
    sets = random_family(random)
    hitting = {frozenset(chosen) for chosen in minimal_hitting_sets(sets)}
    with Hitman(bootstrap_with=[list(members) for members in sets], htype="sorted") as hitman:
        assert hitting == {frozenset(chosen) for chosen in hitman.enumerate()}
    assert {frozenset(chosen) for chosen in minimal_hitting_sets(hitting)} == minimal_members(sets)
    random.shuffle(sets)
    assert {frozenset(chosen) for chosen in minimal_hitting_sets(sets)} == hitting


@pytest.mark.parametrize("seed", range(100))
def test_sets_whose_supersets_are_not_fine(seed: int) -> None:
    """As with faults that mask one another: what is fine is drawn by lot, a label names all that helps."""
    random = Random(seed)
    elements = range(6)
    every = [frozenset(c) for c in chain.from_iterable(combinations(elements, n) for n in range(5))]
    fine = set(random.sample(every, random.randint(1, 12)))

    def label(chosen: frozenset[int]) -> set[int] | None:
        if chosen in fine:
            return None
        return set().union(*(larger - chosen for larger in fine if larger > chosen))

    for most in range(5):
        wanted = {s for s in fine if len(s) <= most and not any(smaller < s for smaller in fine)}
        assert {frozenset(chosen) for chosen in hitting_tree(label, most)} == wanted
