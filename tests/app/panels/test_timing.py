"""The timing diagram, worked by keys and mouse as a user does, over a real dry run."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QContextMenuEvent, QImage, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu
from pytestqt.qtbot import QtBot

from app import theme as themes
from app.panels.timing_painting import AXIS, NAMES, ROW
from app.panels.timing_panel import NO_PROBES, NOTHING_RUN, TimingPanel
from app.panels.timing_view import TimingView
from app.window import MainWindow
from model.dry_run import Lever
from model.edits import erase
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Piece, new_piece
from model.plan import Details, Plan, plan_of
from tests.app.windows import settle

LEVER, NEAR, FAR, REPEATER, END, TORCH = (Cell(x, 64, 0) for x in range(6))
CTRL = Qt.KeyboardModifier.ControlModifier
LEFT = Qt.MouseButton.LeftButton


def wired_plan() -> Plan:
    """A lever, two dust, a repeater with delay 4, dust, and a torch on the far side of nothing."""
    cells = (LEVER, NEAR, FAR, REPEATER, END, TORCH)
    pieces = [new_piece(Part.SOLID_BLOCK, cell.moved(dy=-1)) for cell in cells]
    pieces += [
        new_piece(Part.LEVER, LEVER),
        new_piece(Part.DUST, NEAR),
        new_piece(Part.DUST, FAR),
        Piece(Part.REPEATER, REPEATER, Facing.EAST, delay=4),
        new_piece(Part.DUST, END),
        new_piece(Part.GLASS, TORCH),
    ]
    return plan_of(pieces, Details("Brinepan test line"))


@pytest.fixture
def wired(window: MainWindow) -> MainWindow:
    """A window with that plan."""
    window.document.load(wired_plan(), None)
    settle(window)
    return window


def panel_of(window: MainWindow) -> TimingPanel:
    return window.panels.timing


def probe(window: MainWindow, *cells: Cell) -> None:
    """Chosen on the plan, then by the key."""
    window.view.selection = frozenset(cells)
    window.view.setFocus()
    QTest.keyClick(window.view, window.bound["probe"].shortcut()[0].key())
    QApplication.processEvents()


def run(window: MainWindow, ticks: int, pulls: dict[int, bool] | None = None) -> None:
    """A dry run of so many ticks; the lever is pulled in the ticks that are given."""
    runner = window.view.dry_run.runner
    if not runner.is_on:
        window.bound["dry_run"].trigger()
        runner.pause()
    for _ in range(ticks):
        if pulls and runner.tick in pulls:
            assert runner.give(Lever(LEVER, pulls[runner.tick]))
        runner.step()


@pytest.fixture
def read(wired: MainWindow) -> MainWindow:
    """Three probes, 60 ticks, the lever on from tick 10 to tick 30."""
    probe(wired, LEVER, FAR, REPEATER)
    run(wired, 60, {10: True, 30: False})
    panel_of(wired).view.setFocus()
    return wired


def keys(
    view: TimingView, *pressed: Qt.Key, mods: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier
) -> None:
    for key in pressed:
        QTest.keyClick(view, key, mods)


def place(view: TimingView, tick: int, row: int) -> QPoint:
    return QPoint(NAMES + int(view.axis.middle(tick)), AXIS + row * ROW + ROW // 2)


def pixels(view: TimingView) -> QImage:
    return view.viewport().grab().toImage()


def test_the_panel_comes_with_the_first_probe_and_says_what_to_do(wired: MainWindow) -> None:
    panel = panel_of(wired)
    assert not panel.isVisible()
    wired.bound["show_timing"].trigger()
    assert panel.isVisible()
    assert panel.empty.isVisible()
    assert panel.empty.text() == NO_PROBES
    wired.bound["show_timing"].trigger()
    assert not panel.isVisible(), "once more hides it"
    probe(wired, FAR)
    assert panel.view.isVisible()
    assert panel.words.text() == NOTHING_RUN.format(key=" (F5)")
    assert not panel.svg_button.isEnabled()


def test_probes_are_added_and_taken_away_on_the_plan(wired: MainWindow) -> None:
    view = panel_of(wired).view
    probe(wired, LEVER, FAR)
    assert [trace.cell for trace in view.traces] == [LEVER, FAR], "in the order of placing"
    assert wired.bound["probe"].text() == "Take probe away"
    probe(wired, LEVER, REPEATER)
    assert [trace.cell for trace in view.traces] == [LEVER, FAR, REPEATER], "one of them was not watched yet"
    probe(wired, LEVER, FAR)
    assert [trace.cell for trace in view.traces] == [REPEATER]
    assert "2 probes taken away" in wired.panels.status.here.text()


def test_glass_and_empty_cells_are_not_probed(wired: MainWindow) -> None:
    probe(wired, TORCH, Cell(9, 64, 9))
    assert not panel_of(wired).view.traces
    assert "can be probed" in wired.panels.status.here.text()


def test_too_many_probes_are_refused_as_a_whole(wired: MainWindow) -> None:
    blocks = [new_piece(Part.SOLID_BLOCK, Cell(x, 64, 0)) for x in range(201)]
    wired.document.load(plan_of(blocks), None)
    settle(wired)
    probe(wired, *(block.at for block in blocks))
    assert not panel_of(wired).view.traces
    assert "room for 200 probes" in wired.panels.status.here.text()


def test_the_context_menu_probes_what_is_under_the_pointer(wired: MainWindow) -> None:
    view = wired.view
    left, top = view.navigator.view.corner(FAR.x, FAR.z)
    half = view.navigator.view.scale // 2
    menu = open_menu(wired, QPoint(left + half, top + half))
    assert view.selection == {FAR}
    menu.actions()[1].trigger()
    menu.hide()
    assert menu.actions()[1] is wired.bound["probe"]
    assert [trace.cell for trace in panel_of(wired).view.traces] == [FAR]


def open_menu(window: MainWindow, at: QPoint) -> QMenu:
    """By the right button, as the window system tells of it."""
    view = window.view
    event = QContextMenuEvent(QContextMenuEvent.Reason.Mouse, at, view.mapToGlobal(at))
    QApplication.sendEvent(view, event)
    assert window.context_menu.menu.isVisible()
    return window.context_menu.menu


def test_the_menu_key_opens_it_for_what_is_chosen(wired: MainWindow) -> None:
    view = wired.view
    view.go_to(FAR)
    view.selection = frozenset({LEVER, FAR})
    event = QContextMenuEvent(QContextMenuEvent.Reason.Keyboard, QPoint(3, 3), view.mapToGlobal(QPoint(3, 3)))
    QApplication.sendEvent(view, event)
    assert wired.context_menu.menu.isVisible()
    assert view.selection == {LEVER, FAR}, "what was chosen stays chosen"
    wired.context_menu.menu.hide()


def test_the_readings_are_those_of_the_run(read: MainWindow) -> None:
    """15 at the lever, 14 at the second dust; the repeater follows 4 ticks later."""
    told = {
        trace.cell: [*zip(trace.ticks, trace.values, strict=True)] for trace in panel_of(read).view.traces
    }
    assert told == {
        LEVER: [(0, 0), (10, 15), (30, 0)],
        FAR: [(0, 0), (10, 14), (30, 0)],
        REPEATER: [(0, 0), (14, 15), (34, 0)],
    }


def test_the_cursor_goes_with_the_run_until_it_is_put_somewhere(read: MainWindow) -> None:
    panel, view = panel_of(read), panel_of(read).view
    assert panel.words.text() == "Tick 59, 2.95 s, with the run. Lever 0 64 0: off since tick 30."
    run(read, 3)
    assert view.tick == 62
    keys(view, Qt.Key.Key_Left)
    run(read, 3)
    assert view.tick == 61, "it stays where it was put"
    keys(view, Qt.Key.Key_End)
    assert view.tick == 65
    run(read, 1)
    assert view.tick == 66


def test_keys_find_changes_rows_and_both_ends(read: MainWindow) -> None:
    panel, view = panel_of(read), panel_of(read).view
    keys(view, Qt.Key.Key_Home, Qt.Key.Key_Down)
    keys(view, Qt.Key.Key_Right, mods=CTRL)
    expected = "Dust 2 64 0: strength 14 since tick 10, strength 0 from tick 30."
    assert panel.words.text() == f"Tick 10, 0.5 s. {expected}"
    assert view.accessibleDescription() == panel.words.text(), "a screen reader hears the same"
    keys(view, Qt.Key.Key_Right, mods=CTRL)
    keys(view, Qt.Key.Key_Right, mods=CTRL)
    assert view.tick == 30, "there is no later change"
    keys(view, Qt.Key.Key_Left, mods=CTRL)
    assert view.tick == 10
    keys(view, Qt.Key.Key_Left, Qt.Key.Key_Down)
    assert panel.words.text() == "Tick 9, 0.45 s. Repeater 3 64 0: off since tick 0, on from tick 14."
    keys(view, Qt.Key.Key_Down, Qt.Key.Key_Up, Qt.Key.Key_Up, Qt.Key.Key_Up)
    assert view.row == 0


def test_keys_of_the_window_mean_here_what_the_diagram_says(read: MainWindow) -> None:
    view, level = panel_of(read).view, read.view.level
    run(read, 1_000)
    keys(view, Qt.Key.Key_Home)
    keys(view, Qt.Key.Key_PageDown)
    assert view.axis.first == pytest.approx(view.axis.shown)
    assert read.view.level == level, "elsewhere this key changes the level"
    keys(view, Qt.Key.Key_Delete)
    assert [trace.cell for trace in view.traces] == [FAR, REPEATER]
    assert LEVER in read.document.plan.pieces, "elsewhere this key erases what is chosen"


def test_zooming_by_key_and_wheel_keeps_the_place(read: MainWindow) -> None:
    view = panel_of(read).view
    keys(view, Qt.Key.Key_Home)
    for _ in range(20):
        keys(view, Qt.Key.Key_Right)
    scale, x = view.axis.scale, view.axis.middle(20)
    keys(view, Qt.Key.Key_Plus)
    assert view.axis.scale > scale
    keys(view, Qt.Key.Key_Minus)
    assert view.axis.scale == scale
    assert view.axis.middle(20) == pytest.approx(x, abs=1)
    at = QPointF(place(view, 20, 0))
    wheel = QWheelEvent(
        at, QPointF(view.viewport().mapToGlobal(at.toPoint())), QPoint(), QPoint(0, 120),
        Qt.MouseButton.NoButton, CTRL, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(view.viewport(), wheel)
    assert view.axis.scale > scale
    assert view.axis.middle(20) == pytest.approx(x, abs=view.axis.scale)
    keys(view, Qt.Key.Key_0)
    assert view.axis.first == 0
    assert view.axis.last == pytest.approx(60), "the whole run"


def test_the_mouse_puts_the_cursor_and_chooses_rows(read: MainWindow, qtbot: QtBot) -> None:
    view = panel_of(read).view
    qtbot.mouseClick(view.viewport(), LEFT, pos=place(view, 12, 2))
    assert (view.tick, view.row) == (12, 2)
    qtbot.mousePress(view.viewport(), LEFT, pos=place(view, 20, 1))
    qtbot.mouseMove(view.viewport(), place(view, 33, 1))
    qtbot.mouseRelease(view.viewport(), LEFT, pos=place(view, 33, 1))
    assert (view.tick, view.row) == (33, 1)
    qtbot.mouseClick(view.viewport(), LEFT, pos=QPoint(50, AXIS + 5))
    assert (view.tick, view.row) == (33, 0), "a click on a name leaves the cursor"
    qtbot.mouseClick(view.viewport(), LEFT, pos=place(view, 80, 2))
    assert view.tick == 59, "nothing was read later"


def test_a_row_leads_to_its_cell(read: MainWindow, qtbot: QtBot) -> None:
    view = panel_of(read).view
    read.view.selection = frozenset()
    qtbot.mouseDClick(view.viewport(), LEFT, pos=QPoint(50, AXIS + ROW + 5))
    assert read.view.selection == {FAR}
    view.choose_row(2)
    keys(view, Qt.Key.Key_Return)
    assert read.view.selection == {REPEATER}


def test_what_is_on_is_wide_and_what_is_off_narrow(read: MainWindow) -> None:
    """Seen in the picture: told apart without colour, by the width of the line and by where it runs."""
    read.use_scheme("light")
    view = panel_of(read).view
    view.put_cursor(0)
    image, theme = pixels(view), themes.current()

    def rows_of(tick: int, colour: str) -> list[int]:
        x = place(view, tick, 0).x()
        return [y for y in range(AXIS, AXIS + ROW - 1) if image.pixelColor(x, y).name() == colour]

    on, off = rows_of(20, theme.live.name()), rows_of(45, theme.ink2.name())
    assert (len(on), len(off)) == (2, 1), "2:1"
    assert on[-1] < off[0], "strength goes up"
    assert image.pixelColor(place(view, 20, 0)) != theme.paper, "a wash lies under it"
    assert image.pixelColor(place(view, 45, 0)) == theme.paper


def test_rewinding_and_another_plan_empty_the_diagram(read: MainWindow) -> None:
    view = panel_of(read).view
    read.bound["run_back"].trigger()
    assert view.now == 0
    assert all(not trace.ticks for trace in view.traces)
    assert panel_of(read).words.text() == NOTHING_RUN.format(key=" (F5)")
    run(read, 5)
    assert [trace.ticks for trace in view.traces] == [[0], [0], [0]]
    read.document.load(wired_plan(), None)
    settle(read)
    assert not view.traces
    assert not read.view.dry_run.runner.watched


def test_the_readings_stay_when_the_run_is_over_and_an_edit_renames_the_row(read: MainWindow) -> None:
    panel = panel_of(read)
    read.document.apply(erase(read.document.plan, [FAR]))
    settle(read)
    assert not read.view.dry_run.is_on
    trace = panel.view.traces[1]
    assert (trace.name, trace.values) == ("Nothing", [0, 14, 0])
    assert panel.has_readings


def test_a_probe_that_comes_late_reads_from_then_on(read: MainWindow) -> None:
    probe(read, NEAR)
    trace = panel_of(read).view.traces[-1]
    assert (trace.ticks, trace.values) == ([59], [0])
    assert trace.words(trace.value_at(20)) == "not read yet"


def test_a_tick_in_which_order_decides_is_marked_and_said(window: MainWindow) -> None:
    """A repeater comes due in the tick in which another one comes on to lock it."""
    locked, lock = Cell(2, 64, 0), Cell(2, 64, 1)
    levers = Cell(1, 64, 0), Cell(2, 64, 2)
    pieces = [new_piece(Part.SOLID_BLOCK, cell.moved(dy=-1)) for cell in (locked, lock, *levers)]
    pieces += [Piece(Part.REPEATER, locked, Facing.EAST), Piece(Part.REPEATER, lock, Facing.NORTH)]
    pieces += [new_piece(Part.LEVER, cell) for cell in levers]
    window.document.load(plan_of(pieces), None)
    settle(window)
    probe(window, locked, lock)
    runner, panel = window.view.dry_run.runner, panel_of(window)
    run(window, 5)
    for lever in levers:
        runner.give(Lever(lever, True))
    run(window, 20)
    panel.view.put_cursor(6)
    assert "Unsure" not in panel.words.text()
    before = pixels(panel.view)
    panel.view.put_cursor(7)
    assert panel.words.text().endswith("Unsure: the order within this tick decides.")
    assert panel.book.unsure == {locked: [7], lock: [7]}
    panel.view.unsure = {}
    panel.view.put_cursor(6)
    assert pixels(panel.view) != before, "the picture says so, too"


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", [(1440, 900), (1024, 640)])
def test_it_finds_room_in_every_window(read: MainWindow, size: tuple[int, int], scheme: str) -> None:
    read.use_scheme(scheme)
    read.resize(*size)
    QApplication.processEvents()
    panel = panel_of(read)
    assert read.size().toTuple() == size
    for widget in (panel.probe_button, panel.found_button, panel.vcd_button, panel.view):
        assert widget.isVisible()
        assert panel.rect().contains(widget.mapTo(panel, widget.rect().bottomRight()))
    assert panel.view.viewport().height() >= AXIS + ROW, "one row at least"
    assert read.view.height() > 150
    assert pixels(panel.view).pixelColor(NAMES + 2, AXIS + 3).name() == themes.current().paper.name()
