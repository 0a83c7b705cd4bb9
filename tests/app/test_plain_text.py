"""No name becomes markup anywhere in a window, and no source file asks for markup.

Qt takes text for markup by its first tag, and then loads files and pictures that it names.
"""

from __future__ import annotations

import ast
from pathlib import Path
from typing import Any, Final

import pytest
from PySide6.QtGui import Qt
from PySide6.QtWidgets import QApplication, QLabel, QMessageBox, QWidget

from app.network.window import NetworkWindow
from app.window import MainWindow
from model.network.network import JunctionSpec, Link, Network, ReaderSpec, Station, Trip
from model.plan import Details, Plan, Route, SheetData, Waiver
from tests.app.network.conftest import make_network, network_window
from tests.app.network.networks import load
from tests.app.windows import settle, straight_plan

__all__ = ["make_network", "network_window"]

ROOT: Final = Path(__file__).parents[2]
NAME: Final = "<img src='file:secret.png'><b>Quay</b>&amp;".replace("/", "")
FORBIDDEN: Final = {
    "setHtml", "insertHtml", "setMarkdown", "appendHtml", "toHtml", "QTextBrowser", "QWebEngineView",
    "setOpenExternalLinks", "QStaticText",
}  # fmt: skip
FORMATS: Final = {"RichText", "AutoText", "MarkdownText"}


def hostile_plan() -> Plan:
    """Every word of a user is the name."""
    plan = straight_plan()
    arms = tuple(type(arm)(f"{NAME}{number}", arm.enter, arm.leave) for number, arm in enumerate(plan.arms))
    routes = (Route(arms[0].name, arms[0].name, arms[1].name, NAME), Route(arms[1].name, "nowhere" + NAME))
    waivers = (Waiver("loose-end", (), (), NAME),)
    details = plan.details.replace(
        title=NAME, arms=arms, routes=routes, waivers=waivers, sheet=SheetData(*[NAME] * 6)
    )
    return Plan(plan.pieces, details)


def hostile_network() -> Network:
    """The same for a network, with findings that name everything."""
    readers = (ReaderSpec(NAME, (f"{NAME}1", f"{NAME}2")),)
    links = (Link(f"{NAME}3", f"{NAME}/{NAME}", 64), Link(f"{NAME}/{NAME}1", "gone" + NAME, 8))
    trips = (Trip(f"{NAME}3", f"{NAME}4", 10),)
    stations = (Station(f"{NAME}3", (0.0, 0.0)), Station(f"{NAME}4", (80.0, 0.0)))
    return Network(NAME, stations, (JunctionSpec(NAME, readers=readers, at=(40.0, 0.0)),), links, trips)


def markup_in(top: QWidget) -> list[str]:
    """Labels that would take what they show for markup."""
    wrong = []
    for label in top.findChildren(QLabel):
        shown = label.textFormat()
        rich = shown == Qt.TextFormat.RichText or (
            shown == Qt.TextFormat.AutoText and Qt.mightBeRichText(label.text())
        )
        if rich:
            wrong.append(f"{label.accessibleName()}: {label.text()}")
    boxes: list[Any] = top.findChildren(QMessageBox)
    return wrong + [box.text() for box in boxes if box.textFormat() != Qt.TextFormat.PlainText]


def every_panel(window: Any) -> None:
    """Bring up what is behind tabs."""
    for name, action in window.bound.items():
        if name.startswith("show_"):
            action.trigger()
            QApplication.processEvents()


def test_no_name_is_markup_in_a_plan(window: MainWindow) -> None:
    window.document.load(hostile_plan(), None)
    settle(window)
    every_panel(window)
    window.panels.message.say(NAME)
    window.panels.status.say(NAME)
    assert any(NAME in label.text() for label in window.findChildren(QLabel))
    assert markup_in(window) == []


def test_no_name_is_markup_in_a_network(network_window: NetworkWindow) -> None:
    load(network_window, hostile_network())
    every_panel(network_window)
    network_window.panels.message.say(NAME)
    assert any(NAME in label.text() for label in network_window.findChildren(QLabel))
    assert markup_in(network_window) == []


MARK: Final = "[*] Quay [*]"
"""Qt puts its sign of a changed document in the place of these characters, or drops them."""


def test_titles_of_windows_say_all_of_a_name(window: MainWindow, network_window: NetworkWindow) -> None:
    window.document.load(Plan(straight_plan().pieces, Details(title=MARK)), None)
    window.bound["in_depth"].trigger()
    load(network_window, Network(title=MARK))
    shown = [top for top in QApplication.topLevelWidgets() if top.isVisible() and top.windowTitle()]
    titles = [handle.title() for top in shown if (handle := top.windowHandle()) is not None]
    assert len(titles) == 3
    assert all(MARK in title for title in titles)


def test_a_label_that_takes_markup_is_seen(window: MainWindow) -> None:
    """The control that must fail: a label as Qt makes it."""
    QLabel(NAME, window)
    assert len(markup_in(window)) == 1


def wishes_for_markup(source: str) -> set[str]:
    """What a source file uses that shows markup."""
    tree = ast.parse(source)
    used = {node.attr for node in ast.walk(tree) if isinstance(node, ast.Attribute)}
    used |= {
        alias.name for node in ast.walk(tree) if isinstance(node, ast.ImportFrom) for alias in node.names
    }
    return used & (FORBIDDEN | FORMATS)


@pytest.mark.parametrize("path", sorted((ROOT / "app").rglob("*.py")), ids=lambda path: path.name)
def test_no_source_file_asks_for_markup(path: Path) -> None:
    assert not wishes_for_markup(path.read_text())


@pytest.mark.parametrize(
    "source",
    ["label.setTextFormat(Qt.TextFormat.RichText)", "page.setHtml(words)", "from a import QTextBrowser"],
)
def test_a_wish_for_markup_is_seen(source: str) -> None:
    """Controls that must fail."""
    assert wishes_for_markup(source)
