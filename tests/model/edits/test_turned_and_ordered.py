"""Turning the plan and setting the build order of the turned plan, as one step."""

from __future__ import annotations

import random
from importlib.resources import files
from pathlib import Path

import pytest

from model.edits import set_build_order, turn_and_order, turn_plan
from model.files.plan_file import read_plan
from model.grid import ALL_TURNS, Facing, Turn
from model.parts import RAILS
from model.plan import Plan
from model.track.layout import Layout


@pytest.fixture(scope="module")
def plan() -> Plan:
    return read_plan(Path(str(files("resources"))) / "examples" / "beacon-wye.plan.json")


@pytest.mark.parametrize("turn", ALL_TURNS, ids=lambda turn: str(turn.number))
def test_one_step_is_the_same_as_two(plan: Plan, turn: Turn) -> None:
    turned = turn_plan(plan, turn).applied(plan)
    chance = random.Random(turn.number)
    rails = [
        (piece.at, chance.choice((Facing.NORTH, Facing.EAST)))
        for piece in turned.pieces
        if piece.part in RAILS
    ]
    chance.shuffle(rails)
    change = turn_and_order(plan, turn, rails)
    after = change.applied(plan)
    assert after == set_build_order(turned, rails).applied(turned)
    assert change.inverse().applied(after) == plan
    layout = Layout(plan)
    layout.follow(change)
    assert layout.shapes == Layout(after).shapes


def test_the_step_says_what_it_does(plan: Plan) -> None:
    rails = [(Turn(1).cell(piece.at), piece.facing) for piece in plan.pieces if piece.part in RAILS]
    label = turn_and_order(plan, Turn(1), rails).label
    assert label == "Turn plan to orientation 2 and set the build order"
