"""How the window says things: names of parts, places, counts."""

from __future__ import annotations

from collections.abc import Collection
from html import escape

from app.translation import tr
from model.grid import Cell


def number(value: int) -> str:
    """A whole number with the true minus sign."""
    return str(value).replace("-", "\u2212")


def plain_tip(words: str) -> str:
    """Words for a tooltip, which Qt would take for markup where a name in them looks like it."""
    return f"<qt>{escape(words).replace(chr(10), '<br>')}</qt>" if "<" in words or "&" in words else words


def listed(words: Collection[str]) -> str:
    """``a``, ``a and b``, ``a, b and c``."""
    *first, last = words
    return tr("{first} and {last}", first=", ".join(first), last=last) if first else last


def cell_words(cell: Cell) -> str:
    """``x 1, y 64, z −2``."""
    return f"x {number(cell.x)}, y {number(cell.y)}, z {number(cell.z)}"
