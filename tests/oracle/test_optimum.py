"""The cheapest order against every order of tiny junctions, and against random orders of larger ones."""

from __future__ import annotations

from itertools import permutations, product
from random import Random

import pytest

from tests.oracle.adapter import drawing
from tests.oracle.choice import Drawn, best_choice, number_of_choices
from tests.oracle.compact_junctions import SMALL, TINY, compact_junction, shuffled
from tests.oracle.optimum import Cost, cost_of_order, optimum
from tests.oracle.orders import AXES
from tests.oracle.random_junctions import MOST_CHOICES, Junction
from tests.oracle.shapes import Rail, build


def cost_of_best_choice(pieces: list[Rail], junction: Junction) -> Cost | None:
    """What the junction costs when placed like this, all choices tried; ``None`` where none serves."""
    best = best_choice(Drawn(pieces, *junction[1:]))
    throws = sum(len(cells) for cells in best.thrown.values())
    return (len(best.idle), throws, len(best.wired)) if best.serves else None


def tried_one_by_one(junction: Junction) -> Cost | None:
    """The least cost over all orders and facings; what comes out alike is worked out once."""
    costs: dict[object, Cost | None] = {}
    for order in permutations(junction[0]):
        for axes in product(AXES, repeat=len(order)):
            pieces = [(part, at, axis) for (part, at, _), axis in zip(order, axes, strict=True)]
            track = build(pieces)
            three_way = tuple(at for at in track.part if track.neighbours(at) == 3)
            key = (three_way, frozenset(track.shape.items()))
            if key not in costs:
                costs[key] = cost_of_best_choice(pieces, junction)
    return min((cost for cost in costs.values() if cost is not None), default=None)


def told(seed: int, junction: Junction) -> str:
    return f"seed {seed}\n{drawing(junction[0])}\n{junction[1]}\n{junction[2]}"


def compare_with_every_order(seeds: range, rails: int) -> list[Cost | None]:
    costs = []
    for seed in seeds:
        junction = compact_junction(seed, TINY._replace(kept=rails))
        best = optimum(*junction)
        assert best.exact
        assert best.cost == tried_one_by_one(junction), told(seed, junction)
        costs.append(best.cost)
    return costs


def test_against_every_order_of_tiny_junctions() -> None:
    assert len(set(compare_with_every_order(range(8), 5))) > 1


@pytest.mark.slow
@pytest.mark.timeout(3600)
def test_against_every_order_of_small_junctions() -> None:
    assert len(set(compare_with_every_order(range(20), 6))) > 4


def test_no_random_order_is_cheaper() -> None:
    dearer = 0
    for seed in range(8):
        junction = compact_junction(seed, SMALL._replace(branching=(2, 4), kept=8))
        best = optimum(*junction)
        for attempt in range(8):
            pieces = shuffled(Random(attempt), junction[0])
            if number_of_choices(Drawn(pieces, *junction[1:])) <= MOST_CHOICES:
                cost = cost_of_best_choice(pieces, junction)
                assert cost == cost_of_order(pieces, *junction[1:]), told(seed, junction)
                assert cost is None or (best.cost is not None and best.cost <= cost), told(seed, junction)
                dearer += cost != best.cost
    assert dearer > 5


def test_the_order_has_the_cost() -> None:
    served = 0
    for seed in range(10):
        junction = compact_junction(seed, SMALL._replace(branching=(2, 5), kept=9))
        best = optimum(*junction)
        if best.order is None:
            continue
        assert sorted(at for _, at, _ in best.order) == sorted(at for _, at, _ in junction[0])
        assert cost_of_order(best.order, *junction[1:]) == best.cost, told(seed, junction)
        served += 1
    assert served >= 2


def test_ruling_out_more_wired_switches_than_are_tried(monkeypatch: pytest.MonkeyPatch) -> None:
    """With fewer tried it may be left open whether the cost is the least, but it is never said wrongly."""
    sure = 0
    for seed in range(12):
        junction = compact_junction(seed, SMALL._replace(branching=(2, 4), kept=8))
        monkeypatch.setattr("tests.oracle.optimum.MOST_WIRED", 6)
        least = optimum(*junction).cost
        for most in (0, 1):
            monkeypatch.setattr("tests.oracle.optimum.MOST_WIRED", most)
            best = optimum(*junction)
            assert not best.exact or best.cost == least, told(seed, junction)
            sure += best.exact
    assert 10 < sure < 24
