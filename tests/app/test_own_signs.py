"""The controls: each foreign sign is found; the visit of every screen finds none."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QKeySequenceEdit, QLineEdit, QMessageBox, QToolButton, QWidget
from pytestqt.qtbot import QtBot

from tests.app.own_signs import foreign_signs


@pytest.fixture
def screen(qtbot: QtBot) -> QWidget:
    made = QWidget()
    qtbot.addWidget(made)
    return made


def test_lines_without_the_cross_of_the_toolkit_are_right(screen: QWidget) -> None:
    QLineEdit(screen)
    QKeySequenceEdit(screen)
    QToolButton(screen)
    assert list(foreign_signs(screen)) == []


def test_crosses_and_arrows_of_the_toolkit_are_found(screen: QWidget) -> None:
    for line in (QLineEdit(screen), QKeySequenceEdit(screen)):
        line.setClearButtonEnabled(True)
    QToolButton(screen).setArrowType(Qt.ArrowType.DownArrow)
    assert len(list(foreign_signs(screen))) >= 3


def test_the_picture_of_a_message_is_found(qtbot: QtBot) -> None:
    box = QMessageBox()
    qtbot.addWidget(box)
    assert not any("beside" in sign for sign in foreign_signs(box))
    box.setIcon(QMessageBox.Icon.Warning)
    assert any("beside" in sign for sign in foreign_signs(box))
