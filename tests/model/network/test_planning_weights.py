"""Limits on sums of weights, tried with all values that the statements can have."""

from __future__ import annotations

import random
from itertools import product

import pytest

from model.clauses import Answer, Clauses
from model.network.planning_weights import limit_weight


@pytest.mark.parametrize("seed", range(12))
def test_just_those_that_weigh_no_more_are_allowed(seed: int) -> None:
    rng = random.Random(seed)
    weights = [rng.randint(1, rng.choice((3, 9, 40))) for _ in range(6)]
    limit = rng.randint(0, sum(weights) + 1)
    clauses = Clauses()
    statements = [clauses.new() for _ in weights]
    limit_weight(clauses, list(zip(statements, weights, strict=True)), limit)
    for values in product((False, True), repeat=len(weights)):
        given = [one if value else -one for one, value in zip(statements, values, strict=True)]
        weight = sum(each for each, value in zip(weights, values, strict=True) if value)
        assert clauses.solve(given) is (Answer.YES if weight <= limit else Answer.NO)
    clauses.close()
