"""Every text that a window shows, or says to a screen reader."""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QComboBox,
    QGroupBox,
    QLabel,
    QLineEdit,
    QListView,
    QMenu,
    QSpinBox,
    QTabWidget,
    QTextEdit,
    QTreeView,
    QWidget,
)

ROWS = 40
"""Rows of a list that are looked at."""
ROLES = (
    Qt.ItemDataRole.DisplayRole,
    Qt.ItemDataRole.ToolTipRole,
    Qt.ItemDataRole.AccessibleTextRole,
)


def shown_texts(root: QWidget) -> Iterator[tuple[str, str]]:
    """Where each text stands, and the text."""
    for widget in (root, *root.findChildren(QWidget)):
        if widget is root or widget.window() is root:
            for kind, text in _said_of(widget):
                if text:
                    yield f"{type(widget).__name__} {kind}", text


def _said_of(widget: QWidget) -> Iterator[tuple[str, str]]:
    yield "title", widget.windowTitle()
    yield "tip", widget.toolTip()
    yield "what's this", widget.whatsThis()
    yield "name", widget.accessibleName()
    yield "description", widget.accessibleDescription()
    if isinstance(widget, QLabel | QAbstractButton):
        yield "text", widget.text()
    elif isinstance(widget, QLineEdit):
        yield "placeholder", widget.placeholderText()
    elif isinstance(widget, QGroupBox):
        yield "heading", widget.title()
    elif isinstance(widget, QTextEdit):
        yield "page", widget.toPlainText()
    elif isinstance(widget, QSpinBox):
        yield from (("prefix", widget.prefix()), ("suffix", widget.suffix()))
    elif isinstance(widget, QComboBox):
        yield from (("choice", widget.itemText(index)) for index in range(widget.count()))
    elif isinstance(widget, QTabWidget):
        yield from (("tab", widget.tabText(index)) for index in range(widget.count()))
    elif isinstance(widget, QMenu):
        for action in widget.actions():
            yield from (("action", action.text()), ("tip", action.toolTip()), ("status", action.statusTip()))
    elif isinstance(widget, QAbstractItemView) and widget.model() is not None:
        yield from _said_in(widget)


def _said_in(view: QAbstractItemView) -> Iterator[tuple[str, str]]:
    model = view.model()
    is_tree = isinstance(view, QTreeView)
    # A list has one column and no children, and keeps both to itself.
    columns = range(1 if isinstance(view, QListView) else model.columnCount())
    for column in columns:
        for role in ROLES:
            yield f"header {column}", _text(model.headerData(column, Qt.Orientation.Horizontal, role))
    waiting = [model.index(row, 0) for row in range(min(model.rowCount(), ROWS))]
    for first in waiting:
        for column in columns:
            index = first.siblingAtColumn(column)
            yield from ((f"row, column {column}", _text(index.data(role))) for role in ROLES)
        if is_tree:
            waiting += [model.index(row, 0, first) for row in range(min(model.rowCount(first), ROWS))]


def _text(value: object) -> str:
    return value if isinstance(value, str) else ""
