"""Faults, outcomes, test runs and diagnoses of examples and random junctions against trying everything."""

from __future__ import annotations

from itertools import combinations
from random import Random

import pytest

from model.commissioning import Fault, Kind, Observed, Run, diagnose
from model.commissioning.faults import go_together
from model.files.plan_file import read_plan
from model.grid import Cell
from model.track.shapes import Shape
from tests.model.commissioning.junctions import EXAMPLES, Pair, plain, random_plans
from tests.oracle.adapter import plan_from
from tests.oracle.carts import ArmSpec
from tests.oracle.choice import RouteSpec
from tests.oracle.commissioning import sensible


def check_faults(pair: Pair) -> None:
    """The same runs and faults; and what each fault, and each two, do to each cart."""
    faults = pair.model.faults
    assert [pair.sent(run) for run in pair.model.runs] == pair.tried.sent()
    assert len(set(faults)) == len(faults)
    assert set(map(plain, faults)) == pair.tried.faults()
    for chosen in [(), *combinations(faults, 1), *combinations(faults, 2)]:
        assert go_together(chosen) == sensible(tuple(map(plain, chosen)))
        for run in pair.model.runs if go_together(chosen) else ():
            assert pair.model.outcome(run, chosen) == pair.tried_outcome(run, chosen), (run, chosen)


def check_tests(pair: Pair) -> None:
    """Hidden faults, faults alike, and the first of the smallest sets of runs that show all others."""
    model = pair.model
    shows = {fault: tuple(pair.tried_outcome(run, (fault,)) for run in model.runs) for fault in model.faults}
    nominal = tuple(pair.tried_outcome(run, ()) for run in model.runs)
    assert model.hidden == tuple(fault for fault in model.faults if shows[fault] == nominal)
    groups: dict[tuple[str, ...], list] = {}
    for fault in model.faults:
        if fault not in model.hidden:
            groups.setdefault(shows[fault], []).append(fault)
    assert sorted(map(set, model.alike), key=str) == sorted(
        (set(group) for group in groups.values() if len(group) > 1), key=str
    )
    assert model.tests == fewest(model.runs, nominal, list(groups))


def fewest(runs: tuple[Run, ...], nominal: tuple[str, ...], seen: list[tuple[str, ...]]) -> tuple[Run, ...]:
    """The first choice of runs, smaller ones first, in which nothing that was seen looks as designed."""
    return next(
        tuple(runs[place] for place in places)
        for size in range(len(runs) + 1)
        for places in combinations(range(len(runs)), size)
        if all(any(row[place] != nominal[place] for place in places) for row in seen)
    )


def check_diagnoses(pair: Pair, random: Random, how_often: int) -> None:
    """Observations of up to two faults made at random, some of them told wrong."""
    model = pair.model
    names = [arm.name for arm in pair.junction.plan.arms] + ["stays"]
    plain_faults = list(map(plain, model.faults))
    for _ in range(how_often):
        there = tuple(random.sample(model.faults, random.randint(0, min(2, len(model.faults)))))
        runs = random.sample(model.runs, random.randint(1, len(model.runs)))
        observed = [Observed(run, model.outcome(run, there)) for run in runs if go_together(there)]
        if random.random() < 0.3 and observed:
            observed[0] = Observed(observed[0].run, random.choice(names))
        found = diagnose(model, observed).diagnoses
        wanted = pair.tried.diagnoses(plain_faults, [(pair.sent(each.run), each.saw) for each in observed])
        assert {frozenset(map(plain, faults)) for faults in found} == wanted
        assert len(found) == len(wanted)
        assert [len(faults) for faults in found] == sorted(len(faults) for faults in found)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_examples(path) -> None:
    pair = Pair(read_plan(path))
    check_faults(pair)
    check_tests(pair)
    check_diagnoses(pair, Random(1), 12)


BESIDE_A_SWITCH = (
    "2 1, 0 0, 0 2, 1 3, 2 2, 1 0, 2 3, 0 1, 2 0, 3 0, 1 1, 3 3",
    [
        ArmSpec("Tithe Barn", ((0, 64, 1), "east"), ((0, 64, 1), "west")),
        ArmSpec("Mill", ((3, 64, 0), "west"), ((3, 64, 0), "east")),
        ArmSpec("Orchard", ((1, 64, 0), "south"), ((1, 64, 0), "north")),
        ArmSpec("Fen", ((3, 64, 3), "west"), ((3, 64, 3), "east")),
    ],
    [
        RouteSpec("Mill", "Fen", "Fen"),
        RouteSpec("Orchard", "Fen", None),
        RouteSpec("Fen", "Mill", None),
    ],
)
"""x and z of rails all laid facing west in this order. A rail beside a switch, passed by one cart only,
spoils the switch for the others."""


def test_a_rail_that_spoils_the_switch_beside_it() -> None:
    cells, arms, routes = BESIDE_A_SWITCH
    places = [tuple(map(int, cell.split())) for cell in cells.split(", ")]
    pair = Pair(plan_from([("rail", (x, 64, z), "west") for x, z in places], arms, routes))
    check_faults(pair)
    check_tests(pair)
    check_diagnoses(pair, Random(2), 12)
    spoilt = Fault(Kind.RAIL_TURNED, at=Cell(0, 64, 1), shape=Shape.SOUTH_EAST)
    shown = [run for run in pair.model.runs if pair.model.outcome(run, (spoilt,)) != pair.model.outcome(run)]
    assert shown == [Run("Mill"), Run("Fen")]
    assert all(spoilt.at not in pair.junction.way(run.start).path for run in shown)


def test_random_junctions() -> None:
    kinds, sizes = set(), set()
    for seed, plan in random_plans(0, 15):
        pair = Pair(plan)
        check_faults(pair)
        check_tests(pair)
        check_diagnoses(pair, Random(seed), 6)
        kinds |= {fault.kind for fault in pair.model.faults}
        sizes.add(len(pair.model.tests))
    assert len(kinds) == 6
    assert {1, 2, 3} <= sizes


@pytest.mark.slow
@pytest.mark.timeout(7200)
def test_many_random_junctions() -> None:
    for seed, plan in random_plans(5_000, 1_500):
        pair = Pair(plan)
        check_faults(pair)
        check_tests(pair)
        check_diagnoses(pair, Random(seed), 10)
