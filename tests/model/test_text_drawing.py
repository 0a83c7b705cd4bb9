"""The notation: what is drawn and what is read. The drawings expected here were made by hand."""

from __future__ import annotations

from textwrap import dedent

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.grid import Cell, Facing, Heading
from model.parts import RAILS, Part
from model.pieces import Piece
from model.plan import Arm, ArmEnd, Route, Side, plan_of
from model.text_drawing import DrawingError, draw, plan_from_drawing
from model.text_drawing.glyphs import EMPTY, LETTERS, RAIL_GLYPHS, SPARE_LETTERS
from model.track.layout import Layout
from tests import strategies


def drawn(text: str) -> str:
    return draw(Layout(plan_from_drawing(text)))


def test_a_curve_is_drawn_by_its_shape_as_built() -> None:
    assert drawn("level 64\n·─\n│·\n│─") == "level 64, from 0 0\n·─\n│·\n╰─"


def test_levels_come_from_the_lowest_with_slopes_as_arrows_to_the_raised_end() -> None:
    assert drawn("level 65, from 2 0\n─\nlevel 64\n──") == dedent("""\
        level 64, from 0 0
        ─>·
        level 65, from 0 0
        ··─""")


def test_boosters_and_detectors_are_told_from_plain_rails() -> None:
    assert drawn("level 64\n║·═·┆·┄") == "level 64, from 0 0\n║·═·┆·┄"


def test_parts_that_are_set_otherwise_get_a_letter_in_the_legend() -> None:
    text = "level 3, from −2 7\nRrT\n#··\nr: repeater, facing west, delay 8"
    assert drawn(text) == dedent("""\
        level 3, from −2 7
        RaT
        #··
        R: repeater
        a: repeater, facing west, delay 8
        T: torch
        #: solid-block""")


def test_arms_routes_and_the_running_side_stand_below() -> None:
    below = dedent("""\
        arm Tithe Barn: in 0 64 −3 south, out 2 64 −3 north
        arm Mill: out 0 64 9 south
        route Tithe Barn: idle Mill, called Tithe Barn, waybill Salt
        running side left""")
    plan = plan_from_drawing(below)
    assert plan.arms == (
        Arm("Tithe Barn", ArmEnd(Cell(0, 64, -3), Heading.SOUTH), ArmEnd(Cell(2, 64, -3), Heading.NORTH)),
        Arm("Mill", None, ArmEnd(Cell(0, 64, 9), Heading.SOUTH)),
    )
    assert plan.routes == (Route("Tithe Barn", "Mill", "Tithe Barn", "Salt"),)
    assert plan.details.running_side is Side.LEFT
    assert draw(Layout(plan)) == below


def test_pieces_come_in_reading_order_and_numbered_ones_last() -> None:
    plan = plan_from_drawing("level 64, from 5 5\n│─\n║#\norder\n·2\n1·\n")
    assert [(piece.part, piece.at, piece.facing) for piece in plan.pieces] == [
        (Part.RAIL, Cell(5, 64, 5), Facing.NORTH),
        (Part.SOLID_BLOCK, Cell(6, 64, 6), Facing.NORTH),
        (Part.BOOSTER_RAIL, Cell(5, 64, 6), Facing.NORTH),
        (Part.RAIL, Cell(6, 64, 5), Facing.EAST),
    ]


def test_on_blocks_carries_what_stands_and_nothing_else() -> None:
    plan = plan_from_drawing("level 64 on blocks\n│dl#\nl: lever, facing east")
    assert [piece.at for piece in plan.pieces][:2] == [Cell(0, 63, 0), Cell(1, 63, 0)]
    assert len(plan.pieces) == 6


def test_signs_of_any_keyboard_are_read_alike() -> None:
    assert plan_from_drawing("level 1\n|-=.|") == plan_from_drawing("level 1\n│─═·│")


def test_an_empty_plan_says_so() -> None:
    assert drawn("") == "(empty)"


@pytest.mark.parametrize(
    "text", ["level 64\n╭", "level 64\n?", "│", "arm Mill: in 0 0 north", "level x", "route Quay", "order"]
)
def test_a_line_that_says_nothing_is_refused(text: str) -> None:
    with pytest.raises(DrawingError):
        plan_from_drawing(text)


def test_no_mark_means_two_things() -> None:
    marks = [*"".join(RAIL_GLYPHS.values()), *LETTERS.values(), *SPARE_LETTERS, EMPTY]
    assert len(marks) == len(set(marks))
    assert set(LETTERS) == set(Part) - RAILS


parts_but_rails = strategies.pieces(part=st.sampled_from(sorted(set(Part) - RAILS))).map(
    lambda piece: msgspec.structs.replace(piece, holds=())
)


@given(st.lists(parts_but_rails, unique_by=lambda piece: piece.at, max_size=12))
def test_what_is_drawn_of_other_parts_reads_back(pieces: list[Piece]) -> None:
    text = draw(Layout(plan_of(pieces)))
    read = plan_from_drawing("" if text == "(empty)" else text)
    assert set(read.pieces) == set(pieces)
