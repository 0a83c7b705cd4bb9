"""Reading a plan against reading the same JSON without any check."""

from __future__ import annotations

import gc
import json
import time
from typing import Any

import pytest

from model.files.plan_file import parse_plan, plan_bytes
from model.grid import Cell
from model.parts import Part
from model.pieces import Piece
from model.plan import plan_of

pytestmark = pytest.mark.slow


def test_reading_100_000_pieces_costs_little_more_than_standard_json() -> None:
    """A ratio, best of three, so that a busy machine does not decide; measured: 2 to 3.

    Standard JSON gives lists and dictionaries; reading also checks, and builds the pieces and their index.
    """
    rails = [Piece(Part.RAIL, Cell(i % 1000, 64, i // 1000)) for i in range(100_000)]
    data = plan_bytes(plan_of(rails))
    reading = min(_seconds(lambda: parse_plan(data, "f")) for _ in range(3))
    standard = min(_seconds(lambda: json.loads(data)) for _ in range(3))
    assert reading <= 8 * standard
    assert gc.isenabled()


def _seconds(action: Any) -> float:
    start = time.perf_counter()
    action()
    return time.perf_counter() - start
