"""The controls of the look for cut words: each of these must be found, and nothing where there is room."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QStringListModel
from PySide6.QtWidgets import QApplication, QLabel, QPushButton, QTabBar, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from app.panels.cut_label import CutLabel
from app.panels.tables import Table
from app.panels.wrapped_row import WrappedRow
from tests.app.room_for_words import too_narrow

WORDS = "Fahrstraßenverschlusstafel"


@pytest.fixture
def screen(qtbot: QtBot) -> QWidget:
    made = QWidget()
    qtbot.addWidget(made)
    return made


def found(screen: QWidget, *widgets: QWidget) -> list[str]:
    column = QVBoxLayout(screen)
    for widget in widgets:
        column.addWidget(widget)
    screen.show()
    QApplication.processEvents()
    return list(too_narrow(screen))


def narrow(widget: QWidget) -> QWidget:
    widget.setFixedWidth(60)
    return widget


def test_what_has_room_is_not_found(screen: QWidget) -> None:
    assert found(screen, QPushButton(WORDS), QLabel(WORDS)) == []


def test_a_cut_button_and_a_cut_label_are_found(screen: QWidget) -> None:
    assert len(found(screen, narrow(QPushButton(WORDS)), narrow(QLabel(WORDS)))) == 2


def test_a_button_measured_by_letters_that_are_not_bold_is_found(screen: QWidget) -> None:
    plain, default = QPushButton(WORDS), QPushButton(WORDS)
    default.setDefault(True)
    for button in (plain, default):
        button.setFixedWidth(button.sizeHint().width())
    assert len(found(screen, plain, default)) == 1


def test_who_cuts_must_tell_the_rest(screen: QWidget) -> None:
    silent, telling = narrow(CutLabel(WORDS)), narrow(CutLabel(WORDS))
    telling.setToolTip(WORDS)
    assert len(found(screen, silent, telling)) == 1


def test_wrapped_words_without_height_are_found(screen: QWidget) -> None:
    words = QLabel(" ".join([WORDS] * 5), wordWrap=True)
    words.setFixedSize(200, 10)
    assert len(found(screen, words)) == 1


def test_a_tab_beyond_its_bar_is_found(screen: QWidget) -> None:
    bar = QTabBar()
    bar.setUsesScrollButtons(False)
    for _ in range(4):
        bar.addTab(WORDS)
    bar.setFixedWidth(300)
    assert found(screen, bar)


def test_a_cut_title_of_a_column_is_found(screen: QWidget) -> None:
    class Titled(QStringListModel):
        def headerData(self, *_args: object) -> str:
            return WORDS

    table = Table("names", Titled(["one"]))
    table.set_widths((30,))
    table.setFixedWidth(60)
    assert len(found(screen, table)) == 1


def test_a_row_goes_on_in_a_second_line_before_it_cuts(screen: QWidget) -> None:
    row = QWidget()
    line = WrappedRow()
    row.setLayout(line)
    buttons = [QPushButton(WORDS) for _ in range(3)]
    for button in buttons:
        line.addWidget(button)
    row.setFixedWidth(buttons[0].sizeHint().width() * 2)
    assert found(screen, row) == []
    assert len({button.y() for button in buttons}) == 3
