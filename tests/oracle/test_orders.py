"""The enumeration of all orders against every order tried one by one, and with nothing left out."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import permutations, product
from random import Random

import pytest

from tests.oracle.adapter import drawing
from tests.oracle.orders import AXES, Orders, plain_runs
from tests.oracle.shapes import STEP, Place, Rail, build

Shapes = frozenset[tuple[Place, str]]


def tried_one_by_one(pieces: list[Rail], sequence: tuple[Place, ...] = ()) -> set[Shapes]:
    """The ways in which the rails come out over all orders and all facings."""
    found = set()
    for order in permutations(pieces):
        if [at for _, at, _ in order if at in sequence] != list(sequence):
            continue
        for axes in product(AXES, repeat=len(order)):
            track = build([(part, at, axis) for (part, at, _), axis in zip(order, axes, strict=True)])
            found.add(frozenset(track.shape.items()))
    return found


def enumerated(orders: Orders) -> set[Shapes]:
    return {frozenset(orders.shapes(state).items()) for state in orders.states}


def blob(seed: int, count: int, height: int = 2) -> list[Rail]:
    """Rails of all three parts in a small box, connected or not."""
    random = Random(seed)
    cells = list(product(range(3), range(64, 64 + random.randint(1, height)), range(3)))
    parts = random.choices(("rail", "booster-rail", "detector-rail"), (8, 1, 1), k=count)
    return [(part, at, "north") for part, at in zip(parts, random.sample(cells, count), strict=True)]


def with_runs(seed: int) -> list[Rail]:
    """A small core on one level or two, with runs that lead away from it."""
    random = Random(seed)
    core = [(x, 64, z) for x, z in random.sample(list(product(range(2), repeat=2)), random.randint(1, 4))]
    pieces = {at: random.choice(("rail", "rail", "rail", "booster-rail")) for at in core}
    for _ in range(random.randint(1, 3)):
        dx, dz = random.choice(list(STEP.values()))
        x, y, z = max(core, key=lambda at: at[0] * dx + at[2] * dz + random.random() / 2)
        rise = random.choice((0, 0, 0, 1, -1))
        for step in range(1, random.randint(3, 4)):
            at = (x + dx * step, y + rise, z + dz * step)
            pieces[at] = random.choice(("rail", "rail", "rail", "detector-rail"))
    return [(part, at, "north") for at, part in pieces.items()]


def small_plans() -> Iterator[list[Rail]]:
    yield from (blob(seed, count) for count in (1, 2, 3, 4) for seed in range(8))
    yield from (blob(seed, 5) for seed in range(6))
    yield [("rail", (x, 64, 0), "north") for x in range(4)]


def test_every_order_tried_one_by_one() -> None:
    for pieces in small_plans():
        tried = tried_one_by_one(pieces)
        assert enumerated(Orders(pieces)) == tried, drawing(pieces)
        assert enumerated(Orders(pieces, whole=True)) == tried, drawing(pieces)


@pytest.mark.slow
@pytest.mark.timeout(3600)
def test_every_order_of_six_rails_tried_one_by_one() -> None:
    for seed in range(6):
        pieces = blob(seed, 6)
        assert enumerated(Orders(pieces)) == tried_one_by_one(pieces), drawing(pieces)


def test_only_orders_with_a_given_sequence() -> None:
    for seed in range(8):
        pieces = blob(seed, 4, height=1)
        sequence = tuple(at for _, at, _ in pieces[:3])
        found = enumerated(Orders(pieces, whole=True, sequence=sequence))
        assert found == tried_one_by_one(pieces, sequence), drawing(pieces)


def test_leaving_plain_runs_out_loses_and_adds_nothing() -> None:
    left_out = 0
    for seed in range(60):
        pieces = with_runs(seed)
        if len(pieces) > 11:
            continue
        left_out += len(plain_runs([at for _, at, _ in pieces]))
        assert enumerated(Orders(pieces)) == enumerated(Orders(pieces, whole=True)), drawing(pieces)
    assert left_out > 30


def test_every_way_has_a_witness() -> None:
    for seed in range(12):
        pieces = with_runs(seed)
        orders = Orders(pieces)
        for state in orders.states[:: 1 + len(orders.states) // 20]:
            witness = orders.witness(state)
            assert sorted(at for _, at, _ in witness) == sorted(at for _, at, _ in pieces)
            assert orders.can_give(build(witness).shape)


def test_other_ways_are_refused() -> None:
    pieces = blob(3, 5, height=1)
    orders = Orders(pieces)
    shapes = orders.shapes(orders.states[0])
    assert orders.can_give(shapes)
    for at in shapes:
        others = [{**shapes, at: shape} for shape in ("rising-north", "rising-east")]
        assert not any(map(orders.can_give, others))
