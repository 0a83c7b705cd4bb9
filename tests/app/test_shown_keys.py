"""A key that the user changed is told wherever a key is told; no text holds one of the table."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication, QPushButton, QWidget

import app
from app import shown_keys, user_keys
from app.actions import ACTIONS
from app.canvas import chips
from app.dialogs.keys import ActionFinder
from app.help.dialog import HelpDialog
from app.network.window import NetworkWindow
from app.start.screen import StartScreen
from app.window import MainWindow

TABLES = {"actions.py", "user_keys.py", "view_keys.py"}
WITH_KEYS_OF_ITS_OWN = {"depth"}
LITERAL = re.compile(r"\(((?:Ctrl|Alt|Shift)\+\S+|F\d+|[A-Z])\)")
"""A key as a text would tell it: in brackets."""


@pytest.fixture
def changed(window: MainWindow) -> Iterator[dict[str, tuple[str, ...]]]:
    """Every action that has a key gets another, while the window is open; Place gets none."""
    names = [entry.name for table in user_keys.TABLES for entry in table if entry.keys]
    keys = (f"Meta+{more}F{number}" for more in ("", "Alt+", "Ctrl+") for number in range(1, 36))
    others = {name: (key,) for name, key in zip(dict.fromkeys(names), keys, strict=False)}
    assert len(others) == len(set(names))
    others["tool_place"] = ()
    window.change_keys(others)
    yield others
    window.change_keys({})


def told(root: QWidget) -> set[str]:
    """All that a window says in words, tips and help."""
    said = set()
    for widget in (root, *root.findChildren(QWidget)):
        text = getattr(widget, "text", None)
        said |= {widget.toolTip(), widget.whatsThis(), text() if callable(text) else ""}
    return said


def test_no_text_tells_a_key_of_the_table(
    window: MainWindow, changed: dict[str, tuple[str, ...]], tmp_path: Path
) -> None:
    old = {f"({shown_keys.shown(key)})" for table in user_keys.TABLES for e in table for key in e.keys}
    network = NetworkWindow(window.settings, tmp_path)
    start = StartScreen(window, [], [], sketch_first=True)
    for screen in (window, network, start):
        assert [said for said in told(screen) if any(key in said for key in old)] == []
    assert start.new_button.shortcut().toString() == changed["new"][0]
    assert any("(Meta+F" in said for said in told(window)), "the control"
    run = next(each for each in window.findChildren(QPushButton) if each.text() == "One tick")
    assert changed["run_tick"][0] in run.toolTip()
    network.close()
    for gone in (network, start):
        gone.deleteLater()


def test_help_that_stands_open_tells_the_new_key(window: MainWindow) -> None:
    dialog = HelpDialog(window)
    dialog.go_to("tool lay")
    window.change_keys({"tool_lay": ("Meta+L",)})
    assert dialog.shown == "tool lay"
    assert "Meta+L" in told(dialog)
    assert "Meta+L" in window.bound["tool_lay"].whatsThis()
    window.change_keys({})
    assert "Meta+L" not in told(dialog) | {window.bound["tool_lay"].whatsThis()}
    dialog.deleteLater()


def test_the_empty_plan_tells_the_new_key(
    window: MainWindow, changed: dict[str, tuple[str, ...]], monkeypatch: pytest.MonkeyPatch
) -> None:
    drawn: list[str] = []
    monkeypatch.setattr(chips, "draw_text", lambda _painter, _x, _y, text, *_, **__: drawn.append(text))
    window.view.grab()
    assert {changed["tool_lay"][0], changed["open"][0], "Place"} <= set(drawn)


def test_the_first_sketch_tells_the_new_key(window: MainWindow, changed: dict[str, tuple[str, ...]]) -> None:
    window.first_sketch.begin()
    QApplication.processEvents()
    assert any(f"({changed['tool_lay'][0]})" in said for said in told(window.view))
    window.change_keys({})
    assert any("(L)" in said for said in told(window.view))
    window.first_sketch.end()


def test_no_source_holds_the_key_of_an_action() -> None:
    """Else it would be told when the user has another."""
    root = Path(app.__file__).parent
    keys = {key for entry in ACTIONS for key in entry.keys}
    found = [
        f"{path.relative_to(root)}: {text}"
        for path in root.rglob("*.py")
        if path.name not in TABLES and path.parent.name not in WITH_KEYS_OF_ITS_OWN
        for text in texts_in(path)
        if any(match[1] in keys for match in LITERAL.finditer(text))
    ]
    assert found == []


def texts_in(path: Path) -> Iterator[str]:
    """Every string of a source but those that only explain it."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    explaining = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in explaining:
            yield node.value


def test_what_is_called_so_is_found_before_what_tells_of_it(window: MainWindow) -> None:
    finder = ActionFinder(window, window.bound)
    for typed, first in (("dark", "theme_dark"), ("light", "theme_light"), ("level up", "level_up")):
        finder.line.setText(typed)
        assert finder.chosen is window.bound[first]
    finder.deleteLater()


def test_finding_nothing_is_said_in_a_sentence(window: MainWindow) -> None:
    finder = ActionFinder(window, window.bound)
    finder.show()
    assert not finder.nothing.isVisible()
    finder.line.setText("rhubarb")
    assert finder.nothing.isVisible()
    assert finder.nothing.text() == "No action has all these words."
    finder.line.setText("take back last step")
    assert finder.nothing.text() == "Cannot be done now: Undo."
    finder.line.setText("fit all")
    assert not finder.nothing.isVisible()
    finder.close()
    finder.deleteLater()
