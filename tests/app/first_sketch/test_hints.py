"""When the thing of each hint is done, and what its outline shows: over plans alone, without a window."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

from app.first_sketch.hints import HINTS, Deed, Progress, Seen
from app.first_sketch.outlines import outline
from app.first_sketch.track import longest_straight, switches
from model.edits import lay_track
from model.grid import Cell
from model.parts import Part
from model.plan import EMPTY_PLAN, Arm, ArmEnd, Details, Plan, Route
from model.text_drawing import plan_from_drawing
from model.track.layout import Layout
from model.track.shapes import Shape

MIDDLE = Cell(0, 64, 0)
WYE = """
level 64 on blocks
─────
··│··
··│··
"""


def seen(plan: Plan, *deeds: Deed) -> Seen:
    return Seen(Layout(plan), frozenset(deeds))


def carried_out(hint: int, plan: Plan) -> Plan:
    """The plan after the drag that the outline of a hint shows."""
    ghost = outline(hint, seen(plan), MIDDLE)
    assert ghost is not None
    assert ghost.change is not None
    return ghost.change.applied(plan)


def progress(hint: int, plan: Plan, *deeds: Deed) -> Progress:
    return HINTS[hint].progress(seen(plan, *deeds))


def test_a_straight_is_counted_rail_by_rail_and_along_either_axis() -> None:
    assert progress(0, EMPTY_PLAN) == (0, 5)
    assert progress(0, plan_from_drawing("level 64 on blocks\n────")) == (4, 5)
    assert progress(0, plan_from_drawing("level 64 on blocks\n" + "│\n" * 6)).is_complete
    corner = [Cell(x, 64, 0) for x in range(4)] + [Cell(3, 64, z) for z in (1, 2)]
    bent = lay_track(EMPTY_PLAN, corner).applied(EMPTY_PLAN)
    assert progress(0, bent) == (3, 5), "a bent track is no straight of five"


def test_following_the_outlines_draws_a_junction_with_a_curve_and_a_switch() -> None:
    """A curve joins ends at right angles, a switch has two states: the words of the railway trade."""
    plan = carried_out(0, EMPTY_PLAN)
    assert progress(0, plan).is_complete
    assert not progress(1, plan).is_complete
    plan = carried_out(1, plan)
    layout = Layout(plan)
    assert progress(1, plan).is_complete
    (switch,) = switches(layout)
    assert switch == MIDDLE
    shapes = [shape for cell, shape in layout.shapes.items() if cell != switch]
    assert sum(shape.is_curve for shape in shapes) == 1


def test_the_branch_finds_another_side_where_the_first_is_taken() -> None:
    plan = carried_out(0, EMPTY_PLAN)
    taken = [MIDDLE.moved(dx=dx, dz=2) for dx in range(-6, 7)]
    plan = lay_track(plan, taken, Part.BOOSTER_RAIL).applied(plan)
    assert longest_straight(Layout(plan)) == tuple(taken)
    ghost = outline(1, seen(plan), MIDDLE)
    assert ghost is not None
    assert ghost.change is not None
    assert all(cell not in plan.pieces for cell in ghost.change.cells)
    assert outline(1, seen(EMPTY_PLAN), MIDDLE) is None, "there is no track to branch off"


def test_arms_are_shown_end_by_end_until_each_has_one() -> None:
    plan = plan_from_drawing(WYE)
    for count, name in enumerate(("Quay", "Fen", "Mill")):
        assert progress(2, plan) == (count, 3)
        ghost = outline(2, seen(plan), MIDDLE)
        assert ghost is not None
        assert ghost.crossing is not None
        cell, outward, _ = ghost.crossing
        arm = Arm(name, ArmEnd(cell, outward.opposite), ArmEnd(cell, outward))
        plan = Plan(plan.pieces, plan.details.replace(arms=(*plan.arms, arm)))
    assert progress(2, plan).is_complete
    assert outline(2, seen(plan), MIDDLE) is None


def test_a_route_is_wanted_and_then_a_called_one() -> None:
    idle = Plan(EMPTY_PLAN.pieces, Details(routes=(Route("Mill", "Fen"),)))
    assert progress(3, EMPTY_PLAN) == (0, 2)
    assert progress(3, idle) == (1, 2)
    called = Plan(EMPTY_PLAN.pieces, Details(routes=(Route("Mill", "Fen", "Quay"),)))
    assert progress(3, called).is_complete


def test_the_trial_shows_the_powered_state_and_then_a_cart() -> None:
    plan = plan_from_drawing(WYE + "arm Mill: in 2 64 2 north\n")
    ghost = outline(4, seen(plan), MIDDLE)
    assert ghost is not None
    (shape,) = ghost.surveyed.values()
    assert shape in (Shape.SOUTH_WEST, Shape.SOUTH_EAST)
    ghost = outline(4, seen(plan, Deed.SWITCH_THROWN), MIDDLE)
    assert ghost is not None
    assert ghost.cart is not None
    assert ghost.cart.cell == Cell(2, 64, 2)
    assert not progress(4, plan, Deed.CART_SENT).is_complete
    assert progress(4, plan, Deed.CART_SENT, Deed.SWITCH_THROWN).is_complete


def test_without_findings_there_is_none_to_read() -> None:
    rest = (Deed.SWITCH_READ, Deed.SHEET_ASKED)
    assert not progress(5, EMPTY_PLAN, *rest).is_complete
    clear = Seen(Layout(EMPTY_PLAN), frozenset(rest), is_clear=True)
    assert HINTS[5].progress(clear).is_complete


def test_the_hints_need_no_toolkit() -> None:
    modules = "app.first_sketch.hints, app.first_sketch.outlines"
    code = f"import sys, {modules}; sys.exit(any(name.startswith('PySide6') for name in sys.modules))"
    root = Path(__file__).parents[3]
    assert subprocess.run([sys.executable, "-c", code], cwd=root, check=False).returncode == 0
