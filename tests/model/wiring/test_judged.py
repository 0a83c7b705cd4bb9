"""Junctions wired by the program, before the judge: the examples, and random ones."""

from __future__ import annotations

import pytest

from model.plan import Plan
from model.routing.junction import Junction
from model.wiring.result import Wiring
from tests.model.wiring.examples import NAMES, example, wired, wiring_of
from tests.oracle.junctions_with_arms import junction_with_arms
from tests.oracle.wiring import Box, Document, faults_of_plan, faults_of_report
from tests.oracle.wiring_runners import both_runners, document_of, model_runner, report_of
from tests.oracle.wiring_runs import FEW_TRAINS, TRAINS, Train, faults_of, faults_of_runs, wanted_in


def judge(plan: Plan, wiring: Wiring, trains: tuple[tuple[int, int], ...]) -> Document:
    """Fails where anything is wrong; gives the wired plan."""
    assert wiring.change is not None, wiring.findings
    thrown = {arm: cells for arm, cells in Junction(plan).choice.thrown.items() if cells}
    assert {line.arm: set(line.switches) for line in wiring.lines} == thrown
    before, after = document_of(plan), document_of(wiring.change.applied(plan))
    assert faults_of_plan(before, after, Box()) == []
    assert faults_of_report(before, after, report_of(wiring)) == []
    assert faults_of_runs(after, model_runner(after), trains) == []
    return after


@pytest.mark.parametrize("name", NAMES)
def test_the_examples(name: str) -> None:
    judge(example(name), wired(name), FEW_TRAINS[:2])


def test_a_random_junction_on_both_implementations() -> None:
    plan = junction_with_arms(5)
    after = judge(plan, wiring_of(plan), FEW_TRAINS)
    for wanted in wanted_in(after):
        assert faults_of(both_runners(after), [Train(wanted, 2, 1)]) == []


@pytest.mark.slow
@pytest.mark.timeout(3600)
def test_random_junctions_with_all_trains() -> None:
    """More are in the benchmark, with fewer trains."""
    for seed in (2, 3, 13, 15, 18, 19, 26, 45):
        plan = junction_with_arms(seed)
        judge(plan, wiring_of(plan, seed), TRAINS)


@pytest.mark.slow
@pytest.mark.timeout(3600)
@pytest.mark.parametrize("name", NAMES)
def test_the_examples_with_all_trains_on_both_implementations(name: str) -> None:
    for seed in range(3):
        after = judge(example(name), wiring_of(example(name), seed), TRAINS)
    assert faults_of_runs(after, both_runners(after), FEW_TRAINS) == []
