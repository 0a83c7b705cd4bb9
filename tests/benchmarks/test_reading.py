"""Reading a plan against reading the same JSON without any check."""

from __future__ import annotations

import gc
import json

import pytest

from model.files.plan_file import parse_plan, plan_bytes
from model.grid import Cell
from model.parts import Part
from model.pieces import Piece
from model.plan import plan_of
from tests.benchmarks.conftest import Ratio

pytestmark = pytest.mark.slow


def test_reading_100_000_pieces(ratio: Ratio) -> None:
    """Standard JSON gives lists and dictionaries; reading also checks, and builds pieces and their index."""
    rails = [Piece(Part.RAIL, Cell(i % 1000, 64, i // 1000)) for i in range(100_000)]
    data = plan_bytes(plan_of(rails))
    ratio(
        "open a plan of 100,000 pieces",
        lambda: parse_plan(data, "f"),
        against="json.loads of the same",
        bound=lambda: json.loads(data),
        goal=8,
    )
    assert gc.isenabled()
