"""The pages of the levels: what stands on them, the key, and what carts do across curves."""

from __future__ import annotations

from collections import Counter

from hypothesis import given, settings

from model.grid import Cell, Facing, Heading
from model.parts import TRAITS, Mode, Part
from model.pieces import Piece
from model.plan import Plan, plan_of
from model.routing.junction import Junction
from model.sheet import Sheet, build_sheet
from model.sheet.drawn import rail_marks, run_throughs
from model.sheet.levels import LevelPage, Sign
from model.text_drawing import plan_from_drawing
from model.track.shapes import Shape
from tests.model.sheet.test_routes import WYE
from tests.strategies import plans, tracks

MIDDLE = Cell(2, 64, 0)


def sheet_of(plan: Plan) -> Sheet:
    return build_sheet(Junction(plan), ())


def counts(page: LevelPage) -> Counter[Sign]:
    said: Counter[Sign] = Counter()
    for row in page.key:
        if row.of_these:
            said[row.sign] += row.pieces
    return said


@settings(max_examples=60, deadline=None)
@given(plans())
def test_every_piece_stands_on_the_page_of_its_level(plan: Plan) -> None:
    pages = sheet_of(plan).levels
    assert [page.level for page in pages] == sorted({piece.at.y for piece in plan.pieces})
    drawn = Counter(one.piece.at for page in pages for one in page.pieces)
    assert drawn == Counter(piece.at for piece in plan.pieces)
    for page in pages:
        assert all(one.piece.at.y == page.level for one in page.pieces)
        assert {one.piece.at for one in page.below} == {
            piece.at
            for piece in plan.pieces
            if piece.at.y == page.level - 1
            and not (TRAITS[piece.part].carries and piece.at.moved(dy=1) in plan.pieces)
        }
        bounds = page.bounds
        assert all(
            bounds.west <= one.piece.at.x <= bounds.east and bounds.north <= one.piece.at.z <= bounds.south
            for one in page.pieces
        )


@settings(max_examples=60, deadline=None)
@given(plans() | tracks().map(plan_of))
def test_the_counts_in_brackets_are_those_of_the_plan(plan: Plan) -> None:
    junction = Junction(plan)
    wanted = junction.choice.wired if junction.wanted else {switch.at for switch in junction.switches}
    for page in sheet_of(plan).levels:
        said = counts(page)
        rails = {cell: shape for cell, shape in junction.layout.shapes.items() if cell.y == page.level}
        rising = [cell for cell, shape in rails.items() if shape.is_rising and cell not in wanted]
        rising += [s.at for s in junction.switches if s.resting.is_rising and s.at in rails.keys() & wanted]
        assert said[Sign.SWITCH] == len(rails.keys() & wanted)
        assert said[Sign.INVERTER] == len(rails.keys() & junction.choice.idle)
        assert said[Sign.RISING] == len(rising)


def test_a_switch_is_drawn_at_rest_with_its_other_shape() -> None:
    """At rest to the south and east: common practice, no source."""
    plan = plan_from_drawing(WYE)
    rails = rail_marks(Junction(plan), [*plan.pieces])
    middle = rails[MIDDLE]
    assert (middle.shape, middle.powered, middle.name) == (Shape.SOUTH_EAST, Shape.SOUTH_WEST, "S1")
    assert not middle.inverter
    ends = rails[Cell(0, 64, 0)]
    assert (ends.shape, ends.powered, ends.name) == (Shape.EAST_WEST, None, None)


def test_a_switch_that_no_line_reaches_is_drawn_as_built() -> None:
    """Only the straight way is wanted, and the rail that could be a switch was built straight."""
    plan = plan_from_drawing(WYE.replace("route Fen: idle Mill, called Quay, waybill Salt\n", ""))
    middle = rail_marks(Junction(plan), [*plan.pieces])[MIDDLE]
    assert (middle.shape, middle.powered, middle.name) == (Shape.EAST_WEST, None, "S1")


def test_without_wanted_routes_every_switch_has_a_drive() -> None:
    drawing = WYE[: WYE.index("route")]
    (page,) = sheet_of(plan_from_drawing(drawing)).levels
    assert counts(page)[Sign.SWITCH] == 1


def test_carts_run_straight_across_a_curve() -> None:
    """From Quay to the east over a curve whose ends are south and east."""
    assert run_throughs(Junction(plan_from_drawing(WYE))) == {MIDDLE: frozenset({Heading.EAST})}


def test_the_key_tells_kinds_apart_and_counts_each() -> None:
    base = [Piece(Part.SOLID_BLOCK, Cell(x, 63, 0)) for x in (0, 1, 2, 3, 4, 5, 7)]
    above = [
        Piece(Part.TORCH, Cell(0, 64, 0), Facing.UP),
        Piece(Part.TORCH, Cell(1, 64, 0), Facing.EAST),
        Piece(Part.COMPARATOR, Cell(2, 64, 0), mode=Mode.SUBTRACT),
        Piece(Part.COMPARATOR, Cell(3, 64, 0)),
        Piece(Part.REPEATER, Cell(4, 64, 0), delay=4),
        Piece(Part.REPEATER, Cell(5, 64, 0)),
        Piece(Part.RAIL, Cell(7, 64, 0)),
    ]
    low, high = sheet_of(plan_of([*base, *above])).levels
    assert low.title == "Level 63 — blocks"
    assert high.title == "Level 64 — track and signals"
    rows = [(row.sample.part, row.pieces) for row in high.key if row.sample is not None]
    assert rows == [
        (Part.RAIL, 1),
        (Part.TORCH, 1),
        (Part.TORCH, 1),
        (Part.REPEATER, 2),
        (Part.COMPARATOR, 1),
        (Part.COMPARATOR, 1),
    ]
    assert counts(high) == {Sign.FACING: 1}
    assert high.notes == ("7 pieces.",), "what carries them is hidden, so nothing is grey"


def test_a_level_below_zero_reads_with_the_true_minus() -> None:
    low, high = sheet_of(plan_of([Piece(Part.LAMP, Cell(x, -2 + x, 0)) for x in (0, 1)])).levels
    assert low.title == "Level −2 — signals"
    assert [one.piece.at for one in high.below] == [Cell(0, -2, 0)]
    assert high.notes[-1] == "Grey lines: level −2, one below."


def test_arms_stand_on_the_pages_of_their_ends() -> None:
    (page,) = sheet_of(plan_from_drawing(WYE)).levels
    assert [arm.name for arm in page.arms] == ["Quay", "Mill", "Fen"]
