"""What of a screen has less room than its words need: buttons, labels, tabs, fields, titles of columns.

Who cuts with dots and tells the whole in a tooltip does so on purpose, and is passed over.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractScrollArea,
    QApplication,
    QComboBox,
    QLabel,
    QMainWindow,
    QPushButton,
    QTabBar,
    QTableView,
    QWidget,
)

from app.panels.cut_label import CutLabel
from app.panels.look import font
from app.window import SMALLEST

TITLE = 11
"""Size of the titles of columns, in px, and what stands beside them."""
BESIDE_TITLE = 16
BESIDE_BOLD = 26
"""px of outline and padding of a button, on both sides."""


def too_narrow(root: QWidget) -> Iterator[str]:
    """What does not fit, each in a few words; for a window also at the smallest size that it can have."""
    yield from _too_narrow(root)
    if isinstance(root, QMainWindow):
        with _at_its_smallest(root):
            yield from (f"at its smallest: {each}" for each in _too_narrow(root))


def _too_narrow(root: QWidget) -> Iterator[str]:
    for widget in root.findChildren(QWidget):
        if widget.window() is root and widget.isVisible():
            yield from (f"{type(widget).__name__} {what}" for what in _lacking(widget))


@contextmanager
def _at_its_smallest(window: QMainWindow) -> Iterator[None]:
    before = window.size()
    _resize(window, SMALLEST)
    yield
    _resize(window, before)


def _resize(window: QMainWindow, size: QSize) -> None:
    """With the panels that fold, and what they then lay out anew."""
    window.resize(size)
    for _ in range(3):
        QApplication.processEvents()


def _lacking(widget: QWidget) -> Iterator[str]:
    if isinstance(widget, QAbstractButton | QLabel) and widget.text():
        yield from _lacking_words(widget)
        if _reaches_out(widget):
            yield f"{widget.text()!r} reaches beyond what it stands in"
    elif isinstance(widget, QComboBox) and widget.width() < widget.minimumSizeHint().width():
        yield f"{widget.currentText()!r} lacks width"
    elif isinstance(widget, QTabBar):
        for index in range(widget.count()):
            wanted = QFontMetrics(font(12, True)).horizontalAdvance(widget.tabText(index))
            if widget.tabRect(index).width() < wanted or not widget.rect().contains(widget.tabRect(index)):
                yield f"{widget.tabText(index)!r} is cut"
    elif isinstance(widget, QTableView):
        yield from (f"{widget.accessibleName()}: {title!r} is cut" for title in _cut_titles(widget))


def _lacking_words(widget: QAbstractButton | QLabel) -> Iterator[str]:
    if isinstance(widget, CutLabel):
        if widget.width() < widget.sizeHint().width() and not widget.toolTip():
            yield f"{widget.text()!r} is cut, and nothing tells the rest"
    elif isinstance(widget, QLabel) and widget.wordWrap():
        if widget.height() < widget.heightForWidth(widget.width()):
            yield f"{widget.text()!r} lacks height"
    elif widget.width() < max(widget.sizeHint().width(), _width_when_bold(widget)):
        yield f"{widget.text()!r} lacks width"


def _width_when_bold(widget: QAbstractButton | QLabel) -> int:
    """The style sheet makes the letters of a default button bold without measuring them so."""
    if not isinstance(widget, QPushButton) or not widget.isDefault() or widget.property("look") == "quiet":
        return 0
    return QFontMetrics(font(12, True)).horizontalAdvance(widget.text().replace("&", "")) + BESIDE_BOLD


def _reaches_out(widget: QWidget) -> bool:
    """What scrolls may."""
    parent = widget.parentWidget()
    if parent is None or isinstance(parent.parentWidget(), QAbstractScrollArea):
        return False
    return not parent.rect().contains(widget.geometry())


def _cut_titles(table: QTableView) -> Iterator[str]:
    header, metrics = table.horizontalHeader(), QFontMetrics(font(TITLE))
    for column in range(header.count()) if header.isVisible() else ():
        title = table.model().headerData(column, Qt.Orientation.Horizontal) or ""
        if title and header.sectionSize(column) < metrics.horizontalAdvance(title) + BESIDE_TITLE:
            yield title
