"""The parts of the menus that follow the plan: recent plans, readers to preview, carts to send."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu

from app.document import Document
from app.panels.words import plain_tip
from app.settings import Settings
from app.translation import QT_TR_NOOP, tr

NOTHING_YET = QT_TR_NOOP("None yet")


def add_recent_menu(
    menu: QMenu, before: QAction, settings: Settings, open_path: Callable[[Path], object]
) -> QMenu:
    """The recent plans, newest first."""
    recent = QMenu(tr("Recent"), menu)
    menu.insertMenu(before, recent)

    def fill() -> None:
        entries = [(entry.title or entry.path.name, str(entry.path), entry.path) for entry in settings.recent]
        _fill(recent, [(name, tip, partial(open_path, path)) for name, tip, path in entries])

    recent.setToolTipsVisible(True)
    recent.aboutToShow.connect(fill)
    return recent


def add_preview_menus(
    menu: QMenu,
    document: Document,
    hold: Callable[[str], object],
    run_cart: Callable[[str, bool], object],
) -> None:
    """What can be previewed of this plan: each reader, and a cart from each arm, empty or called."""
    menu.addSeparator()
    holding, empty, called = (
        menu.addMenu(title)
        for title in (tr("Hold the reader of"), tr("Run an empty cart from"), tr("Run a called cart from"))
    )

    def fill() -> None:
        readers = [route.start for route in document.plan.routes if route.called is not None]
        entries = [arm.name for arm in document.plan.arms if arm.enter is not None]
        _fill(holding, [(name, "", partial(hold, name)) for name in readers])
        _fill(empty, [(name, "", partial(run_cart, name, False)) for name in entries])
        _fill(called, [(name, "", partial(run_cart, name, True)) for name in readers])

    menu.aboutToShow.connect(fill)


def _do(command: Callable[[], object], _checked: bool = False) -> None:
    command()


def _fill(menu: QMenu, entries: list[tuple[str, str, Callable[[], object]]]) -> None:
    menu.clear()
    for text, tip, command in entries:
        # An ampersand in a name is a letter of the name, not a key.
        action = menu.addAction(text.replace("&", "&&"))
        action.setToolTip(plain_tip(tip or text))
        action.triggered.connect(partial(_do, command))
    if not entries:
        menu.addAction(tr(NOTHING_YET)).setEnabled(False)
