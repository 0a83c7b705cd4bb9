"""All pages of the help, made anew from the tables whenever they are asked for. No Qt here."""

from __future__ import annotations

from app.help.drawings import arms_page, modules_page, signs_page, ways_page
from app.help.entries import Entry, Page
from app.help.parts import parts_page
from app.help.rules import network_rules_page, rules_page
from app.help.tools import keys_page, map_menu_pages, map_tools_page, menu_pages, tools_page


def pages() -> tuple[Page, ...]:
    """What stands in the help, in the order of its index."""
    return (
        tools_page(),
        parts_page(),
        modules_page(),
        arms_page(),
        ways_page(),
        signs_page(),
        rules_page(),
        *menu_pages(),
        keys_page(),
        map_tools_page(),
        network_rules_page(),
        *map_menu_pages(),
    )


def found(words: str) -> tuple[Page, ...]:
    """The pages with only the entries that have all the words; pages without any are left out."""
    wanted = words.casefold().split()
    kept = (
        page._replace(entries=tuple(entry for entry in page.entries if entry.says(wanted)))
        for page in pages()
    )
    return tuple(page for page in kept if page.entries)


def entry(key: str) -> Entry:
    """The entry of a key. Raises KeyError."""
    return {made.key: made for page in pages() for made in page.entries}[key]
