"""Strips that tables share: a heading, a sentence where rows would stand, a paragraph. Lengths in mm."""

from __future__ import annotations

import re
from typing import Final

from PySide6.QtCore import QRectF

from app.canvas.symbols.lettering import em_for, printable
from app.export.flow import Strip
from app.export.pencil import LEGEND, SECTION, TEXT, Pencil, broken

ROW, HEADER, HEADING = 11.0, 9.0, 18.0
NONE: Final = "none"
LINE_SHARE: Final = 1.68
"""From one line to the next, in heights of capitals."""
LINE_FEED: Final = 3.8
"""The same for the height of a legend."""
MARK_INDENT: Final = 5.0
MOST_LINES: Final = 12
TOGETHER: Final = re.compile(r"(?<=\d) (?=\u2212?\d)|(?<=\d) (?=\u00d7 \d)|(?<=\u00d7) (?=\d)")
NO_BREAK: Final = "\u00a0"


def heading(title: str, how: str) -> Strip:
    """A title and a line on how to read what follows."""

    def draw(pencil: Pencil, space: QRectF) -> None:
        pencil.text(space.left(), space.top() + 9, title, SECTION * 1.2, bold=True, widest=space.width())
        pencil.text(space.left(), space.top() + 15.5, how, LEGEND, widest=space.width())

    return Strip(HEADING, draw)


def sentence(text: str) -> Strip:
    """Where a table would stand that has no rows."""
    return Strip(ROW, lambda pencil, space: pencil.text(space.left(), space.top() + 6, text, TEXT))


def paragraph(text: str, width: float, high: float, *, mark: str = "", bold: bool = False) -> Strip:
    """A text of as many lines as it takes, set in behind a mark where there is one."""
    indent = MARK_INDENT if mark else 0.0
    lines = lines_of(text, high, width - indent, bold=bold)
    feed = high * LINE_SHARE

    def draw(pencil: Pencil, space: QRectF) -> None:
        pencil.text(space.left() + indent / 3, space.top() + feed, mark, high)
        for number, line in enumerate(lines, start=1):
            baseline, room = space.top() + number * feed, space.width() - indent
            pencil.text(space.left() + indent, baseline, line, high, bold=bold, widest=room)

    return Strip(len(lines) * feed + high / 3, draw)


def lines_of(text: str, high: float, widest: float, *, bold: bool = False) -> list[str]:
    """The text in lines; a place and a size, ``−3 64 1`` and ``6 × 3``, stay together."""
    whole = TOGETHER.sub(NO_BREAK, printable(text))
    return broken(whole, em_for(high), widest, bold, MOST_LINES)
