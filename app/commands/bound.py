"""Makes the actions of the table, bound to what they do, and the menus from them."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Final

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QAction, QActionGroup, QKeySequence
from PySide6.QtWidgets import QMenu, QMenuBar, QWidget

from app.actions import ACTIONS, MENUS, UserAction
from app.commands.letters import letter_menus
from app.translation import tr
from app.user_keys import keys_of

ONE_OF: Final = ("Edit/Tool", "Plan/Running side", "View/Theme")
"""Submenus of which exactly one action holds."""
OF_THE_VIEW: Final = frozenset({"cut", "copy", "paste", "delete", "select_all", "contents", "properties"})
Command = Callable[[], object]


def bind(
    parent: QObject, commands: Mapping[str, Command], table: Sequence[UserAction] = ACTIONS
) -> dict[str, QAction]:
    """An action for each entry of the table. Raises KeyError where one has no command."""
    actions = {entry.name: _make(parent, entry, commands[entry.name]) for entry in table}
    for submenu in ONE_OF:
        group = QActionGroup(parent)
        for entry in table:
            if entry.menu == submenu:
                group.addAction(actions[entry.name])
    return actions


def keep_to(view: QWidget, actions: Mapping[str, QAction]) -> None:
    """Let the keys that act on chosen pieces work in the view only: elsewhere they mean text or a row."""
    for name in OF_THE_VIEW & actions.keys():
        actions[name].setShortcutContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        view.addAction(actions[name])


def fill_menus(
    bar: QMenuBar,
    actions: Mapping[str, QAction],
    table: Sequence[UserAction] = ACTIONS,
    names: Sequence[str] = MENUS,
) -> dict[str, QMenu]:
    """The menus in their order; submenus stand where their first action does. By the name of the menu."""
    menus = {name: bar.addMenu(tr(name)) for name in names}
    for entry in table:
        top, _, submenu = entry.menu.partition("/")
        menu = menus[top]
        if submenu:
            menu = _submenu(menus, entry.menu, menu, submenu)
        elif entry.opens_group:
            menu.addSeparator()
        menu.addAction(actions[entry.name])
    for menu in menus.values():
        menu.setToolTipsVisible(True)
    letter_menus(bar)
    return menus


def _submenu(menus: dict[str, QMenu], name: str, parent: QMenu, title: str) -> QMenu:
    if name not in menus:
        menus[name] = parent.addMenu(tr(title))
    return menus[name]


def give_keys(actions: Mapping[str, QAction], table: Sequence[UserAction]) -> None:
    """The keys that the user chose, or those of the table; tooltips name the first one."""
    for entry in table:
        _give_keys(actions[entry.name], entry)


def _give_keys(action: QAction, entry: UserAction) -> None:
    action.setShortcuts([QKeySequence(key) for key in keys_of(entry)])
    keys = action.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
    action.setToolTip(f"{tr(entry.tip)} ({keys})" if keys else tr(entry.tip))


def _make(parent: QObject, entry: UserAction, command: Command) -> QAction:
    action = QAction(tr(entry.text), parent)
    action.setObjectName(entry.name)
    action.setStatusTip(tr(entry.tip))
    _give_keys(action, entry)
    action.setCheckable(entry.is_choice)
    # triggered hands over whether the action is checked; commands look at the plan instead.
    action.triggered.connect(lambda _checked=False: command())
    return action
