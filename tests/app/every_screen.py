"""Every window, dialog and popup of the program in a sensible state, one after another.

For whoever looks at all of them: names for screen readers, pictures, texts that were not translated. What an
action asks with ``exec`` is caught, shown, and answered with no, so a new dialog is met here by itself.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Final
from unittest.mock import patch

from PySide6.QtWidgets import QApplication, QDialog, QFileDialog, QMenu, QWidget

from app.dialogs.another_run import ask_run
from app.dialogs.contents import ContentsDialog
from app.dialogs.waiver import ask_reason
from app.dialogs.working import WorkingDialog
from app.network.items import Item, Kind
from app.network.window import NetworkWindow
from app.panels.side_panel import Tabs
from app.window import MainWindow
from model.commissioning import Run
from model.files.plan_file import read_plan
from model.grid import Cell, Facing
from model.parts import Part
from model.pieces import Held, Piece
from model.plan import plan_of
from tests.app.network.networks import load as load_network
from tests.app.windows import example, settle

Screen = tuple[str, QWidget]

SILENT: Final = frozenset(
    {
        "new",
        "new_network",
        "open",
        "save",
        "save_as",
        "close",
        "open_plan",
        "undo",
        "redo",
        "materials_csv",
        "delete",
    }
)
"""Actions that show nothing of their own, or would change or leave what is looked at."""


def every_screen(window: MainWindow, network: NetworkWindow) -> Iterator[Screen]:
    """A name for each screen, and the widget that shows it until the next one is asked for."""
    window.document.load(read_plan(example("saltern-junction")), None)
    settle(window)
    yield from _plan_window(window)
    yield from _asked(window, _plan_questions(window))
    load_network(network)
    yield "network window", network
    yield from _tabs("network window", network, network.side.upper_tabs, network.side.lower_tabs)
    yield from _menus("network window", network, network.context_menu.menu)
    yield from _asked(network, _network_questions(network))


def _plan_window(window: MainWindow) -> Iterator[Screen]:
    yield "plan window", window
    yield from _tabs("plan window", window, window.side.upper_tabs, window.side.lower_tabs)
    yield from _menus("plan window", window, window.context_menu.menu)
    for name in ("tool_module", "tool_survey", "show_timing", "dry_run"):
        window.bound[name].trigger()
        settle(window)
        yield f"plan window, {name}", window
        window.view.clear_preview()
    window.bound["tool_select"].trigger()
    window.panels.message.say("A message that stays until it is put away.")
    yield "plan window, message", window
    window.panels.message.hide()


def _tabs(name: str, window: QWidget, *groups: Tabs) -> Iterator[Screen]:
    for tabs in groups:
        for index in range(tabs.count()):
            tabs.setCurrentIndex(index)
            QApplication.processEvents()
            yield f"{name}, {tabs.tabText(index).split('  ')[0]}", window
        tabs.setCurrentIndex(0)


def _menus(name: str, window: MainWindow | NetworkWindow, context: QMenu) -> Iterator[Screen]:
    for title, menu in [*window.menus.items(), ("context menu", context)]:
        menu.popup(window.mapToGlobal(window.rect().center()))
        yield f"{name}, {title}", menu
        menu.close()


Question = tuple[str, Callable[[], object]]


def _plan_questions(window: MainWindow) -> Iterator[Question]:
    for name, action in window.bound.items():
        if name not in SILENT and (
            action.text().rstrip().endswith("…") or name in ("shortcuts", "about", "in_depth")
        ):
            yield name, action.trigger
    hopper = Piece(Part.HOPPER, Cell(0, 70, 0), Facing.DOWN, holds=(Held("waybill:Salt", 22),))
    yield "what a hopper holds", lambda: ContentsDialog(window, plan_of([hopper]), hopper).exec()
    yield "set aside", lambda: ask_reason(window, "A loose end")
    yield "another run", lambda: ask_run(window, [Run("Saltern"), Run("Saltern", "Salt")])
    yield "working", lambda: WorkingDialog(window, "Working").exec()


def _network_questions(network: NetworkWindow) -> Iterator[Question]:
    for name in ("title", "add_trip", "find_action", "shortcuts"):
        yield f"network, {name}", network.bound[name].trigger
    commands = network.commands
    for item in (Item(Kind.STATION, 0), Item(Kind.JUNCTION, 0), Item(Kind.LINK, 0)):
        yield f"network, change {item.kind}", lambda item=item: commands.change(item)
    yield "network, link", lambda: commands.add_link(Item(Kind.STATION, 0), Item(Kind.JUNCTION, 0))
    yield "network, pin way", lambda: commands.pin_way(0)


def _asked(window: QWidget, questions: Iterator[Question]) -> Iterator[Screen]:
    for name, ask in questions:
        before = _open_dialogs(window)
        with _answered_with_no() as caught:
            ask()
        found = [*caught, *(dialog for dialog in _open_dialogs(window) if dialog not in before)]
        for dialog in found:
            dialog.show()
            QApplication.processEvents()
            yield f"{name} ({type(dialog).__name__})", dialog
            dialog.close()


def _open_dialogs(window: QWidget) -> list[QDialog]:
    return [dialog for dialog in window.findChildren(QDialog) if dialog.isVisible()]


@contextmanager
def _answered_with_no() -> Iterator[list[QDialog]]:
    """What would wait for an answer is noted instead; files are never asked for."""
    caught: list[QDialog] = []

    def note(dialog: QDialog) -> int:
        caught.append(dialog)
        return 0

    def no_file(*_args: object) -> tuple[str, str]:
        return "", ""

    with (
        patch.object(QDialog, "exec", note),
        patch.object(QFileDialog, "getSaveFileName", no_file),
        patch.object(QFileDialog, "getOpenFileName", no_file),
    ):
        yield caught
