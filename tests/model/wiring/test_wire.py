"""Wiring whole junctions, and what is said where that cannot be.

Every wiring given out has passed the proof; ``test_judged.py`` looks at it with other eyes.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from model.grid import Cell
from model.parts import Part
from model.pieces import Piece, Pieces
from model.plan import Plan
from model.routing.junction import Junction
from model.wiring.needs import needs_of
from model.wiring.readers import RINGS, stands
from tests.model.wiring.examples import NAMES, example, wired, wired_plan, wiring_of


def side_by_side(name: str) -> Plan:
    """The junction twice, the second 40 cells further east."""
    plan = example(name)
    pieces = [replace(piece, at=piece.at.moved(40)) for piece in plan.pieces]
    arms = [
        replace(
            arm,
            name=f"{arm.name} 2",
            enter=arm.enter and replace(arm.enter, at=arm.enter.at.moved(40)),
            leave=arm.leave and replace(arm.leave, at=arm.leave.at.moved(40)),
        )
        for arm in plan.arms
    ]
    routes = [
        replace(route, start=f"{route.start} 2", idle=f"{route.idle} 2", called=f"{route.called} 2")
        for route in plan.routes
    ]
    details = plan.details.replace(arms=(*plan.arms, *arms), routes=(*plan.routes, *routes), waivers=())
    return Plan(Pieces.of([*plan.pieces, *pieces]), details)


def test_the_same_seed_gives_the_same_wiring() -> None:
    assert wiring_of(example("saltern-junction")) == wired("saltern-junction")


def test_it_is_one_undo_step() -> None:
    change = wired("fen-ring").change
    assert change is not None
    assert change.label == "Wire 3 lines"
    after = change.applied(example("fen-ring"))
    assert change.inverse().applied(after) == example("fen-ring")


def test_it_stays_in_a_narrower_and_shallower_box() -> None:
    plan = example("fen-ring")
    wiring = wiring_of(plan, grow=0, depth=5)
    assert wiring.wired
    assert wiring.change is not None
    rails = [piece.at for piece in plan.pieces if piece.part is Part.RAIL]
    new = [entry.piece.at for entry in wiring.change.placed]
    assert min(cell.y for cell in new) >= 64 - 5
    assert {cell.x for cell in new} <= set(range(min(r.x for r in rails), max(r.x for r in rails) + 1))
    assert {cell.z for cell in new} <= set(range(min(r.z for r in rails), max(r.z for r in rails) + 1))


def test_rails_that_lie_too_far_apart_are_said_to_be_so() -> None:
    """One rail at the edge of the world: the box below all rails would have more cells than any memory."""
    plan = example("fen-ring")
    rail = Piece(Part.RAIL, Cell(10_000_000, 64, -10_000_000))
    far = Plan(Pieces.of([*plan.pieces, rail]), plan.details)
    wiring = wiring_of(far)
    assert not wiring.wired
    assert wiring.change is None
    (problem,) = wiring.findings
    assert "far apart" in problem.message


def test_lines_throw_what_the_control_table_asks_for() -> None:
    junction = Junction(example("saltern-junction"))
    wiring = wired("saltern-junction")
    assert {line.arm: set(line.switches) for line in wiring.lines} == {
        arm: set(switches) for arm, switches in junction.choice.thrown.items() if switches
    }
    assert wiring.runs == wiring.passed > 0
    assert {headway.arm for headway in wiring.headways} == {"Quay", "Fen", "Mill"}


def test_junctions_that_lie_apart_are_wired_by_themselves() -> None:
    plan = side_by_side("saltern-junction")
    parts = needs_of(Junction(plan)).apart()
    assert [sorted(reading.arm for reading in part.readings) for part in parts if part.readings] == [
        ["Fen", "Mill", "Quay"],
        ["Fen 2", "Mill 2", "Quay 2"],
    ]


def test_a_line_to_a_far_junction_becomes_a_notice() -> None:
    """One ring needs a switch wired that none of its carts is called by: any reader may throw it."""
    plan = side_by_side("fen-ring")
    needs = needs_of(Junction(plan))
    far = {switch for reading in needs.readings for switch, place in reading.thrown.items() if place is None}
    assert far
    near = {switch for part in needs.apart() for reading in part.readings for switch in reading.thrown}
    lone = [driven for part in needs.apart() for driven in part.driven if not part.readings]
    assert {driven.at for driven in lone} == far - near
    assert all(driven.lines == 0 for driven in lone)


def test_it_says_why_there_is_no_room() -> None:
    wiring = wiring_of(example("beacon-wye"), grow=0, depth=3)
    assert not wiring.wired
    assert wiring.change is None
    assert [finding.message for finding in wiring.findings] == [
        "Of the sides of the block at 3 63 0 0 are free, for 3 lines."
    ]


def test_it_says_at_once_that_no_reader_fits_in_so_few_levels() -> None:
    wiring = wiring_of(example("fen-ring"), depth=2)
    assert [finding.message for finding in wiring.findings] == [
        "A reader takes 3 levels below its rail; only 2 are allowed."
    ]


def test_it_says_at_once_which_booster_holds_the_carts() -> None:
    plan = example("saltern-junction")
    dark = Pieces.of(piece for piece in plan.pieces if piece.at != Cell(-6, 64, -2))
    wiring = wiring_of(Plan(dark, plan.details))
    assert [finding.at for finding in wiring.findings] == [Cell(-6, 64, -1)]


def test_it_says_which_route_is_not_reached() -> None:
    plan = example("saltern-junction")
    rail = next(piece for piece in plan.pieces if piece.at == Cell(5, 64, 1))
    wiring = wiring_of(Plan(Pieces.of(p for p in plan.pieces if p != rail), plan.details))
    assert not wiring.wired
    assert any("is not reached" in finding.message for finding in wiring.findings)


def test_a_wired_junction_passes_as_it_stands() -> None:
    again = wiring_of(wired_plan("saltern-junction"))
    assert again.wired
    assert again.change is not None
    assert again.change.is_empty
    assert again.runs == again.passed > 0


def test_a_junction_that_is_wired_wrong_is_left_alone() -> None:
    plan = wired_plan("saltern-junction")
    broken = next(piece for piece in plan.pieces if piece.part is Part.REPEATER)
    wiring = wiring_of(Plan(Pieces.of(piece for piece in plan.pieces if piece != broken), plan.details))
    assert not wiring.wired
    assert any("take them away first" in finding.message for finding in wiring.findings)


def test_where_no_route_is_called_nothing_is_added() -> None:
    plan = example("saltern-junction")
    routes = tuple(replace(route, called=None, waybill=None) for route in plan.routes)
    wiring = wiring_of(Plan(plan.pieces, plan.details.replace(routes=routes, waivers=())))
    assert wiring.lines == ()


def test_an_arm_that_is_too_short_is_named() -> None:
    """A reader takes three straight cells, and its signal time: that is more than is left."""
    plan = example("saltern-junction")
    short = [Piece(Part.RAIL, Cell(x, 64, 1)) for x in (8, 7, 6, 5)]
    gone = {piece.at for piece in short}
    arms = tuple(
        replace(arm, enter=replace(arm.enter, at=Cell(4, 64, 1))) if arm.name == "Fen" and arm.enter else arm
        for arm in plan.arms
    )
    pieces = Pieces.of(piece for piece in plan.pieces if piece.at not in gone)
    wiring = wiring_of(Plan(pieces, plan.details.replace(arms=arms)))
    assert not wiring.wired
    assert [finding.arm for finding in wiring.findings][:1] == ["Fen"]
    assert "There is no place for the reader of Fen: " in wiring.findings[0].message


@pytest.mark.parametrize("name", NAMES)
def test_readers_stand_where_they_are_in_time_and_hold_long_enough(name: str) -> None:
    """8 cells a second are 2.5 ticks a cell; common practice, no source."""
    for reading in needs_of(Junction(example(name))).readings:
        found = list(stands(reading))
        assert found
        for stand in found:
            (detector,) = [piece.at for piece in stand.module.pieces if piece.part is Part.DETECTOR_RAIL]
            way = [cell for straight in reading.straights for cell in straight.cells]
            hopper = stand.module.origin
            assert detector in way
            assert way.index(detector) < way.index(hopper)
            apart = abs(detector.x - hopper.x) + abs(detector.z - hopper.z)
            assert apart in {ring.detector for ring in RINGS}
            assert all(slack is None or slack >= 0 for slack in stand.slack.values())
