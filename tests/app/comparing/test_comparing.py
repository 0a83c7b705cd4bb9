"""The open plan compared with another one, as a user does it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from itertools import combinations
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog

from app.canvas.comparison import NO_COMPARISON
from app.canvas.view import PlanView
from app.comparing.comparing import Comparing
from app.comparing.differences import compared as compared_with
from app.comparing.rows import place_words
from app.document import Document
from app.window import SMALLEST, MainWindow
from model.comparing import Kind, compare_as_built
from model.edits import erase, place, remove_route, set_piece
from model.files.plan_file import plan_bytes
from model.files.writer import write_bytes
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece
from model.plan import Plan, plan_of
from model.progress import result_of
from model.track.layout import Layout
from tests import strategies
from tests.app.windows import example, settle, straight_plan

TORCH = Piece(Part.TORCH, Cell(1, 65, 2), Facing.UP)
LEVER = Piece(Part.LEVER, Cell(0, 64, 2), Facing.UP)
GLASS = Cell(2, 63, 0)


def stands() -> Plan:
    """What stands: a torch that will be turned, and a lever that will be gone."""
    plan = straight_plan()
    return plan_of([*plan.pieces, TORCH, LEVER], plan.details)


@pytest.fixture
def other(tmp_path: Path) -> Path:
    """The file of what stands."""
    path = tmp_path / "stands.plan.json"
    write_bytes(path, plan_bytes(stands()))
    return path


@pytest.fixture
def compared(window: MainWindow, other: Path, monkeypatch: pytest.MonkeyPatch) -> MainWindow:
    """What is wanted is open and compared with what stands, by the action."""
    document = window.document
    document.load(stands(), None)
    document.edit(erase, [LEVER.at])
    document.edit(set_piece, Piece(Part.TORCH, TORCH.at, Facing.NORTH))
    document.edit(set_piece, Piece(Part.GLASS, GLASS))
    document.edit(place, Piece(Part.RAIL, Cell(3, 64, 0), Facing.EAST))
    document.edit(remove_route, "Quay")
    settle(window)
    choose_file(monkeypatch, other)
    window.bound["compare"].trigger()
    return window


def choose_file(monkeypatch: pytest.MonkeyPatch, path: Path | None) -> None:
    said = "" if path is None else str(path)
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_args, **_options: (said, ""))


def rows(window: MainWindow) -> list[tuple[str, str, str]]:
    model = window.panels.comparison.model
    shown = (model.at(row) for row in range(model.rowCount()))
    return [(row.title, row.second, place_words(row)) for row in shown]


def chip(window: MainWindow) -> str:
    return window.view.comparison.title


def test_the_list_says_what_to_do_from_the_lowest_level_up(compared: MainWindow) -> None:
    assert rows(compared) == [
        ("Change solid block", "solid block → glass", "2 63 0"),
        ("Take away lever", "facing up", "0 64 2"),
        ("Place plain rail", "facing east", "3 64 0"),
        ("Turn signal torch", "facing up → facing north", "1 65 2"),
        ("Route Quay", "idle Fen → none", ""),
    ]
    assert compared.panels.comparison.isVisible()
    assert chip(compared) == ("Comparing with stands.plan.json · 1 placed, 1 taken away, 1 turned, 1 changed")


def test_keys_go_to_each_cell_on_its_level_and_round_again(compared: MainWindow) -> None:
    seen = []
    for _ in range(6):
        compared.bound["next_difference"].trigger()
        seen.append((compared.view.level, sorted(compared.view.selection)))
    assert seen == [
        (63, [GLASS]),
        (64, [LEVER.at]),
        (64, [Cell(3, 64, 0)]),
        (65, [TORCH.at]),
        (65, [TORCH.at]),
        (63, [GLASS]),
    ]
    compared.bound["previous_difference"].trigger()
    compared.bound["previous_difference"].trigger()
    assert compared.view.selection == {TORCH.at}
    told: list[str] = []
    compared.speech.speaker.spoken.connect(told.append)
    compared.bound["next_difference"].trigger()
    compared.bound["previous_difference"].trigger()
    compared.speech.speaker.speak()
    assert "Turn signal torch, facing up → facing north, 1 65 2" in told[-1]
    compared.view.put_cursor(TORCH.at, by_key=True)
    assert "turn: torch: facing up → facing north; " in compared.view.accessibleDescription()
    compared.activateWindow()
    compared.bound["show_differences"].trigger()
    assert QApplication.focusWidget() is compared.panels.comparison.list
    QTest.keyClick(compared.panels.comparison.list, Qt.Key.Key_Up)
    assert compared.view.selection == {Cell(3, 64, 0)}


def test_it_follows_edits_and_undo_and_touches_neither_plan(compared: MainWindow, other: Path) -> None:
    bytes_before, plan = other.read_bytes(), compared.document.plan
    steps = compared.document.undo_stack.index()
    compared.document.edit(erase, [Cell(3, 64, 0)])
    assert "Place plain rail" not in [title for title, _, _ in rows(compared)]
    compared.document.undo_stack.undo()
    assert ("Place plain rail", "facing east", "3 64 0") in rows(compared)
    compared.bound["previous_difference"].trigger()
    compared.bound["previous_difference"].trigger()
    chosen = compared.panels.comparison.row
    assert chosen is not None
    compared.bound["swap_comparison"].trigger()
    assert compared.panels.comparison.row is not None
    assert compared.panels.comparison.row.key == chosen.key
    assert ("Take away plain rail", "facing east", "3 64 0") in rows(compared)
    assert ("Place lever", "facing up", "0 64 2") in rows(compared)
    assert chip(compared).startswith("Comparing, on the way to stands.plan.json · ")
    compared.bound["compare"].trigger()
    assert compared.document.plan == plan
    assert compared.document.undo_stack.index() == steps
    assert other.read_bytes() == bytes_before


def test_every_way_to_end_it(compared: MainWindow, other: Path) -> None:
    view, panel = compared.view, compared.panels.comparison
    ways: dict[str, Callable[[], object]] = {
        "the action": compared.bound["compare"].trigger,
        "the other action": compared.bound["compare_saved"].trigger,
        "the button": panel.close_button.click,
        "Esc in the plan": lambda: QTest.keyClick(view, Qt.Key.Key_Escape),
        "Esc in the list": lambda: (panel.list.setFocus(), QTest.keyClick(panel.list, Qt.Key.Key_Escape)),
        "another plan": compared.document.new,
    }
    for way, end in ways.items():
        compared.comparison.with_path(other)
        assert compared.bound["next_difference"].isEnabled()
        end()
        assert not view.comparing.is_on, way
        assert chip(compared) == ""
        assert panel.isHidden()
        assert not compared.bound["next_difference"].isEnabled()
        assert compared.side.upper_tabs.isVisible()
        assert compared.side.lower_tabs.isVisible()
        if way == "Esc in the list":
            assert compared.focusWidget() is view


def test_a_dry_run_hides_the_marks_until_it_ends(compared: MainWindow) -> None:
    compared.bound["dry_run"].trigger()
    assert chip(compared) == ""
    QTest.keyClick(compared.view, Qt.Key.Key_Escape)
    assert chip(compared) != ""
    QTest.keyClick(compared.view, Qt.Key.Key_Escape)
    assert not compared.view.comparing.is_on


def test_what_was_changed_since_the_plan_was_saved(window: MainWindow, other: Path) -> None:
    window.bound["compare_saved"].trigger()
    assert not window.view.comparing.is_on
    window.files.open_path(other)
    window.document.edit(erase, [LEVER.at])
    window.bound["compare_saved"].trigger()
    assert chip(window) == "Comparing with the saved file · 1 taken away"
    window.bound["save"].trigger()
    assert chip(window) == "Comparing with the saved file · no piece differs"
    window.comparison.with_path(example("saltern-junction"))
    window.document.edit(place, LEVER)
    window.bound["save"].trigger()
    assert chip(window).startswith("Comparing with saltern-junction.plan.json · 6 placed")
    window.bound["compare_saved"].trigger()
    assert not window.view.comparing.is_on


def test_a_file_with_which_nothing_can_be_compared(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    choose_file(monkeypatch, None)
    window.bound["compare"].trigger()
    assert window.panels.message.isHidden()
    for name, said in (
        ("none.plan.json", "was not opened"),
        ("a.network.json", "a plan can only be compared with a plan"),
    ):
        choose_file(monkeypatch, tmp_path / name)
        window.bound["compare"].trigger()
        assert said in window.panels.message.text
        assert not window.view.comparing.is_on


def test_two_examples_with_nearly_nothing_in_common(window: MainWindow) -> None:
    """More rows than fit, on many levels; each place in the list is one of the plan view's marks."""
    window.files.open_example(example("fen-ring"))
    window.comparison.with_path(example("saltern-junction"))
    marks = window.view.comparison.differences
    listed = [row for row in rows(window) if row[2] and not row[0].startswith("Arm")]
    assert len(marks) == len(listed) > 100
    assert not window.grab().isNull()


@pytest.mark.usefixtures("qapp")
@settings(max_examples=12, deadline=None)
@given(st.data())
def test_kept_up_to_date_it_is_what_a_comparison_anew_gives(data: st.DataObject) -> None:
    document = Document()
    document.load(data.draw(strategies.filled_plans), None)
    comparing = Comparing(document, document)
    before = plan_of(data.draw(strategies.rail_lists(most=8)))
    comparing.start(result_of(compared_with(lambda: before, document.layout)), "before")
    for _ in range(data.draw(st.integers(1, 4))):
        document.apply(data.draw(strategies.changes(document.plan)))
        anew = compare_as_built(Layout(before), Layout(document.plan))
        assert set(comparing.differences) == set(anew)
        assert comparing.differences.counts == Counter(each.kind for each in anew)
    comparing.swap()
    assert set(comparing.differences) == set(compare_as_built(Layout(document.plan), Layout(before)))
    document.close()


def test_marks_tell_the_kinds_apart_in_black_and_white(compared: MainWindow) -> None:
    """At 12 px a cell, cut to one bit at grey 176, at least 8 pixels differ: the project's own measure."""
    view = compared.view
    view.navigator.zoom_to(12)
    marks = {}
    for kind, cell in ((Kind.TAKEN, LEVER.at), (Kind.PLACED, Cell(3, 64, 0)), (Kind.TURNED, TORCH.at)):
        view.level = cell.y
        marked = dark_pixels(view, cell)
        view.show_comparison(NO_COMPARISON)
        marks[kind] = marked ^ dark_pixels(view, cell)
        compared.bound["swap_comparison"].trigger()
        compared.bound["swap_comparison"].trigger()
        assert len(marks[kind]) >= 8
    for one, other in combinations(marks.values(), 2):
        assert len(one ^ other) >= 8


def dark_pixels(view: PlanView, cell: Cell) -> frozenset[tuple[int, int]]:
    """Of a cell and the lines around it."""
    image = view.grab().toImage()
    left, top = view.navigator.view.corner(cell.x, cell.z)
    side = range(-1, view.navigator.view.scale + 2)
    dark = ((x, y) for x in side for y in side if image.pixelColor(left + x, top + y).lightness() < 176)
    return frozenset(dark)


def test_three_differences_are_in_sight_in_the_smallest_window(window: MainWindow) -> None:
    window.resize(SMALLEST)
    window.document.load(straight_plan(), None)
    window.comparison.with_path(example("saltern-junction"))
    settle(window)
    rows = window.panels.comparison.list
    for row in range(3):
        assert rows.viewport().rect().contains(rows.visualRect(rows.model().index(row, 0)))
    foot = window.panels.comparison.next
    assert foot.y() >= rows.geometry().bottom(), "nothing stands over the last of them"
