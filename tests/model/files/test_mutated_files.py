"""Spoilt files: no uncaught exception, no hang, every message names file and place; and whatever does load
is written to a fixed point and keeps every invariant of a plan.
"""

from __future__ import annotations

import time
from random import Random

import pytest

from model.files.plan_file import PlanFileError, parse_plan, plan_bytes
from model.parts import TRAITS
from model.plan import Plan
from tests.model.files.bending import SPOILERS
from tests.model.files.documents import FULL, read

GOOD = plan_bytes(read(FULL))
MAY_LOAD = {"wrong types", "bytes flipped", "cut"}
"""A plan with a doubled key never loads, and tokens in any order make none."""
LONGEST_SECONDS = 2.0


@pytest.mark.parametrize("kind", SPOILERS)
def test_5_000_spoilt_files(kind: str) -> None:
    loaded, refused = _spoil(kind, 1_000)
    assert refused > 0
    assert (loaded > 0) == (kind in MAY_LOAD)


@pytest.mark.slow
@pytest.mark.timeout(900)
@pytest.mark.parametrize("kind", SPOILERS)
def test_100_000_spoilt_files(kind: str) -> None:
    _, refused = _spoil(kind, 20_000)
    assert refused > 0


def _spoil(kind: str, times: int) -> tuple[int, int]:
    """How many of the spoilt files loaded, and how many were refused."""
    random = Random(f"{kind} {times}")
    loaded = 0
    for _ in range(times):
        data = SPOILERS[kind](GOOD, random)
        start = time.perf_counter()
        try:
            plan = parse_plan(data, "spoilt.plan.json")
        except PlanFileError as error:
            _check_message(error)
        else:
            loaded += 1
            _check_fixed_point(plan)
            _check_invariants(plan)
        assert time.perf_counter() - start < LONGEST_SECONDS
    return loaded, times - loaded


def _check_message(error: PlanFileError) -> None:
    assert error.place
    assert error.expected
    assert str(error) == f"spoilt.plan.json: {error.place}: expected {error.expected}"


def _check_fixed_point(plan: Plan) -> None:
    written = plan_bytes(plan)
    again = parse_plan(written, "again")
    assert again == plan
    assert plan_bytes(again) == written


def _check_invariants(plan: Plan) -> None:
    cells = [piece.at for piece in plan.pieces]
    assert len(set(cells)) == len(cells) == len(plan.pieces)
    for piece in plan.pieces:
        traits = TRAITS[piece.part]
        assert piece.facing in traits.facings
        assert sum(-(-held.count // 64) for held in piece.holds) <= traits.slots
        assert all(type(number) is int for number in piece.at)
    assert all(arm.enter or arm.leave for arm in plan.arms)
    starts = [route.start for route in plan.routes]
    assert len(set(starts)) == len(starts)
