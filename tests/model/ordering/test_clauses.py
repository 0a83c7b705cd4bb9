"""Sentences for the solver mean what they say: compared with all values of a few statements."""

from __future__ import annotations

from itertools import combinations, product

import pytest

from model.clauses import Answer, Clauses, Statement


def solutions(clauses: Clauses, of: list[Statement], *assumed: Statement) -> set[tuple[bool, ...]]:
    """All values that these statements can have, each ruled out after it was found."""
    found: set[tuple[bool, ...]] = set()
    while clauses.solve(assumed) is Answer.YES:
        values = tuple(map(clauses.holds, of))
        assert values not in found
        found.add(values)
        clauses.say(*(-one if value else one for one, value in zip(of, values, strict=True)))
    return found


def three() -> tuple[Clauses, list[Statement]]:
    clauses = Clauses()
    return clauses, [clauses.new() for _ in range(3)]


def test_all_of_and_any_of() -> None:
    clauses, some = three()
    every, one = clauses.all_of(some), clauses.any_of(some)
    expected = {(*values, all(values), any(values)) for values in product((False, True), repeat=3)}
    assert solutions(clauses, [*some, every, one]) == expected


def test_what_is_known_needs_no_statement() -> None:
    clauses, (one, *_) = three()
    assert clauses.any_of([one, clauses.true]) == clauses.true
    assert clauses.any_of([one, clauses.false]) == one
    assert clauses.any_of([]) == clauses.false
    assert clauses.all_of([]) == clauses.true


def test_exactly_one() -> None:
    clauses, some = three()
    clauses.exactly_one_of(some)
    assert solutions(clauses, some) == {(True, False, False), (False, True, False), (False, False, True)}


@pytest.mark.parametrize("number", range(5))
def test_at_most_holds_only_where_it_is_assumed(number: int) -> None:
    clauses = Clauses()
    some = [clauses.new() for _ in range(4)]
    limit = clauses.at_most(number, some)
    expected = {values for values in product((False, True), repeat=4) if sum(values) <= number}
    assert solutions(clauses, some, limit) == expected
    assert clauses.solve([-limit]) is (Answer.YES if number < 4 else Answer.NO)


def test_same_under_circumstances() -> None:
    clauses, (given, one, other) = three()
    clauses.same_if([given], {"x": one}, {"x": other})
    expected = {v for v in product((False, True), repeat=3) if not v[0] or v[1] == v[2]}
    assert solutions(clauses, [given, one, other]) == expected


def test_a_core_names_what_is_at_odds() -> None:
    clauses, some = three()
    for pair in combinations(some[:2], 2):
        clauses.say(*(-one for one in pair))
    assert clauses.solve(some) is Answer.NO
    assert set(clauses.at_odds()) == set(some[:2])
