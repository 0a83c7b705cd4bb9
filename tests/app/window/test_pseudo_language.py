"""Every screen in a language that nobody speaks: what was not looked up stays English and is seen."""

from __future__ import annotations

import re
from pathlib import Path

from PySide6.QtWidgets import QApplication

from tests.app.conftest import MakeWindow
from tests.app.every_screen import every_screen
from tests.app.network.conftest import MakeWindow as MakeNetwork
from tests.app.network.conftest import make_network  # noqa: F401
from tests.app.pseudo import outside, spoken_everywhere
from tests.app.shown_texts import shown_texts

WORD = re.compile(r"[A-Za-z]{3,}")
KEYS = re.compile(
    r"\b(?:Ctrl|Shift|Alt|PgUp|PgDown|Del|Backspace|Return|Enter|Home|End|Esc|Space|Tab|F\d+)\b",
)
"""Keys are written by Qt, which has words of its own for them in each language."""
BY_QT = {"Cancel", "Close", "OK", "Scroll Left", "Scroll Right", "Press shortcut"}
"""Texts of Qt, translated by Qt where it knows the language."""
NAMES = re.compile(
    r"\b(?:Saltern Junction|Saltern|Quay|Mill|Fen|Salt|Reed|Eel|Small|Wye"  # of the plan and the network
    r"|waybill:Salt|ingot|nugget"  # items in a container, by the names that files have for them
    r"|Platelayer|PDF|SVG|PNG)\b"
)
"""What is called so in every language."""
GIVEN = {"A message that stays until it is put away.", "A loose end", "Working"}
"""What ``every_screen`` itself says in the place of a message."""


def is_looked_up(text: str) -> bool:
    """Whether no word stands outside the brackets but names, keys and what is not the program's."""
    rest = outside(text)
    return rest in BY_QT or rest in GIVEN or not WORD.search(KEYS.sub("", NAMES.sub("", rest)))


def test_every_text_is_looked_up(
    qapp: QApplication,
    tmp_path: Path,
    make_window: MakeWindow,
    make_network: MakeNetwork,  # noqa: F811
) -> None:
    forgotten: dict[str, str] = {}
    with spoken_everywhere(qapp, tmp_path):
        for name, screen in every_screen(make_window(), make_network()):
            for where, text in shown_texts(screen):
                if not is_looked_up(text):
                    forgotten.setdefault(text, f"{name}: {where}")
    assert not forgotten, "\n".join(f"{where}: {text!r}" for text, where in forgotten.items())
