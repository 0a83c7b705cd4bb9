"""Throwing switches and sending test carts: previews that change no plan."""

from __future__ import annotations

from app.tools.events import Key, Modifiers
from app.tools.host import Ends, Tag
from model.grid import Cell, Heading
from tests.app.tools.desk import LEVEL, Desk

SWITCH = Cell(0, LEVEL, 0)


def test_a_click_throws_the_switch_and_the_next_releases_it(junction: Desk) -> None:
    hand = junction.use("throw").click(0, 0)
    assert junction.powered == {SWITCH}
    hand.click(0, 0)
    assert junction.powered == frozenset()
    assert not junction.done


def test_a_click_on_plain_track_says_so(junction: Desk) -> None:
    junction.use("throw").click(1, 0)
    assert junction.powered == frozenset()
    assert "No switch" in junction.said[-1]


def test_a_button_let_go_elsewhere_throws_nothing(junction: Desk) -> None:
    junction.use("throw").press(0, 0).drag_to(1, 0).release()
    assert junction.powered == frozenset()


def test_a_drag_gives_the_cart_its_heading(junction: Desk) -> None:
    junction.use("cart").press(0, 1).drag_to(0, 0).release()
    assert junction.carts == [(Cell(0, LEVEL, 1), Heading.NORTH, False)]


def test_a_short_drag_inside_the_cell_is_enough(junction: Desk) -> None:
    hand = junction.use("cart").press(0, 1).drag_to(0, 1, fraction=(0.5, 0.9))
    assert junction.ghost is not None
    assert junction.ghost.cart is not None
    assert junction.ghost.cart.heading is Heading.SOUTH
    hand.tool.complete()
    assert junction.carts == [(Cell(0, LEVEL, 1), Heading.SOUTH, False)]


def test_a_cart_on_an_arm_in_its_heading_comes_in_by_the_arm(junction: Desk) -> None:
    junction.use("cart").press(-2, 0).drag_to(-1, 0).release()
    assert junction.carts == [("Quay", False)]


def test_a_click_on_a_tag_sends_a_cart_in_with_the_waybill_after_w(junction: Desk) -> None:
    junction.tags[Cell(-3, LEVEL, 0)] = Tag("Quay", Ends.IN)
    junction.use("cart").key(Key.WAYBILL).click(-3, 0).click(-3, 0, Modifiers.SHIFT)
    assert junction.carts == [("Quay", True), ("Quay", False)]


def test_a_cart_needs_a_rail(junction: Desk) -> None:
    junction.use("cart").click(9, 9)
    assert not junction.carts
    assert "No rail" in junction.said[-1]


def test_the_waybill_stays_with_the_next_cart(junction: Desk) -> None:
    junction.use("cart").key(Key.WAYBILL)
    junction.use("select")
    junction.use("cart").press(0, 1).drag_to(0, 0).release()
    assert junction.carts == [(Cell(0, LEVEL, 1), Heading.NORTH, True)]


# In a dry run


def test_in_a_dry_run_throw_works_levers_and_no_switches(junction: Desk) -> None:
    junction.in_dry_run, junction.workable = True, {Cell(1, LEVEL, 0)}
    junction.use("throw").click(1, 0).click(0, 0)
    assert junction.worked == [Cell(1, LEVEL, 0)]
    assert junction.powered == frozenset()
    assert "signals throw the switches" in junction.said[-1]


def test_in_a_dry_run_a_click_works_a_lever_and_leaves_the_choice(junction: Desk) -> None:
    lever, chosen = Cell(1, LEVEL, 0), frozenset({Cell(-1, LEVEL, 0)})
    junction.in_dry_run, junction.workable, junction.selection = True, {lever}, chosen
    hand = junction.use("select").click(1, 0)
    assert (junction.worked, junction.selection) == ([lever], chosen)
    hand.click(1, 0, Modifiers.SHIFT)
    assert (junction.worked, junction.selection) == ([lever], chosen | {lever})


def test_a_lever_let_go_of_elsewhere_is_not_worked(junction: Desk) -> None:
    junction.in_dry_run, junction.workable = True, {Cell(1, LEVEL, 0)}
    hand = junction.use("select").press(1, 0).drag_to(2, 0).release()
    hand.press(1, 0)
    hand.tool.cancel()
    hand.release()
    assert not junction.worked
    assert not junction.done
    assert junction.selection == frozenset()
