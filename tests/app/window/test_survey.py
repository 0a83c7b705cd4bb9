"""A survey in the window: drawn over the plan with mouse and keys, and the search for its order."""

from __future__ import annotations

import threading
from collections.abc import Iterator, Mapping

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.window import MainWindow
from model.edits import erase, move_plan, set_build_order
from model.grid import Cell, Facing
from model.ordering import Survey
from model.parts import RAILS
from model.plan import Plan
from model.track.shapes import Shape
from tests.app.tools.conftest import tee
from tests.app.windows import settle

LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
SWITCH = Cell(0, 64, 0)
SIZES = [(1440, 900), (1024, 640)]


def pixel(window: MainWindow, cell: Cell, fx: float = 0.5, fz: float = 0.5) -> QPoint:
    view = window.view.navigator.view
    left, top = view.corner(cell.x, cell.z)
    return QPoint(int(left + fx * view.scale), int(top + fz * view.scale))


def click(window: MainWindow, cell: Cell, held: Qt.KeyboardModifier = NONE) -> None:
    QTest.mouseClick(window.view, LEFT, held, pixel(window, cell))


@pytest.fixture
def survey(window: MainWindow, qtbot: QtBot) -> MainWindow:
    """A window with a tee, the tool Survey taken up by its key."""
    window.document.load(tee(), None)
    settle(window)
    navigator = window.view.navigator
    qtbot.waitUntil(lambda: navigator.drawn == navigator.view)
    window.activateWindow()
    window.view.setFocus()
    qtbot.keyClick(window.view, "V")
    assert window.view.tool == "survey"
    return window


class Finder:
    """A stand-in for the planner: it goes on until it is let go, and then gives its answer."""

    def __init__(self) -> None:
        self.may_go_on = threading.Event()
        self.asked: dict[Cell, Shape] = {}
        self.rails: tuple[tuple[Cell, Facing], ...] | None = None
        self.impossible: tuple[Cell, ...] = ()
        self.alone = False
        self.proved = True
        self.is_running = False

    def __call__(self, plan: Plan, shapes: Mapping[Cell, Shape], seconds: float) -> Iterator[Survey]:
        self.asked = dict(shapes)
        self.is_running = True
        try:
            while not self.may_go_on.wait(0.005):
                yield Survey()
            yield Survey(self.rails, self.impossible, self.alone, self.proved)
        finally:
            self.is_running = False


@pytest.fixture
def finder(monkeypatch: pytest.MonkeyPatch) -> Finder:
    finder = Finder()
    monkeypatch.setattr("app.canvas.surveying.survey", finder)
    return finder


def switch_last(plan: Plan) -> tuple[tuple[Cell, Facing], ...]:
    """The switch comes after its three neighbours: it settles to the south-east then."""
    rails = [piece for piece in plan.pieces if piece.part in RAILS]
    return tuple((rail.at, rail.facing) for rail in sorted(rails, key=lambda rail: rail.at == SWITCH))


def draw_south_east(window: MainWindow) -> None:
    """The switch, drawn by a drag from its southern edge to its eastern one."""
    view = window.view
    QTest.mousePress(view, LEFT, NONE, pixel(window, SWITCH, 0.5, 0.95))
    QTest.mouseMove(view, pixel(window, SWITCH))
    QTest.mouseRelease(view, LEFT, NONE, pixel(window, SWITCH, 0.95, 0.5))
    assert view.surveying.shapes == {SWITCH: Shape.SOUTH_EAST}


def let_go(window: MainWindow, finder: Finder, qtbot: QtBot) -> None:
    finder.may_go_on.set()
    qtbot.waitUntil(lambda: not window.view.surveying.search.is_running)
    settle(window)


def test_a_click_draws_and_says_how_the_rail_stands(survey: MainWindow) -> None:
    click(survey, SWITCH)
    assert survey.panels.status.here.text() == "0 64 0 stands south-east there, as drawn it lies east-west"
    assert survey.view.survey_bar.text.text() == "Survey: 1 rail differs from the plan"
    click(survey, SWITCH, Qt.KeyboardModifier.ShiftModifier)
    assert survey.view.survey_bar.text.text() == "Survey: no rail differs from the plan"
    assert "stands" not in survey.panels.status.here.text()
    assert survey.document.plan == tee()
    assert survey.document.undo_stack.count() == 0
    assert not survey.document.is_dirty


def test_what_differs_is_drawn_over_the_plan(survey: MainWindow) -> None:
    """On its way from the south to the east the curve has ink2 lines with paper between them."""
    before = survey.view.grab().toImage()
    draw_south_east(survey)
    after, theme = survey.view.grab().toImage(), survey.view.theme
    place = pixel(survey, SWITCH, 1 - 0.5 * 0.7071, 1 - 0.5 * 0.7071)
    near = [QPoint(place.x() + step, place.y() + step) for step in range(-4, 5)]
    tones = [after.pixelColor(point).lightness() for point in near]
    assert after != before
    assert min(tones) < theme.ink2.lightness() + 60
    dark = [tone < 160 for tone in tones]
    assert sum(one and not other for one, other in zip(dark, [False, *dark], strict=False)) == 2, tones


def test_keys_alone_survey_and_find_the_order(survey: MainWindow, finder: Finder, qtbot: QtBot) -> None:
    view = survey.view
    finder.rails = switch_last(survey.document.plan)
    view.go_to(SWITCH.moved(dx=-1))
    qtbot.keyClick(view, Qt.Key.Key_Right)
    qtbot.keyClick(view, Qt.Key.Key_Return)
    assert view.surveying.differing == {SWITCH: Shape.SOUTH_EAST}
    qtbot.keyClick(view, Qt.Key.Key_Return)
    qtbot.keyClick(view, Qt.Key.Key_Return, Qt.KeyboardModifier.ShiftModifier)
    qtbot.keyClick(view, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert view.surveying.search.is_running
    let_go(survey, finder, qtbot)
    assert survey.document.layout.shape(SWITCH) is Shape.SOUTH_EAST


def test_the_order_is_set_as_one_step(survey: MainWindow, finder: Finder, qtbot: QtBot) -> None:
    before = survey.document.plan
    finder.rails = switch_last(before)
    draw_south_east(survey)
    bar = survey.view.survey_bar
    QTest.mouseClick(bar.act, LEFT)
    assert bar.text.text() == "Survey: searching for an order, 0 s"
    assert bar.act.text() == "Stop"
    let_go(survey, finder, qtbot)
    drawn = {piece.at for piece in before.pieces if piece.part in RAILS}
    assert finder.asked.keys() == drawn, "the rails that were not drawn anew stand as they are drawn"
    assert finder.asked[SWITCH] is Shape.SOUTH_EAST
    assert survey.document.plan == set_build_order(before, finder.rails).applied(before)
    assert survey.bound["undo"].text() == "Undo Order from survey"
    assert survey.document.undo_stack.count() == 1
    assert survey.view.surveying.differing == {}
    assert survey.panels.status.here.text().startswith("The plan is in an order now")
    survey.bound["undo"].trigger()
    assert survey.document.plan == before
    assert survey.view.surveying.differing == {SWITCH: Shape.SOUTH_EAST}, "the survey is kept"


@pytest.mark.parametrize(
    ("impossible", "proved", "words"),
    [
        ((SWITCH,), True, "No order of placing makes 0 64 0 lie south-east."),
        (
            (SWITCH, Cell(0, 64, 1)),
            True,
            "No order of placing makes these lie so together: 0 64 0 and 0 64 1.",
        ),
        (
            (*(Cell(x, 64, 0) for x in range(-2, 3)), Cell(0, 64, 1)),
            True,
            "No order of placing makes these lie so together: −2 64 0, −1 64 0, 0 64 0, 1 64 0 and 2 more.",
        ),
        ((SWITCH,), False, "No order was found that makes 0 64 0 lie south-east."),
        ((), False, "No order was found in 0 s that gives this survey; there may be one."),
    ],
)
def test_where_no_order_gives_it_the_rails_are_marked_and_named(
    survey: MainWindow,
    finder: Finder,
    qtbot: QtBot,
    impossible: tuple[Cell, ...],
    proved: bool,
    words: str,
) -> None:
    finder.impossible, finder.proved = impossible, proved
    draw_south_east(survey)
    unmarked = survey.view.grab().toImage()
    survey.bound["order_from_survey"].trigger()
    let_go(survey, finder, qtbot)
    bar = survey.view.survey_bar
    assert bar.verdict.text().replace("\N{NO-BREAK SPACE}", " ") == words
    assert bar.verdict.isVisible()
    assert survey.document.plan == tee()
    corners = [pixel(survey, cell, 0.25, 0.75) for cell in impossible]
    marked = survey.view.grab().toImage()
    for corner in corners:
        assert marked.pixelColor(corner).lightness() < unmarked.pixelColor(corner).lightness() - 60
    click(survey, SWITCH)
    assert not bar.verdict.isVisible(), "what was found is of another survey"
    assert survey.view.surveying.impossible == frozenset()


def test_rails_that_are_impossible_each_by_itself_are_not_said_to_clash(
    survey: MainWindow, finder: Finder, qtbot: QtBot
) -> None:
    finder.impossible, finder.alone = (SWITCH, Cell(0, 64, 1)), True
    draw_south_east(survey)
    survey.bound["order_from_survey"].trigger()
    let_go(survey, finder, qtbot)
    said = survey.view.survey_bar.verdict.text().replace("\N{NO-BREAK SPACE}", " ")
    assert said == "No order of placing makes any of these lie so: 0 64 0 and 0 64 1."


def test_escape_stops_the_search_and_then_ends_the_survey_and_keeps_it(
    survey: MainWindow, finder: Finder, qtbot: QtBot
) -> None:
    view = survey.view
    draw_south_east(survey)
    QTest.mouseClick(view.survey_bar.act, LEFT)
    qtbot.keyClick(view, Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: not finder.is_running)
    assert view.survey_bar.verdict.text().startswith("The search was stopped after ")
    assert view.tool == "survey"
    qtbot.keyClick(view, Qt.Key.Key_Escape)
    assert view.tool == "select"
    assert not view.survey_bar.isVisible()
    assert "kept" in survey.panels.status.here.text()
    qtbot.keyClick(view, "V")
    assert view.survey_bar.isVisible()
    assert view.surveying.shapes == {SWITCH: Shape.SOUTH_EAST}


def test_clearing_it_once_more_brings_it_back(survey: MainWindow) -> None:
    draw_south_east(survey)
    QTest.mouseClick(survey.view.survey_bar.clear, LEFT)
    assert survey.view.surveying.shapes == {}
    assert "once more brings it back" in survey.panels.status.here.text()
    survey.bound["clear_survey"].trigger()
    assert survey.view.surveying.shapes == {SWITCH: Shape.SOUTH_EAST}
    survey.bound["clear_survey"].trigger()
    click(survey, Cell(0, 64, 1))
    survey.bound["clear_survey"].trigger()
    assert list(survey.view.surveying.shapes) == [], "what was cleared before the new survey is gone"


def test_nothing_to_find_is_said(survey: MainWindow) -> None:
    assert not survey.view.survey_bar.act.isEnabled()
    survey.bound["order_from_survey"].trigger()
    assert not survey.view.surveying.search.is_running
    assert survey.panels.status.here.text().startswith("No surveyed rail differs from the plan")


def test_an_edit_of_the_plan_ends_the_search(survey: MainWindow, finder: Finder, qtbot: QtBot) -> None:
    finder.rails = switch_last(survey.document.plan)
    draw_south_east(survey)
    survey.bound["order_from_survey"].trigger()
    survey.document.edit(erase, [Cell(0, 64, 2)])
    qtbot.waitUntil(lambda: not finder.is_running)
    assert survey.view.survey_bar.verdict.text() == "The plan has changed, so the search has ended."
    finder.may_go_on.set()
    settle(survey)
    assert survey.document.undo_stack.count() == 1
    assert survey.view.surveying.differing == {SWITCH: Shape.SOUTH_EAST}


def test_another_tool_lets_the_search_go_on(survey: MainWindow, finder: Finder, qtbot: QtBot) -> None:
    finder.rails = switch_last(survey.document.plan)
    draw_south_east(survey)
    survey.bound["order_from_survey"].trigger()
    qtbot.keyClick(survey.view, "S")
    assert survey.view.survey_bar.isVisible()
    let_go(survey, finder, qtbot)
    assert survey.document.layout.shape(SWITCH) is Shape.SOUTH_EAST
    assert not survey.view.survey_bar.isVisible()


def test_the_survey_follows_a_turned_and_mirrored_and_moved_plan(survey: MainWindow) -> None:
    draw_south_east(survey)
    survey.bound["turn_plan"].trigger()
    assert survey.view.surveying.differing == {SWITCH: Shape.SOUTH_WEST}
    survey.bound["mirror_plan"].trigger()
    assert survey.view.surveying.differing == {SWITCH: Shape.SOUTH_EAST}


def test_the_survey_goes_back_where_a_turn_or_a_move_is_undone(survey: MainWindow) -> None:
    end, surveying = Cell(0, 64, 2), survey.view.surveying
    draw_south_east(survey)
    surveying.take({end: Shape.EAST_WEST})
    first = dict(surveying.shapes)
    survey.bound["turn_plan"].trigger()
    assert surveying.shapes == {SWITCH: Shape.SOUTH_WEST, Cell(-2, 64, 0): Shape.NORTH_SOUTH}
    with survey.view.carry_choice(lambda cell: cell.moved(5, 1, -2)):
        survey.document.edit(move_plan, 5, 1, -2)
    moved = dict(surveying.shapes)
    assert moved == {Cell(5, 65, -2): Shape.SOUTH_WEST, Cell(3, 65, -2): Shape.NORTH_SOUTH}
    survey.bound["undo"].trigger()
    survey.bound["undo"].trigger()
    assert surveying.shapes == first
    survey.bound["redo"].trigger()
    survey.bound["redo"].trigger()
    assert surveying.shapes == moved
    survey.document.edit(erase, [Cell(5, 65, -2)])
    survey.bound["undo"].trigger()
    assert surveying.shapes == moved, "an edit that carries nothing leaves it"
    for _ in range(2):
        survey.bound["undo"].trigger()
    assert surveying.shapes == first
    survey.bound["turn_plan"].trigger()
    assert surveying.shapes[SWITCH] is Shape.SOUTH_WEST, "turned anew, not twice"


def test_a_preview_hides_it_and_its_end_brings_it_back(survey: MainWindow) -> None:
    draw_south_east(survey)
    survey.view.preview_switches(frozenset({SWITCH}))
    assert not survey.view.survey_bar.isVisible()
    survey.view.clear_preview()
    assert survey.view.survey_bar.isVisible()
    survey.view.preview_switches(frozenset({SWITCH}))
    click(survey, SWITCH)
    assert survey.view.survey_bar.isVisible(), "who goes on surveying has done with the preview"


def test_another_plan_has_no_survey(survey: MainWindow) -> None:
    draw_south_east(survey)
    survey.document.new()
    assert survey.view.surveying.shapes == {}
    survey.view.surveying.clear()
    assert survey.view.surveying.shapes == {}


def test_a_click_on_the_chip_is_none_on_the_plan_below(survey: MainWindow) -> None:
    bar = survey.view.survey_bar
    under = survey.view.navigator.view.cell_at(bar.geometry().center().x(), bar.geometry().center().y(), 64)
    QTest.mouseClick(bar, LEFT, NONE, bar.rect().center())
    assert survey.view.cursor != under
    assert "No rail" not in survey.panels.status.here.text()


@pytest.mark.parametrize(("width", "height"), SIZES)
def test_the_chip_keeps_inside_and_its_words_are_whole(survey: MainWindow, width: int, height: int) -> None:
    survey.resize(width, height)
    # The panels fold in one round of events, and the plan takes their room in the next.
    for _ in range(2):
        QApplication.processEvents()
    bar = survey.view.survey_bar
    assert bar.rect().contains(bar.act.geometry()), "whole from the first moment"
    draw_south_east(survey)
    survey.view.surveying.verdict = "No order of placing makes these lie so together: 0 64 0 and 0 64 1."
    survey.view.surveying.changed.emit()
    QApplication.processEvents()
    assert survey.view.rect().contains(bar.geometry())
    for part in (bar.text, bar.verdict, bar.act, bar.clear):
        assert bar.rect().contains(part.geometry())
        wanted = part.heightForWidth(part.width()) if part.hasHeightForWidth() else part.sizeHint().height()
        assert part.height() >= wanted
    assert bar.text.width() >= bar.text.sizeHint().width()


def test_the_planner_itself_finds_the_order(survey: MainWindow, qtbot: QtBot) -> None:
    draw_south_east(survey)
    survey.bound["order_from_survey"].trigger()
    qtbot.waitUntil(lambda: not survey.view.surveying.search.is_running, timeout=30_000)
    assert survey.document.layout.shape(SWITCH) is Shape.SOUTH_EAST
    assert survey.bound["undo"].text() == "Undo Order from survey"


@pytest.mark.parametrize(
    ("cell", "shape"), [(Cell(0, 64, 1), Shape.EAST_WEST), (Cell(-1, 64, 0), Shape.NORTH_SOUTH)]
)
def test_the_planner_itself_finds_what_no_order_gives(
    survey: MainWindow, qtbot: QtBot, cell: Cell, shape: Shape
) -> None:
    """A rail with links on one axis only lies along it (common practice, no source)."""
    click(survey, cell)
    assert survey.view.surveying.differing == {cell: shape}
    survey.bound["order_from_survey"].trigger()
    qtbot.waitUntil(lambda: not survey.view.surveying.search.is_running, timeout=30_000)
    assert survey.view.surveying.impossible == {cell}
    verdict = survey.view.surveying.verdict.replace("\N{NO-BREAK SPACE}", " ")
    assert verdict == f"No order of placing makes {cell} lie {shape.word}."
