"""The materials as a table: nothing in it is a formula to a spreadsheet, and it keeps to RFC 4180.

Sources: RFC 4180 (section 2, from memory); OWASP, "CSV Injection" (the characters, from memory).
"""

from __future__ import annotations

import csv
import io
import re
from collections import Counter
from random import Random

import pytest

from app.materials_csv import materials_csv
from model.grid import Cell
from model.parts import Part
from model.pieces import new_piece
from model.plan import Plan, plan_of
from model.sheet import materials
from tests.harness.plans import random_plan

FORMULA = tuple("=+-@\t\r\n\0")
NUMBER = re.compile(r"-?\d+")


def is_safe(table: str) -> bool:
    """No text cell begins as a formula does; a number may begin with a minus."""
    rows = csv.reader(io.StringIO(table, newline=""), strict=True)
    return not any(cell.startswith(FORMULA) and not NUMBER.fullmatch(cell) for row in rows for cell in row)


def keeps_to_rfc_4180(table: str) -> bool:
    """Every line, the last one too, ends in CR LF and has as many fields as the header."""
    *lines, last = table.split("\r\n")
    return last == "" and {len(line.split(",")) for line in lines} == {3} and "\n" not in "".join(lines)


@pytest.mark.parametrize("seed", range(3))
def test_every_field_is_safe_and_every_piece_counted(seed: int) -> None:
    random = Random(seed)
    for _ in range(100):
        check(random_plan(random))


def check(plan: Plan) -> None:
    table = materials_csv(materials(plan))
    assert is_safe(table)
    assert keeps_to_rfc_4180(table)
    counted = Counter((str(piece.part), piece.at.y) for piece in plan.pieces)
    _, *rows = csv.reader(io.StringIO(table, newline=""))
    assert {(part, int(level)): int(pieces) for part, level, pieces in rows} == counted


def test_every_part_below_the_ground_too() -> None:
    row = [new_piece(part, Cell(x, -5, 0)) for x, part in enumerate(Part)]
    table = materials_csv(materials(plan_of(row)))
    assert is_safe(table)
    assert table.count("\r\n") == len(Part) + 1


@pytest.mark.parametrize("cell", ["=1+1", "+A1", "-A1", "@SUM(A1)", "\tx", '"\r\n"'])
def test_a_formula_would_be_seen(cell: str) -> None:
    """Controls that must fail."""
    assert not is_safe(f"part,level,pieces\r\n{cell},64,1\r\n")


@pytest.mark.parametrize("table", ["part,level,pieces\n", "part,level,pieces", "a,b,c\r\n1,2\r\n"])
def test_other_tables_would_be_seen(table: str) -> None:
    """Controls that must fail."""
    assert not keeps_to_rfc_4180(table)
