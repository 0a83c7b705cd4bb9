"""Texts for the user in the language of the user.

Every text that a user reads goes through ``tr`` where it is made; ``pyside6-lupdate`` finds it there. A text
in a table that is made at import stands in ``QT_TR_NOOP`` there, and goes through ``tr`` where the table is
used. Until somebody installs a lookup all is English: the editor does, the command line never, so that what
it prints is the same in every language.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Final

Lookup = Callable[[str, str, int], str]
"""Text, comment and count (-1 where nothing is counted) to the text in another language."""

TURNS: Final = re.compile(
    "[\u0590-\u08ff\u200f\u202a-\u202e\u2066-\u2069\ufb1d-\ufdff\ufe70-\ufefc"
    "\U00010800-\U00010fff\U0001e800-\U0001efff]"
)
"""Letters that are written from right to left, and characters that turn the way of writing."""
TURNS_ALL: Final = re.compile("[\u202a-\u202e\u2066\u2067]")
"""Those that turn whatever comes after them."""
PLURAL: Final = re.compile(r"\((e?s)\)")
"""What a counted word ends in where there is not exactly one: ``%n piece(s)``."""


def as_written(text: str, _comment: str, n: int) -> str:
    """The text in English: with a count, the plural that goes with it."""
    return PLURAL.sub("" if n == 1 else r"\1", text).replace("%n", f"{n:,}") if n >= 0 else text


class _Language:
    """The lookup in force; one for the program, as there is one user."""

    lookup: Lookup = staticmethod(as_written)
    isolates = False
    """Whether names that turn the way of writing stand for themselves in a text."""


def install(lookup: Lookup | None) -> None:
    """Look texts up here from now on; ``None``: leave them as they are written."""
    _Language.lookup = staticmethod(as_written if lookup is None else lookup)


def isolate(isolates: bool) -> None:
    """Let values in texts turn no words but their own from now on: on a screen, not in data."""
    _Language.isolates = isolates


def isolated(value: str) -> str:
    """A name so that it turns no words around it: one in Hebrew or Arabic letters among English ones, say.

    Else two such names with an arrow between them would be read the wrong way round. First strong isolate
    and pop directional isolate after Unicode Standard Annex 9 (from memory).
    """
    if not _Language.isolates or value.isascii() or TURNS.search(value) is None:
        return value
    return f"\u2068{TURNS_ALL.sub('', value)}\u2069"


def from_to(start: str, end: str) -> str:
    """``Quay → Mill``: the way that leads from the one to the other, read from left to right."""
    return f"{isolated(start)} → {isolated(end)}"


def tr(text: str, comment: str = "", n: int = -1, /, **values: object) -> str:
    """The text in the user's language, with values for the names in braces.

    The comment tells a translator what a short text means. ``n`` stands for ``%n`` and chooses the plural; it
    is the third argument, where ``pyside6-lupdate`` looks for it: ``tr("%n piece(s)", "", count)``.
    """
    said = _Language.lookup(text, comment, n)
    if not values:
        return said
    shown = {name: isolated(value) if isinstance(value, str) else value for name, value in values.items()}
    return said.format(**shown)


def QT_TR_NOOP(text: str) -> str:  # noqa: N802 – Qt's own name, by which pyside6-lupdate finds the text
    """The text as it is, marked as one that is looked up later."""
    return text
