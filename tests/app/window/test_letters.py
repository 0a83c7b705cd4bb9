"""The letter keys of menus."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu

from app.commands.letters import letter_places, plain_text
from app.network.window import NetworkWindow
from app.window import MainWindow
from model.plan import Arm, Details, Plan
from tests.app.canvas.conftest import wye
from tests.app.windows import settle


def letter(text: str) -> str:
    """The letter key in a text of a menu. Where an ampersand stands: Qt's documentation of QAction."""
    rest = text.replace("&&", "")
    return rest[rest.index("&") + 1].casefold() if "&" in rest else ""


def menus_below(menu: QMenu) -> Iterator[QMenu]:
    """The menu and its submenus, each as it is when it is opened."""
    menu.aboutToShow.emit()
    yield menu
    for action in menu.actions():
        inner = action.menu()
        if isinstance(inner, QMenu):
            yield from menus_below(inner)


def check_menus(menus: list[QMenu]) -> None:
    for menu in menus:
        for each in menus_below(menu):
            entries = [action.text() for action in each.actions() if not action.isSeparator()]
            letters = Counter(map(letter, entries))
            assert "" not in letters, entries
            assert max(letters.values(), default=1) == 1, entries


@pytest.mark.parametrize("make", [MainWindow, NetworkWindow])
def test_every_entry_of_a_menu_has_a_letter_of_its_own(window: MainWindow, make: type) -> None:
    here = window if make is MainWindow else NetworkWindow(window.settings, window.recovery.folder)
    bar = here.menu_row.bar
    letters = [letter(action.text()) for action in bar.actions()]
    assert "" not in letters
    assert len(set(letters)) == len(letters)
    check_menus([action.menu() for action in bar.actions()])
    check_menus([here.context_menu.menu])
    if here is not window:
        here.close()
        here.deleteLater()


def test_an_ampersand_in_a_name_is_no_key(window: MainWindow) -> None:
    plan = wye()
    arms = tuple(Arm("Mill & Fen", arm.enter, arm.leave) if arm.name == "Mill" else arm for arm in plan.arms)
    window.document.load(Plan(plan.pieces, Details(arms=arms)), None)
    settle(window)
    check_menus([window.menus["Preview"]])
    (cart,) = (
        action.menu()
        for action in window.menus["Preview"].actions()
        if plain_text(action) == "Run an empty cart from"
    )
    cart.aboutToShow.emit()
    assert "Mill & Fen" in [plain_text(action) for action in cart.actions()]


def test_alt_and_two_letters_do_something(window: MainWindow) -> None:
    window.activateWindow()
    QTest.keyClick(window.view, Qt.Key.Key_L, Qt.KeyboardModifier.AltModifier)
    menu = QApplication.activePopupWidget()
    assert menu is window.menus["Level"]
    key = letter(window.bound["level_up"].text())
    QTest.keyClick(menu, key)
    assert window.view.level == 65


@given(st.lists(st.text("abc &", max_size=4), max_size=6))
def test_letters_are_given_as_far_as_they_go(texts: list[str]) -> None:
    places = letter_places(texts)
    given_out = [texts[text][at] for text, at in enumerate(places) if at is not None]
    assert len(set(given_out)) == len(given_out)
    assert all(letter in "abc" for letter in given_out)
    left_out = [texts[text] for text, at in enumerate(places) if at is None]
    # Nobody goes without while one of its letters is free.
    assert all(set(text) & set("abc") <= set(given_out) for text in left_out)


def test_the_most_letters_are_given_that_can_be() -> None:
    # Hall's theorem (Hall 1935): here each two texts have two letters between them, so both get one.
    assert letter_places(["ab", "a"]) == [1, 0]
    assert letter_places(["Cut", "Copy", "Paste"]) == [0, 1, 0]
