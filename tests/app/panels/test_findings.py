"""The findings: choosing one goes there; setting aside and fixing are edits like any other."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtGui import QFontMetrics, QImage, QPainter, QStandardItemModel
from PySide6.QtWidgets import QApplication, QStyleOptionViewItem
from pytestqt.qtbot import QtBot

from app.dialogs.waiver import WaiverDialog
from app.panels.findings_delegate import FindingsDelegate
from app.panels.findings_model import FINDING_ROLE, OLD_ROLE, PLACE_ROLE, SECOND_ROLE
from app.panels.findings_panel import FindingsPanel
from app.panels.look import font
from app.panels.status_bar import FIGURE_ROOM, SeverityCounts
from app.window import MainWindow
from model.edits import erase, place
from model.files.plan_file import read_plan
from model.grid import Cell
from model.parts import Part
from model.pieces import new_piece
from model.plan import Plan, Waiver, plan_of
from model.rules import RULES, Finding, Severity
from tests.app.windows import example, settle, straight_plan

FAR = Cell(40, 70, -30)


def plan_with_a_rail_in_the_air() -> Plan:
    """Track, and far away on another level a rail that nothing carries."""
    straight = straight_plan()
    return plan_of([*straight.pieces, new_piece(Part.RAIL, FAR)], straight.details)


def row_of(window: MainWindow, rule: str) -> int:
    model = window.panels.findings.model
    rows = [row for row in range(model.rowCount()) if model.finding(row).rule == rule]
    assert rows, [model.finding(row).rule for row in range(model.rowCount())]
    return rows[0]


def click_row(window: MainWindow, qtbot: QtBot, row: int) -> None:
    view = window.panels.findings.list
    index = window.panels.findings.model.index(row)
    view.scrollTo(index)
    qtbot.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, pos=view.visualRect(index).center())


@pytest.fixture
def floating(window: MainWindow) -> MainWindow:
    """A window with that plan."""
    window.document.load(plan_with_a_rail_in_the_air(), None)
    settle(window)
    return window


def test_a_click_chooses_the_cell_and_goes_to_its_level(floating: MainWindow, qtbot: QtBot) -> None:
    assert floating.view.level == 64
    click_row(floating, qtbot, row_of(floating, "unsupported"))
    assert floating.view.level == FAR.y
    assert floating.view.selection == {FAR}
    assert floating.panels.findings.finding is not None
    assert floating.panels.findings.finding.rule == "unsupported"


def test_the_keyboard_goes_on_from_the_chosen_finding(floating: MainWindow, qtbot: QtBot) -> None:
    floating.view.put_cursor(Cell(0, 64, 0), by_key=True)
    click_row(floating, qtbot, row_of(floating, "unsupported"))
    assert floating.view.cursor == FAR
    qtbot.keyClick(floating.view, Qt.Key.Key_Right)
    assert floating.view.cursor == FAR.moved(dx=1)


def test_a_row_says_what_is_wrong_where_and_why(floating: MainWindow, qtbot: QtBot) -> None:
    row = row_of(floating, "unsupported")
    index = floating.panels.findings.model.index(row)
    assert index.data() == RULES["unsupported"].title
    assert index.data(PLACE_ROLE) == "40 70 −30"
    assert index.data(SECOND_ROLE) == index.data(Qt.ItemDataRole.UserRole).message
    click_row(floating, qtbot, row)
    message = floating.panels.findings.model.finding(row).message
    assert floating.panels.findings._why.text() == f"{message} {RULES['unsupported'].why}"
    assert floating.panels.findings._do.text() == RULES["unsupported"].remedy


def test_the_fix_is_one_undo_step(floating: MainWindow, qtbot: QtBot) -> None:
    panel = floating.panels.findings
    click_row(floating, qtbot, row_of(floating, "unsupported"))
    qtbot.waitUntil(panel.fix_button.isVisible)
    qtbot.mouseClick(panel.fix_button, Qt.MouseButton.LeftButton)
    assert floating.document.undo_stack.count() == 1
    settle(floating)
    below = Cell(FAR.x, FAR.y - 1, FAR.z)
    assert floating.document.plan.pieces.part_at(below) is not None
    in_the_air = [f for f in floating.document.findings if f.rule == "unsupported"]
    assert all(FAR not in finding.cells for finding in in_the_air)
    assert panel.finding is None, "the next row would be chosen, and the view would go there unasked"
    floating.bound["undo"].trigger()
    assert floating.document.plan == plan_with_a_rail_in_the_air()


def test_set_aside_with_a_reason_survives_saving_and_can_be_taken_up(
    floating: MainWindow, qtbot: QtBot, tmp_path: Path
) -> None:
    panel = floating.panels.findings
    row = row_of(floating, "unsupported")
    click_row(floating, qtbot, row)

    def give_reason() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, WaiverDialog)
        assert not dialog.ok.isEnabled()
        qtbot.keyClicks(dialog.reason, "hangs on purpose")
        qtbot.mouseClick(dialog.ok, Qt.MouseButton.LeftButton)

    QTimer.singleShot(0, give_reason)
    qtbot.mouseClick(panel.aside_button, Qt.MouseButton.LeftButton)
    settle(floating)
    assert panel.finding is not None
    assert panel.finding.waived
    assert panel.finding.reason == "hangs on purpose"

    path = tmp_path / "aside.plan.json"
    floating.document.save(path)
    floating.document.load(read_plan(path), path)
    settle(floating)
    row = row_of(floating, "unsupported")
    assert panel.model.index(row).data(SECOND_ROLE) == "Set aside: “hangs on purpose”"
    click_row(floating, qtbot, row)
    assert panel.aside_button.text() == "Take up again"
    qtbot.mouseClick(panel.aside_button, Qt.MouseButton.LeftButton)
    settle(floating)
    assert not panel.model.finding(row_of(floating, "unsupported")).waived


def test_a_waiver_without_a_finding_is_listed_and_dropped(window: MainWindow, qtbot: QtBot) -> None:
    stale = Waiver("unsupported", (Cell(7, 7, 7),), (), "gone in spring")
    straight = straight_plan()
    window.document.load(Plan(straight.pieces, straight.details.replace(waivers=(stale,))), None)
    settle(window)
    panel = window.panels.findings
    assert panel.stale.isVisible()
    assert "gone in spring" in panel.stale.toolTip()
    qtbot.mouseClick(panel.drop_button, Qt.MouseButton.LeftButton)
    assert window.document.plan == straight
    settle(window)
    assert not panel.stale.isVisible()
    window.bound["undo"].trigger()
    assert window.document.plan.details.waivers == (stale,)


def test_new_findings_leave_the_chosen_row_and_the_scroll_alone(floating: MainWindow, qtbot: QtBot) -> None:
    for x in range(60, 80):
        floating.document.edit(place, new_piece(Part.RAIL, Cell(x * 3, 64, 90)))
    settle(floating)
    panel = floating.panels.findings
    row = row_of(floating, "unsupported") + 12
    click_row(floating, qtbot, row)
    chosen = panel.finding
    QApplication.processEvents()
    scroll = panel.list.verticalScrollBar().value()
    assert scroll > 0
    floating.document.edit(place, new_piece(Part.RAIL, Cell(900, 64, 900)))
    settle(floating)
    assert panel.finding == chosen
    assert panel.list.verticalScrollBar().value() == scroll
    floating.document.edit(erase, [Cell(900, 64, 900)])
    settle(floating)
    assert panel.finding == chosen


def test_the_model_follows_any_list_of_findings(window: MainWindow) -> None:
    """Rows are put in and taken out one by one; the list must come out as a fresh one would."""
    from itertools import permutations

    model = window.panels.findings.model
    cells = [Cell(x, 64, 0) for x in range(4)]
    severity = RULES["unsupported"].severity
    found = [Finding("unsupported", severity, (cell,), (), "in the air") for cell in cells]
    for size in range(5):
        for chosen in permutations(found, size):
            model.show(list(chosen), {}, are_old=False)
            assert [model.finding(row) for row in range(model.rowCount())] == list(chosen)


def test_the_status_bar_counts_by_severity(floating: MainWindow) -> None:
    open_ones = [f for f in floating.document.findings if not f.waived]
    errors = sum(f.severity.value == "error" for f in open_ones)
    assert errors > 0
    assert f"{errors} error" in floating.panels.status.counts.words
    assert floating.side.upper_tabs.tabText(0) == f"Findings  {len(open_ones)}"


def test_large_counts_are_whole_and_keep_apart(qapp: QApplication) -> None:
    """Each figure has as much room as it needs; small ones do not shift as they change."""
    counts = SeverityCounts()
    small = counts.sizeHint()
    counts.show_counts({Severity.ERROR: 99})
    assert counts.sizeHint() == small
    counts.show_counts({Severity.ERROR: 12_345})
    digits = QFontMetrics(font(11)).horizontalAdvance("12345")
    assert counts.sizeHint().width() >= small.width() - FIGURE_ROOM + digits + 8


def test_an_empty_list_says_what_would_stand_there(window: MainWindow) -> None:
    panel = window.panels.findings
    assert panel.empty.isVisible()
    assert "as you draw" in panel.empty.text()
    window.document.load(read_plan(example("fen-ring")), None)
    settle(window)
    assert panel.list.isVisible() == bool(window.document.findings)
    assert panel.list.mapTo(window, QPoint(0, 0)).x() > window.width() // 2


def test_names_of_switches_stand_beside_their_places(window: MainWindow) -> None:
    window.document.load(read_plan(example("saltern-junction")), None)
    settle(window)
    model = window.panels.findings.model
    names = {switch.at: switch.name for switch in window.document.junction.switches}
    rows = [row for row in range(model.rowCount()) if model.finding(row).at in names]
    for row in rows:
        assert str(model.index(row).data(PLACE_ROLE)).startswith(names[model.finding(row).at])


def painted_row(place: str) -> QImage:
    """A row of the list, 320 px wide, of a finding at that place."""
    model = QStandardItemModel(1, 1)
    index = model.index(0, 0)
    model.setData(index, "A station cannot be reached", Qt.ItemDataRole.DisplayRole)
    model.setData(index, Finding("loose-end", Severity.WARNING, (), (), ""), FINDING_ROLE)
    model.setData(index, place, PLACE_ROLE)
    model.setData(index, "No way leads there.", SECOND_ROLE)
    image = QImage(320, 48, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.white)
    option = QStyleOptionViewItem()
    option.rect = image.rect()
    painter = QPainter(image)
    FindingsDelegate().paint(painter, option, index)
    painter.end()
    return image


def test_a_long_place_leaves_the_title_alone(qapp: QApplication) -> None:
    """Such as a station of a network whose name is as long as names may be."""
    rows = [painted_row(letter * 80) for letter in "WM"]
    left = [row.copy(0, 0, 160, 48) for row in rows]
    assert rows[0] != rows[1]
    assert left[0] == left[1]


def test_what_hangs_on_no_route_follows_an_edit_at_once(floating: MainWindow) -> None:
    """The rest is shown as of an older plan until the background has worked it out, and no longer."""
    document, panel = floating.document, floating.panels.findings
    document.edit(erase, [piece.at for piece in document.plan.pieces if piece.part is not Part.RAIL])
    document._begin.stop()  # the background rests
    uncarried = [finding for finding in document.findings if finding.rule == "unsupported"]
    assert len(uncarried) == sum(piece.part is Part.RAIL for piece in document.plan.pieces)
    assert panel.model.rowCount() == len(document.findings)
    assert f"{len(uncarried)} error" in floating.panels.status.counts.words
    document._old_for_long.stop()
    document.junction_updated.emit()
    old = {panel.model.finding(row).rule for row in range(panel.model.rowCount()) if is_old(panel, row)}
    assert old
    assert not any(RULES[rule].is_local for rule in old)
    document._begin.start()
    settle(floating)
    assert not any(is_old(panel, row) for row in range(panel.model.rowCount()))


def is_old(panel: FindingsPanel, row: int) -> bool:
    return bool(panel.model.index(row).data(OLD_ROLE))
