"""What is said of a cell, in the status bar and by a screen reader."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest

from app.document import Document
from app.panels.here import here_sentence, here_words
from model.edits import set_aside
from model.files.plan_file import read_plan
from model.grid import Cell, Facing, Heading
from model.parts import Mode, Part
from model.pieces import Held, Piece
from model.plan import Arm, ArmEnd, Details, Plan, Route, Waiver, plan_of
from tests.app.canvas.conftest import SWITCH, wye
from tests.app.windows import example

HERE = Cell(0, 64, 0)
Load = Callable[[Plan], Document]


@pytest.fixture
def load(qapp: object) -> Iterator[Load]:
    """Opens a plan, everything worked out."""
    document = Document()

    def loaded(plan: Plan) -> Document:
        document.load(plan, None)
        document.wait()
        qapp.processEvents()
        assert not document.junction_is_old
        return document

    yield loaded
    document.close()


@pytest.mark.parametrize(
    ("piece", "said"),
    [
        # 22 of its waybill in a reader's hopper read 1: common practice, no source.
        (
            Piece(Part.HOPPER, HERE, Facing.DOWN, holds=(Held("waybill:Salt", 22),)),
            "hopper, faces down, holds 22 waybills “Salt”, reads 1",
        ),
        (Piece(Part.REPEATER, HERE, Facing.EAST, delay=6), "repeater, faces east, delay 6 ticks"),
        (Piece(Part.COMPARATOR, HERE, Facing.WEST, mode=Mode.SUBTRACT), "comparator, faces west, subtract"),
        (Piece(Part.BUTTON, HERE, Facing.UP, wooden=True), "button, faces up, of wood"),
    ],
)
def test_a_piece_says_what_is_set_on_it(load: Load, piece: Piece, said: str) -> None:
    assert here_words(load(plan_of([piece])), HERE).split(";")[0] == said


def test_an_empty_cell_says_so_and_what_carries_it(load: Load) -> None:
    document = load(plan_of([Piece(Part.SOLID_BLOCK, HERE)]))
    assert here_words(document, Cell(9, 64, 9)) == "nothing here"
    assert here_words(document, HERE.moved(dy=1)) == "nothing here, carried by solid block"


def test_a_cell_is_said_in_one_sentence_with_the_true_minus(load: Load) -> None:
    assert here_sentence(load(plan_of([])), Cell(4, 64, -2)) == "x 4, y 64, z \u22122: nothing here"


def test_a_switch_says_how_it_lies_and_what_it_needs(load: Load) -> None:
    document = load(wye())
    (switch,) = document.junction.switches
    words = here_words(document, SWITCH)
    start = f"switch, rests {switch.resting.word}, powered {switch.powered.word}"
    # Carts from Mill go right when empty: the switch, which rests the other way, wants an inverter or none.
    needs = ", needs an inverter" if switch.inverter else ""
    assert words.startswith(f"{start}{needs}, thrown for carts from Mill, named S1")
    assert "on the idle route Mill to Fen" in words
    assert "on the called route Mill to Quay" in words


def test_an_inverter_is_told(load: Load) -> None:
    plan = wye()
    swapped = Plan(plan.pieces, plan.details.replace(routes=(Route("Mill", "Quay", "Fen", "Salt"),)))
    inverters = ["needs an inverter" in here_words(load(each), SWITCH) for each in (plan, swapped)]
    assert sorted(inverters) == [False, True], "one of the two ways round needs one"


def test_arms_are_told_with_the_heading_of_carts(load: Load) -> None:
    said = here_words(load(wye()), Cell(0, 64, 4))
    assert "arm Mill, in heading north, out heading south" in said


def test_findings_are_told_by_severity_and_title(load: Load) -> None:
    rail = Piece(Part.RAIL, HERE, Facing.EAST)
    arm = Arm("Quay", ArmEnd(HERE, Heading.EAST))
    plan = plan_of([rail], Details(arms=(arm,)))
    document = load(plan)
    (finding,) = [each for each in document.findings if each.rule == "unsupported"]
    assert "; error: " in here_words(document, HERE)
    waiver = Waiver(finding.rule, finding.cells, finding.arms, "hangs in the air on purpose")
    document = load(set_aside(plan, waiver).applied(plan))
    assert "error: " not in here_words(document, HERE)
    assert here_words(document, HERE).endswith("1 finding set aside")


def test_every_cell_of_an_example_can_be_said(load: Load) -> None:
    document = load(read_plan(example("saltern-junction")))
    said = [here_words(document, piece.at) for piece in document.plan.pieces]
    assert all(said)
    assert sum(words.startswith("switch, ") for words in said) == len(document.junction.switches)
