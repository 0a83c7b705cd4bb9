"""An edit of much of a large plan lays it anew; the result is that of following piece by piece."""

from __future__ import annotations

from random import Random

import pytest

from model.edits import turn_plan
from model.grid import Cell, Facing, Turn
from model.parts import Part
from model.pieces import Piece
from model.plan import Plan, plan_of
from model.track import layout as layout_module
from model.track.layout import Layout


def lattice() -> Plan:
    """Rails in a lattice, placed in no order, with a block here and there."""
    cells = [(x, z) for x in range(30) for z in range(30) if x % 4 == 0 or z % 3 == 0]
    Random(7).shuffle(cells)
    parts = (Part.RAIL, Part.RAIL, Part.RAIL, Part.BOOSTER_RAIL, Part.SOLID_BLOCK)
    facings = (Facing.NORTH, Facing.EAST)
    return plan_of([Piece(parts[n % 5], Cell(x, 64, z), facings[n % 2]) for n, (x, z) in enumerate(cells)])


def test_laying_anew_equals_following(monkeypatch: pytest.MonkeyPatch) -> None:
    plan = lattice()
    change = turn_plan(plan, Turn(1))
    assert len(change.placed) > layout_module.ANEW_FROM // 2
    layouts = []
    for least in (0, 10**9):
        monkeypatch.setattr(layout_module, "ANEW_FROM", least)
        layout = Layout(plan)
        told = [layout.follow(change), layout.follow(change.inverse()), layout.follow(change)]
        layouts.append((told, layout.rails, layout.straight_only, layout.stoppers))
    assert layouts[0] == layouts[1]
    assert layouts[0][1] == Layout(change.applied(plan)).rails
