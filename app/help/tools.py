"""Pages of the help: tools, actions and the keys of the views, from their tables."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from app.actions import ACTIONS, MENUS, TOOLS, UserAction, action
from app.help.entries import Entry, Line, Page
from app.network.actions import NETWORK_ACTIONS, NETWORK_MENUS, NETWORK_TOOLS, ON_THE_MAP
from app.translation import QT_TR_NOOP, tr
from app.user_keys import keys_of
from app.view_keys import PLAN_KEYS, KeyRows

TOOL_ICONS = {"lay": "lay-track", "cart": "test-cart"}
"""Icons that are not called as their tool is."""


def tools_page() -> Page:
    """What the pointer does on the plan."""
    about = tr("A tool says what the pointer, and Enter at the cursor, do on the plan.")
    return Page(tr("Tools"), about, tuple(tool_entry(tool) for tool in TOOLS))


def tool_entry(tool: str) -> Entry:
    """What the help says of a tool of the plan view."""
    entry = action(TOOLS[tool])
    return _tool(f"tool {tool}", tool, entry)


def map_tools_page() -> Page:
    """What the pointer does on the map of a network."""
    about = tr("What the pointer, and Enter at the cursor, do on the map of a network.")
    by_name = {entry.name: entry for entry in NETWORK_ACTIONS}
    entries = [_tool(f"map tool {tool}", tool, by_name[name]) for tool, name in NETWORK_TOOLS.items()]
    return Page(tr("Tools of networks"), about, tuple(entries))


def menu_pages() -> Iterator[Page]:
    """What each menu of a plan offers."""
    about = tr("What the menu offers, and what its keys do wherever the focus is.")
    for menu in MENUS:
        yield Page(tr("Menu {menu}", menu=tr(menu)), about, _entries("action", menu, ACTIONS, TOOLS))


def map_menu_pages() -> Iterator[Page]:
    """What each menu of a network offers."""
    about = tr("What the menu offers in the window of a network.")
    for menu in NETWORK_MENUS:
        entries = _entries("map action", menu, NETWORK_ACTIONS, NETWORK_TOOLS)
        yield Page(tr("Networks: menu {menu}", menu=tr(menu)), about, entries)


def keys_page() -> Page:
    """What the keys do where the focus is on a drawing."""
    about = tr("What the keys do while a drawing has the focus; no action is named so.")
    views: dict[str, KeyRows] = {**PLAN_KEYS, QT_TR_NOOP("On the map"): ON_THE_MAP}
    entries = (
        Entry(f"keys {title}", tr(title), tuple(Line(tr(keys), tr(does)) for keys, does in rows))
        for title, rows in views.items()
    )
    return Page(tr("Keys of the drawings"), about, tuple(entries))


def _tool(key: str, tool: str, entry: UserAction) -> Entry:
    lines = (Line("", tr(entry.tip)),)
    return Entry(key, tr(entry.text), lines, TOOL_ICONS.get(tool, tool), _keys(entry))


def _entries(
    kind: str, menu: str, table: Iterable[UserAction], tools: Mapping[str, str]
) -> tuple[Entry, ...]:
    """An entry an action of the menu and its submenus; the tools have a page of their own."""
    of_menu = (entry for entry in table if entry.menu.partition("/")[0] == menu)
    shown = (entry for entry in of_menu if entry.name not in tools.values())
    return tuple(
        Entry(
            f"{kind} {entry.name}",
            _title(entry),
            (Line("", tr(entry.tip)), Line(tr("Menu"), ", ".join(map(tr, entry.menu.split("/"))))),
            keys=_keys(entry),
        )
        for entry in shown
    )


def _title(entry: UserAction) -> str:
    """With the submenu before it: Left alone would say nothing."""
    submenu, text = entry.menu.partition("/")[2], tr(entry.text).rstrip("…")
    return f"{tr(submenu)}: {text}" if submenu else text


def _keys(entry: UserAction) -> str:
    return ", ".join(keys_of(entry))
