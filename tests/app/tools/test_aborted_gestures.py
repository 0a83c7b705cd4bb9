"""A gesture aborted at any stage of any tool leaves the plan and the undo stack untouched."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from app.tools.events import Key, Modifiers
from app.tools.table import TOOLS
from tests.app.tools.conftest import tee
from tests.app.tools.desk import Desk, Driver

STARTS = [(-3, 0), (-2, 0), (0, 0), (0, 2), (1, 1), (2, 0), (3, 0)]
WAY = [(0, 0), (1, 1), (3, 0), (4, 2), (-4, -1), (0, 2)]
STAGES = range(len(WAY) + 2)
ABORTS: dict[str, Callable[[Driver], object]] = {
    "cancel": lambda hand: hand.tool.cancel(),
    "interrupt": lambda hand: hand.tool.interrupt(),
    "another tool": lambda hand: hand.desk.use("lay" if hand.tool.name == "select" else "select"),
}


def gesture(hand: Driver, stage: int, start: tuple[int, int]) -> None:
    """Goes so many steps through a gesture: hovers, presses, drags. It never lets go."""
    hand.hover(*start)
    if stage == 0:
        return
    hand.press(*start)
    for place in WAY[: stage - 1]:
        hand.drag_to(*place, mods=Modifiers.CTRL if stage % 2 else Modifiers.NONE)
    hand.key(Key.TURN).key(Key.WAYBILL)


@pytest.mark.parametrize("abort", ABORTS)
@pytest.mark.parametrize("name", TOOLS)
def test_an_aborted_gesture_changes_nothing(name: str, abort: str) -> None:
    for stage in STAGES:
        for start in STARTS:
            desk = Desk(tee())
            desk.selection = frozenset({piece.at for piece in desk.plan.pieces if piece.at.z == 0})
            chosen, shapes = desk.selection, dict(desk.layout.shapes)
            hand = desk.use(name)
            if name == "select" and stage == 0:
                continue  # R turns the chosen pieces when no gesture is under way
            gesture(hand, stage, start)
            ABORTS[abort](hand)
            assert not desk.done
            assert desk.plan == tee()
            assert dict(desk.layout.shapes) == shapes
            assert desk.selection == chosen
            assert desk.band is None
            assert not desk.surveyed
            assert not hand.tool.is_busy
            if abort == "another tool":
                assert desk.ghost is None


def test_a_tool_that_acts_when_it_is_cut_short_is_seen(monkeypatch: pytest.MonkeyPatch) -> None:
    """The control that must fail: giving up the gesture lets go of the button instead."""

    def lets_go(hand: Driver) -> object:
        return hand.release()

    monkeypatch.setitem(ABORTS, "cancel", lets_go)
    with pytest.raises(AssertionError):
        test_an_aborted_gesture_changes_nothing("lay", "cancel")


@pytest.mark.parametrize("abort", ABORTS)
def test_a_paste_that_is_dropped_changes_nothing(abort: str) -> None:
    desk = Desk(tee())
    hand = desk.use_paste(tuple(desk.plan.pieces)).hover(3, 3).key(Key.TURN).press(4, 4).drag_to(5, 5)
    ABORTS[abort](hand)
    hand.release()
    assert not desk.done
    assert desk.plan == tee()
    assert desk.ghost is None


@pytest.mark.parametrize("abort", ABORTS)
def test_a_name_that_is_not_answered_makes_no_arm(abort: str) -> None:
    desk = Desk(tee())
    hand = desk.use("arm").press(2, 0).drag_to(3, 0).release()
    question = desk.question
    assert question is not None
    ABORTS[abort](hand)
    assert desk.question is None
    assert question.answer("Fen", question.ends) is None
    assert not desk.done


@pytest.mark.parametrize("name", TOOLS)
def test_letting_go_after_an_abort_changes_nothing(name: str) -> None:
    desk = Desk(tee())
    hand = desk.use(name).press(0, 0).drag_to(0, 2)
    hand.tool.cancel()
    hand.drag_to(3, 0).release()
    assert not desk.done
    assert not desk.carts
    assert not desk.surveyed
    assert desk.powered == frozenset()
