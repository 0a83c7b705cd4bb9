"""The letter keys of menus: each entry has one of its own, so that Alt and two letters do anything.

They are found anew whenever a menu opens: texts follow the plan, and other languages have other letters.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu, QMenuBar

IS_LETTERED = "lettered"


def letter_places(texts: Sequence[str]) -> list[int | None]:
    """Where in each text its letter stands, no letter twice; ``None`` where no letter is left for it.

    An earlier text keeps its favourite, the first letter of a word, as long as a later one finds another.
    """
    owner: dict[str, int] = {}
    place: dict[int, int] = {}

    def take(text: int, at: int) -> bool:
        owner[texts[text][at].casefold()], place[text] = text, at
        return True

    def give(text: int, tried: set[str]) -> bool:
        wished = [(texts[text][at].casefold(), at) for at in _favourites(texts[text])]
        for letter, at in wished:
            if letter not in owner:
                return take(text, at)
        for letter, at in wished:
            if letter not in tried:
                tried.add(letter)
                if give(owner[letter], tried):
                    return take(text, at)
        return False

    for text in range(len(texts)):
        give(text, set())
    return [place.get(text) for text in range(len(texts))]


def lettered(texts: Sequence[str]) -> list[str]:
    """The texts as they are read, each marked with its letter as Qt wants it."""
    return [
        _doubled(text) if at is None else f"{_doubled(text[:at])}&{_doubled(text[at:])}"
        for text, at in zip(texts, letter_places(texts), strict=True)
    ]


def plain_text(action: QAction) -> str:
    """The text of an action as it is read."""
    return action.text().replace("&&", "\0").replace("&", "").replace("\0", "&")


def letter_menus(bar: QMenuBar) -> None:
    """Letters for the menus of a bar, and for all that stands in them."""
    _letter(bar.actions())
    _letter_submenus(bar.actions())


def letter_menu(menu: QMenu) -> None:
    """Letters for a menu, now and whenever it opens, and for its submenus."""
    _letter_now(menu)
    if not menu.property(IS_LETTERED):
        menu.setProperty(IS_LETTERED, True)
        menu.aboutToShow.connect(partial(_letter_now, menu))


def _letter_now(menu: QMenu) -> None:
    _letter(menu.actions())
    _letter_submenus(menu.actions())


def _letter_submenus(actions: Sequence[QAction]) -> None:
    for action in actions:
        submenu = action.menu()
        if isinstance(submenu, QMenu):
            letter_menu(submenu)


def _letter(actions: Sequence[QAction]) -> None:
    entries = [action for action in actions if not action.isSeparator()]
    for action, marked in zip(entries, lettered(list(map(plain_text, entries))), strict=True):
        if marked != action.text():
            action.setText(marked)


def _doubled(text: str) -> str:
    """An ampersand in a name is a letter of the name, not a key."""
    return text.replace("&", "&&")


def _favourites(text: str) -> Iterator[int]:
    """The first letters of words, then the other letters, then figures; never a sign."""
    letters = [at for at, letter in enumerate(text) if letter.isalpha()]
    first = [at for at in letters if at == 0 or not text[at - 1].isalnum()]
    yield from first
    yield from (at for at in letters if at not in first)
    yield from (at for at, letter in enumerate(text) if letter.isdecimal())
