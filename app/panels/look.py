"""What all panels draw with: fonts by pixel size, labels, hairlines."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar, TypeVar

from PySide6.QtCore import Qt
from PySide6.QtGui import QFont, QFontMetrics
from PySide6.QtWidgets import QApplication, QFrame, QLabel, QPushButton, QWidget


class _Made:
    """Fonts by size and weight, made of the font of the application."""

    base = QFont()
    fonts: ClassVar[dict[tuple[int, bool], QFont]] = {}


def font(px: int, bold: bool = False) -> QFont:
    """The system's sans at a size in pixels, with figures of one width."""
    base = QApplication.font()
    if base != _Made.base:
        # Every word in a list asks for its font, and to make one takes as long as to draw it.
        _Made.base, _Made.fonts = base, {}
    made = _Made.fonts.get((px, bold))
    if made is None:
        made = _Made.fonts[px, bold] = QFont(base)
        made.setPixelSize(px)
        made.setBold(bold)
        made.setFeature(QFont.Tag("tnum"), 1)
    return QFont(made)


Made = TypeVar("Made", bound=QWidget)


def named(widget: Made, name: str) -> Made:
    """The widget, with the name by which a screen reader tells of it."""
    widget.setAccessibleName(name)
    return widget


def label(text: str = "", look: str = "", parent: QWidget | None = None) -> QLabel:
    """A label that shows its text as it is, whoever wrote it."""
    made = QLabel(parent)
    made.setTextFormat(Qt.TextFormat.PlainText)
    made.setText(text)
    if look:
        made.setProperty("look", look)
    return made


def heads(words: Sequence[str], least: int) -> list[QLabel]:
    """Small words in a column before sentences or fields, which all begin where the longest word allows."""
    widest = max(QFontMetrics(font(11, True)).horizontalAdvance(word) for word in words)
    made = [label(word, "section") for word in words]
    for head in made:
        head.setFixedWidth(max(least, widest + 4))
    return made


def keep_width(button: QPushButton, words: Sequence[str]) -> None:
    """As wide as the longest of the words that a button may show: nothing moves as they change."""
    button.ensurePolished()
    metrics = button.fontMetrics()
    # A button counts the px that letters cover, which may be one more than they advance.
    beside = button.sizeHint().width() - metrics.horizontalAdvance(button.text()) + 2
    button.setFixedWidth(beside + max(metrics.horizontalAdvance(word) for word in words))


def fit_lines(shown: QLabel, width: int) -> None:
    """Make room for a label's lines at a width in pixels; a layout in a splitter makes none by itself."""
    # A label takes the least height that it has for one that its words need.
    shown.setMinimumHeight(0)
    shown.setMinimumHeight(max(0, shown.heightForWidth(width)))


def hairline(look: str = "hairline") -> QFrame:
    """A line between two areas: ``hairline`` lies, ``upright`` stands."""
    made = QFrame()
    made.setProperty("look", look)
    if look == "hairline":
        made.setFixedHeight(1)
    else:
        made.setFixedWidth(1)
    return made


def panel(widget: QWidget) -> None:
    """Give a plain widget the ground of a panel."""
    widget.setProperty("look", "panel")
    widget.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
