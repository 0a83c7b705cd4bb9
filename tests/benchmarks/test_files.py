"""Opening and saving against the libraries that do nothing but the JSON of it."""

from __future__ import annotations

import gc
import json
from typing import Any, Final

import msgspec
import pytest

from model.files.document import PlanDoc
from model.files.plan_file import parse_plan, plan_bytes
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece
from model.plan import Plan, plan_of
from tests.benchmarks.conftest import Ratio

pytestmark = pytest.mark.slow

SIZE: Final = 100_000


def track_on_blocks() -> Plan:
    """Half blocks, half rails on them."""
    cells = [Cell(i % 1000, 63, i // 1000) for i in range(SIZE // 2)]
    blocks = [Piece(Part.SOLID_BLOCK, at) for at in cells]
    return plan_of(blocks + [Piece(Part.RAIL, at.moved(dy=1), Facing.EAST) for at in cells])


def test_saving(ratio: Ratio) -> None:
    plan = track_on_blocks()
    document: Any = json.loads(plan_bytes(plan))
    ratio(
        "save a plan of 100,000 pieces, without the disk",
        lambda: plan_bytes(plan),
        against="json.dumps of the same",
        bound=lambda: json.dumps(document),
        goal=0.3,
    )


def test_saving_against_msgspec_alone(ratio: Ratio) -> None:
    """The structs that it writes have been made before; what is measured makes them, too."""
    plan = track_on_blocks()
    document = msgspec.json.decode(plan_bytes(plan), type=PlanDoc)
    encoder = msgspec.json.Encoder()
    ratio(
        "save a plan of 100,000 pieces, without the disk",
        lambda: plan_bytes(plan),
        against="msgspec writing the same from structs",
        bound=lambda: encoder.encode(document),
    )


def test_opening(ratio: Ratio) -> None:
    plan = track_on_blocks()
    data = plan_bytes(plan)
    decoder = msgspec.json.Decoder(PlanDoc)
    assert parse_plan(data, "f") == plan
    ratio(
        "open a plan of 100,000 pieces, without the disk",
        lambda: parse_plan(data, "f"),
        against="msgspec reading the same into structs",
        bound=lambda: decoder.decode(data),
    )


def test_opening_against_standard_json(ratio: Ratio) -> None:
    """Standard JSON gives lists and dictionaries; opening also checks, and builds pieces and their index."""
    data = plan_bytes(track_on_blocks())
    ratio(
        "open a plan of 100,000 pieces, without the disk",
        lambda: parse_plan(data, "f"),
        against="json.loads of the same",
        bound=lambda: json.loads(data),
        goal=8,
    )
    assert gc.isenabled()
