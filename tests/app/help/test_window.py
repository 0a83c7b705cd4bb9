"""The help in the window: where it opens, what leads to it, and what everything says of itself."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QPushButton, QWhatsThis, QWidget
from pytestqt.qtbot import QtBot

from app.actions import ACTIONS
from app.help.dialog import HelpDialog
from app.help.drawing import DrawingView
from app.help.page_view import EntryView
from app.help.pages import pages
from app.names import part_about
from app.network.window import NetworkWindow
from app.panels.tray import part_of
from app.window import MainWindow
from model.files.plan_file import read_plan
from model.parts import Part
from tests.app.windows import example, settle


@pytest.fixture
def network(window: MainWindow) -> Iterator[NetworkWindow]:
    """A network window beside the plan's."""
    made = NetworkWindow(window.settings, window.recovery.folder)
    made.show()
    yield made
    made.close()
    made.deleteLater()


def help_of(window: QWidget) -> HelpDialog:
    (dialog,) = window.findChildren(HelpDialog)
    return dialog


def test_help_opens_at_the_tool_in_use_and_searches(window: MainWindow) -> None:
    window.activateWindow()
    window.view.setFocus()
    window.view.use("erase")
    window.bound["help"].trigger()
    dialog = help_of(window)
    assert dialog.shown == "tool erase"
    QTest.keyClicks(dialog.line, "hopper")
    first = dialog.shown
    assert first is not None
    assert "hopper" in first
    dialog.line.setText("nothing has these words")
    assert dialog.nothing.isVisibleTo(dialog)
    dialog.go_to("part lamp")
    assert dialog.shown == "part lamp"
    window.bound["help"].trigger()
    assert help_of(window) is dialog, "one help a window"


def test_help_opens_at_the_part_in_the_tray(window: MainWindow) -> None:
    window.activateWindow()
    tray = window.panels.tray
    tray.setFocus()
    tray.setCurrentRow(next(row for row in range(tray.count()) if part_of(tray.item(row)) is Part.LEVER))
    window.bound["help"].trigger()
    assert help_of(window).shown == "part lever"


def test_help_opens_at_the_module_in_hand(window: MainWindow) -> None:
    window.activateWindow()
    window.bound["tool_module"].trigger()
    modules = window.panels.modules.list
    modules.setFocus()
    modules.show_module("latch")
    window.bound["help"].trigger()
    assert help_of(window).shown == "module latch"


def test_a_finding_leads_to_its_rule(window: MainWindow) -> None:
    window.document.load(read_plan(example("fen-ring")), None)
    settle(window)
    findings = window.panels.findings
    findings.list.setCurrentIndex(findings.model.index(0))
    assert findings.finding is not None
    findings.help_button.click()
    assert help_of(window).shown == f"rule {findings.finding.rule}"


def test_the_help_of_a_network_opens_at_its_tool(network: NetworkWindow) -> None:
    network.view.use("link")
    network.bound["help"].trigger()
    assert help_of(network).shown == "map tool link"


def test_every_entry_can_be_shown_as_plain_text(window: MainWindow) -> None:
    window.bound["help"].trigger()
    dialog = help_of(window)
    # The others are made of the same lines.
    for page in pages()[:3]:
        dialog.go_to(page.entries[-1].key)
        views = dialog.page.findChildren(EntryView)
        assert len(views) == len(page.entries)
        assert all(label.textFormat() == Qt.TextFormat.PlainText for label in dialog.findChildren(QLabel))
        if page.entries[0].drawings:
            drawings = dialog.page.findChildren(DrawingView)
            assert len(drawings) == sum(len(entry.drawings) for entry in page.entries)
            widths = {drawing.mapTo(dialog.page, QPoint()).x() + drawing.width() for drawing in drawings}
            assert max(widths) <= dialog.page.width(), "no drawing is cut"
            assert all(not drawing.grab().isNull() for drawing in drawings)


def test_the_index_is_walked_by_keys(window: MainWindow, qtbot: QtBot) -> None:
    window.bound["help"].trigger()
    dialog = help_of(window)
    qtbot.waitExposed(dialog)
    dialog.activateWindow()
    dialog.go_to("tool select")
    dialog.line.setFocus()
    QTest.keyClick(dialog.line, Qt.Key.Key_Down)
    assert dialog.focusWidget() is dialog.index
    assert dialog.shown == "tool lay"
    QTest.keyClick(dialog.index, Qt.Key.Key_Escape)
    assert not dialog.isVisible()


def untold(root: QWidget) -> list[str]:
    """What takes the focus and, with all around it, says nothing to What's This; as Qt looks for it."""
    return [
        f"{type(widget).__name__} in {type(widget.parentWidget()).__name__}"
        for widget in root.findChildren(QWidget)
        if widget.focusPolicy() != Qt.FocusPolicy.NoFocus
        and widget.window() is root
        and not said_by(widget, root)
    ]


def said_by(widget: QWidget, root: QWidget) -> str:
    at: QWidget | None = widget
    while at is not None and at is not root:
        if at.whatsThis():
            return at.whatsThis()
        at = at.parentWidget()
    return ""


def test_everything_in_the_windows_says_what_it_is(window: MainWindow, network: NetworkWindow) -> None:
    assert untold(window) == []
    assert untold(network) == []
    for shown in (window, network):
        silent = [name for name, action in shown.bound.items() if not action.whatsThis()]
        assert silent == []
        panels = [value for value in vars(shown.panels).values() if isinstance(value, QWidget)]
        bare = [type(panel).__name__ for panel in panels if not panel.whatsThis()]
        assert set(bare) <= {"StatusBar", "SidePanel"}, "these say it item by item"
        tools = [*shown.frame.tools.tools.values(), shown.frame.tools.main]
        assert all(tool.whatsThis() for tool in tools)


def test_a_silent_widget_would_be_found(window: MainWindow) -> None:
    """The control that must fail."""
    QPushButton(QWidget(window))
    assert untold(window) == ["QPushButton in QWidget"]


def test_whats_this_is_said_of_what_is_asked(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    shown: list[str] = []
    monkeypatch.setattr(QWhatsThis, "showText", lambda _place, text, *_: shown.append(text))
    action = window.bound["tool_lay"]
    assert "Drag to lay track. Keys: L." in action.whatsThis()
    tray = window.panels.tray
    row = next(row for row in range(tray.count()) if part_of(tray.item(row)) is Part.LEVER)
    said = tray.item(row).data(Qt.ItemDataRole.WhatsThisRole)
    assert part_about(Part.LEVER) in said
    window.bound["whats_this"].trigger()
    assert QWhatsThis.inWhatsThisMode()
    QWhatsThis.leaveWhatsThisMode()


def test_the_help_has_the_keys_of_the_trade() -> None:
    """F1 for help and Shift+F1 for What's This: Qt's standard keys on X11, QKeySequence::HelpContents."""
    by_name = {entry.name: entry for entry in ACTIONS}
    assert by_name["help"].keys == ("F1",)
    assert by_name["whats_this"].keys == ("Shift+F1",)
