"""The list in which findings stand, those of the plan and those of a dry run."""

from __future__ import annotations

from PySide6.QtCore import QAbstractItemModel, Qt
from PySide6.QtWidgets import QListView, QWidget

from app.panels.choosing_list import ChoosingList
from app.panels.findings_delegate import FindingsDelegate
from app.panels.look import named


def findings_list(parent: QWidget, model: QAbstractItemModel, name: str) -> ChoosingList:
    """An empty list that shows the rows of a model as findings."""
    rows = named(ChoosingList(parent), name)
    rows.setModel(model)
    rows.setItemDelegate(FindingsDelegate(rows))
    rows.setMouseTracking(True)
    rows.setUniformItemSizes(True)
    rows.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
    rows.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    return rows
