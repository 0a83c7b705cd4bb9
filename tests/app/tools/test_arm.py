"""Making arms by dragging across the ends of tracks."""

from __future__ import annotations

import pytest

from app.tools.host import Ends, Tag
from model.grid import Cell, Heading
from model.plan import Arm, ArmEnd
from tests.app.tools.desk import LEVEL, Desk

EAST_END = Cell(2, LEVEL, 0)


@pytest.mark.parametrize(
    ("drag", "ends"),
    [
        ([(3, 0), (2, 0)], Ends.IN),
        ([(5, 0), (1, 0)], Ends.IN),
        ([(2, 0), (3, 0)], Ends.OUT),
        ([(1, 0), (6, 0)], Ends.OUT),
        ([(2, 0), (3, 0), (2, 0)], Ends.BOTH),
        ([(4, 0), (2, 0), (4, 0)], Ends.BOTH),
        ([(2, 0)], Ends.BOTH),
    ],
)
def test_the_direction_of_the_drag_gives_the_ends(
    junction: Desk, drag: list[tuple[int, int]], ends: Ends
) -> None:
    hand = junction.use("arm").press(*drag[0])
    for place in drag[1:]:
        hand.drag_to(*place)
    hand.release()
    question = junction.question
    assert question is not None
    assert (question.cell, question.outward, question.ends) == (EAST_END, Heading.EAST, ends)


def test_the_typed_name_makes_the_arm(junction: Desk) -> None:
    junction.use("arm").press(2, 0).drag_to(3, 0).release()
    assert junction.question is not None
    assert junction.question.answer("Fen", Ends.OUT) is None
    assert junction.plan.details.arm("Fen") == Arm("Fen", None, ArmEnd(EAST_END, Heading.EAST))
    assert [change.label for change in junction.done] == ["Add arm Fen"]
    assert junction.question is None


@pytest.mark.parametrize("name", ["", "a,b", "a/b", "line\nbreak", "x" * 81])
def test_a_name_that_an_arm_cannot_have_is_answered_in_words(junction: Desk, name: str) -> None:
    junction.use("arm").press(2, 0).drag_to(3, 0).release()
    assert junction.question is not None
    assert junction.question.answer(name, Ends.OUT)
    assert not junction.done
    assert junction.question is not None


def test_the_ends_chosen_in_words_show_on_the_track(junction: Desk) -> None:
    junction.use("arm").press(2, 0).drag_to(3, 0).release()
    assert junction.question is not None
    assert junction.ghost is not None
    assert junction.ghost.crossing == (EAST_END, Heading.EAST, Ends.OUT)
    junction.question.show(Ends.BOTH)
    assert junction.ghost.crossing == (EAST_END, Heading.EAST, Ends.BOTH)


def test_the_other_end_joins_the_arm_that_wants_it(junction: Desk) -> None:
    junction.use("lay").press(-2, 2).drag_to(-1, 2).release()
    junction.use("arm").press(-1, 2).drag_to(-4, 2).release()
    question = junction.question
    assert question is not None
    assert question.name == "Quay"
    assert question.answer(question.name, question.ends) is None
    quay = junction.plan.details.arm("Quay")
    assert quay == Arm(
        "Quay",
        ArmEnd(Cell(-2, LEVEL, 0), Heading.EAST),
        ArmEnd(Cell(-2, LEVEL, 2), Heading.WEST),
    )


def test_a_click_on_the_tag_opens_name_and_ends_again(junction: Desk) -> None:
    junction.tags[Cell(-3, LEVEL, 0)] = Tag("Quay", Ends.IN)
    junction.use("arm").click(-3, 0)
    question = junction.question
    assert question is not None
    assert (question.name, question.ends) == ("Quay", Ends.IN)
    assert question.answer("Saltern", Ends.BOTH) is None
    assert junction.plan.arms == (
        Arm(
            "Saltern",
            ArmEnd(Cell(-2, LEVEL, 0), Heading.EAST),
            ArmEnd(Cell(-2, LEVEL, 0), Heading.WEST),
        ),
    )


def test_a_drag_across_the_side_of_a_track_makes_nothing(junction: Desk) -> None:
    junction.use("arm").press(1, -2).drag_to(1, 2).release()
    assert junction.question is None
    assert "No end of a track" in junction.said[-1]


def test_a_name_given_at_another_end_moves_the_arm_and_says_from_where(junction: Desk) -> None:
    junction.use("arm").press(2, 0).drag_to(3, 0).release()
    assert junction.question is not None
    junction.question.answer("Fen", Ends.OUT)
    assert "it is here now" not in " ".join(junction.said)
    other = junction.use("arm")
    other.press(0, 0).drag_to(-1, 0).release()
    assert junction.question is not None
    junction.question.answer("Fen", Ends.OUT)
    assert junction.said[-1] == f"Fen was at {EAST_END}; it is here now."


def test_the_second_end_of_an_arm_moves_nothing(junction: Desk) -> None:
    junction.use("arm").press(2, 0).drag_to(3, 0).release()
    assert junction.question is not None
    junction.question.answer("Fen", Ends.OUT)
    junction.use("arm").press(3, 0).drag_to(2, 0).release()
    assert junction.question is not None
    junction.question.answer("Fen", Ends.IN)
    assert "it is here now" not in " ".join(junction.said)


def test_a_change_of_level_takes_the_question_away(junction: Desk) -> None:
    hand = junction.use("arm").press(2, 0).drag_to(3, 0).release()
    assert junction.question is not None
    junction.level += 1
    hand.drag_to(3, 0)
    assert junction.question is None
    assert not hand.tool.is_busy
