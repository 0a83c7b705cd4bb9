"""The survey against all ways in which the rails of small plans can come out."""

from __future__ import annotations

from random import Random

import pytest

from model.grid import Cell
from model.ordering import Survey, survey
from model.plan import Plan
from model.track.layout import Layout
from model.track.shapes import Shape
from tests.model.ordering.comparing import SECONDS, built_in, told
from tests.oracle.adapter import WORD_OF, pieces_from, plan_from, shapes_in
from tests.oracle.compact_junctions import SMALL, TINY, Sort, compact_junction
from tests.oracle.orders import Orders
from tests.oracle.packed import CODE
from tests.oracle.shapes import CURVES, Place, build

SHAPE_OF = {word: shape for shape, word in WORD_OF.items()}
FEW = SMALL._replace(branching=(2, 5), kept=10)
Shapes = dict[Place, str]


def last(plan: Plan, shapes: Shapes) -> Survey:
    """The survey's last word."""
    seen = {Cell(*at): SHAPE_OF[word] for at, word in shapes.items()}
    return list(survey(plan, seen, SECONDS))[-1]


def can_stand(orders: Orders, shapes: Shapes) -> bool:
    """Whether some order gives these rails these shapes, whatever the others come to."""
    states = orders.states
    fixed = {at: run.in_line for run in orders.runs for at in run.rails[1:]}
    if any(fixed.get(at, word) != word for at, word in shapes.items()):
        return False
    for at, word in shapes.items():
        if at not in fixed:
            states = states[orders.packed.code(states, at) == CODE[word]]
    return bool(states.size)


def compare_possible(plan: Plan, shapes: Shapes) -> None:
    """An order is found and gives just these shapes, by the second implementation and by the model."""
    found = last(plan, shapes)
    assert found.impossible == (), told(shapes, plan)
    assert found.proved, told(shapes, plan)
    assert found.rails is not None, told(shapes, plan)
    after = built_in(plan, found.rails)
    assert shapes.items() <= build(pieces_from(after)).shape.items(), told(shapes, plan)
    assert shapes.items() <= shapes_in(Layout(after)).items(), told(shapes, plan)


def compare_impossible(plan: Plan, orders: Orders, shapes: Shapes) -> None:
    """It is refused; each rail named cannot stand even alone, or all can without any one of them."""
    found = last(plan, shapes)
    assert found.rails is None, told(shapes, plan)
    assert found.proved, told(shapes, plan)
    named = {tuple(cell): shapes[tuple(cell)] for cell in found.impossible}
    assert named, told(shapes, plan)
    assert not can_stand(orders, named), told(named, plan)
    alone = [can_stand(orders, {at: word}) for at, word in named.items()]
    without = [can_stand(orders, {at: named[at] for at in named if at != left_out}) for left_out in named]
    assert not any(alone) if found.alone else all(alone) and all(without), told(named, plan)


def redrawn(random: Random, orders: Orders, shapes: Shapes) -> Shapes:
    """The same with one or two rails drawn otherwise, flat."""
    drawn = dict(shapes)
    for at in random.sample(list(shapes), random.randint(1, 2)):
        words = ("north-south", "east-west", *(CURVES if orders.parts[at] == "rail" else ()))
        drawn[at] = random.choice(words)
    return drawn


def compare_survey(seed: int, sort: Sort, samples: int) -> tuple[int, int]:
    """Some ways that can be and some that cannot; returns how many of each."""
    random = Random(seed)
    pieces, arms, routes = compact_junction(seed, sort)
    plan = plan_from(pieces, arms, routes)
    orders = Orders(pieces)
    counts = [0, 0]
    for state in random.sample(orders.states.tolist(), min(samples, len(orders.states))):
        shapes = orders.shapes(state)
        compare_possible(plan, shapes)
        some = dict(random.sample(list(shapes.items()), len(shapes) // 2))
        for drawn in (some, redrawn(random, orders, shapes), redrawn(random, orders, some)):
            if can_stand(orders, drawn):
                compare_possible(plan, drawn)
            else:
                compare_impossible(plan, orders, drawn)
            counts[not can_stand(orders, drawn)] += 1
    return counts[0], counts[1]


def compare_surveys(seeds: range, sort: Sort, samples: int) -> None:
    counts = [compare_survey(seed, sort, samples) for seed in seeds]
    assert all(sum(kind) > 5 for kind in zip(*counts, strict=True))


def test_surveys_of_tiny_junctions() -> None:
    compare_surveys(range(8), TINY._replace(hilly=True), 3)


def test_surveys_of_small_junctions() -> None:
    compare_surveys(range(3), FEW, 3)


@pytest.mark.slow
@pytest.mark.timeout(7200)
def test_many_surveys() -> None:
    compare_surveys(range(100, 500), TINY, 6)
    compare_surveys(range(100, 300), TINY._replace(hilly=True), 6)
    compare_surveys(range(100, 160), SMALL, 6)


def test_a_shape_that_a_part_cannot_take() -> None:
    """A booster rail is never a curve: the rail itself is named."""
    plan = plan_from([("booster-rail", (0, 64, 0), "north"), ("rail", (0, 64, 1), "north")])
    found = last(plan, {(0, 64, 0): "south-east"})
    assert (found.rails, found.impossible, found.proved) == (None, (Cell(0, 64, 0),), True)
    assert found.alone
    assert last(plan, {(0, 64, 1): "rising-north"}).impossible == (Cell(0, 64, 1),)
    assert WORD_OF[Shape.SOUTH_EAST] == "south-east"


def test_rails_that_are_impossible_each_by_itself_are_all_named() -> None:
    """Two booster rails drawn as curves, far apart: neither has anything to do with the other."""
    far = [("booster-rail", (x, 64, z), "north") for x in (0, 9) for z in (0, 1)]
    found = last(plan_from(far), {(0, 64, 0): "south-east", (9, 64, 0): "south-west"})
    assert (found.impossible, found.alone) == ((Cell(0, 64, 0), Cell(9, 64, 0)), True)


def test_rails_that_only_clash_are_not_said_to_be_impossible_alone() -> None:
    """Two rails of a tiny junction that stand so in some order each, but in none both."""
    pieces, _, _ = compact_junction(0, TINY)
    orders = Orders(pieces)
    states = [orders.shapes(state) for state in orders.states.tolist()]
    clash = next(
        {one: a, other: b}
        for first in states
        for second in states
        for one, a in first.items()
        for other, b in second.items()
        if one < other and not can_stand(orders, {one: a, other: b})
    )
    found = last(plan_from(pieces), clash)
    assert (set(map(tuple, found.impossible)), found.alone) == (set(clash), False)
