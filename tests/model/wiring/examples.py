"""The example junctions, plain and wired; each is wired once for all tests."""

from __future__ import annotations

from functools import cache
from importlib.resources import files

from model.files.plan_file import parse_plan
from model.plan import Plan
from model.wiring.result import Wiring
from model.wiring.wire import wire

NAMES = ("beacon-wye", "fen-ring", "saltern-junction")


@cache
def example(name: str) -> Plan:
    file = files("resources").joinpath("examples", f"{name}.plan.json")
    return parse_plan(file.read_bytes(), name)


@cache
def wired(name: str) -> Wiring:
    return wiring_of(example(name))


@cache
def wired_plan(name: str) -> Plan:
    change = wired(name).change
    assert change is not None
    return change.applied(example(name))


def wiring_of(plan: Plan, seed: int = 0, grow: int = 1, depth: int = 6) -> Wiring:
    *_, last = wire(plan, seed, grow, depth)
    assert isinstance(last, Wiring)
    return last
