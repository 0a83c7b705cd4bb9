"""The questions of the network window: a link, a trip. That for a junction has a file of its own."""

from __future__ import annotations

from typing import Final, NamedTuple

from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QDoubleSpinBox,
    QFormLayout,
    QSpinBox,
    QVBoxLayout,
    QWidget,
)

from app.dialogs.buttons import answer_buttons
from app.network.arms import arms_of
from app.network.document import NetworkDocument
from app.network.items import Item, Kind, name_of
from app.network.times import time_words
from app.panels.choice_box import ChoiceBox
from app.panels.look import label, named
from app.titles import give_title
from app.translation import QT_TR_NOOP, tr
from model.network.network import LENGTH_LIMIT, PER_WEEK_LIMIT, Network, Trip, end_of

FIRST_LENGTH: Final = 64
FIRST_PER_WEEK: Final = 10
BACK: Final = QT_TR_NOOP("And one back, by the same arms")


class Question(QDialog):
    """A form with a sentence above and buttons below; may say what is wrong with an answer."""

    def __init__(self, parent: QWidget | None, title: str, sentence: str, word: str) -> None:
        super().__init__(parent)
        give_title(self, title)
        self.setMinimumWidth(420)
        self.form = QFormLayout()
        self.body = QVBoxLayout()
        self._problem = label("", "strong")
        self._problem.setWordWrap(True)
        self._problem.setAccessibleName(tr("What is wrong"))
        self._problem.hide()
        self._buttons, self.ok = answer_buttons(self, word)
        column = QVBoxLayout(self)
        column.setSpacing(12)
        told = label(sentence)
        told.setWordWrap(True)
        column.addWidget(told)
        column.addLayout(self.form)
        column.addLayout(self.body)
        column.addWidget(self._problem)
        column.addWidget(self._buttons)
        # A dialog learns only from its own button that Return means it; else a button of the form would do.
        self.ok.setDefault(False)
        self.ok.setDefault(True)

    @property
    def problem(self) -> str:
        """What is said to be wrong."""
        return self._problem.text()

    def tell(self, problem: str) -> None:
        """Say what is wrong, for when it is asked once more."""
        self._problem.setText(problem)
        self._problem.setVisible(bool(problem))

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        # Tab would leave out Cancel: the box puts its buttons in order among what comes after it.
        QWidget.setTabOrder(self.ok, self._buttons.button(QDialogButtonBox.StandardButton.Cancel))


class LinkAnswer(NamedTuple):
    """A link, or one each way."""

    start: str
    end: str
    length: int
    both_ways: bool


class LinkDialog(Question):
    """Which arms a link joins, and how long it is."""

    def __init__(self, parent: QWidget | None, document: NetworkDocument, start: Item, end: Item) -> None:
        network = document.network
        names = name_of(network, start), name_of(network, end)
        super().__init__(
            parent,
            tr("Link"),
            tr("Track from {start} to {end}.", start=names[0], end=names[1]),
            tr("Add link"),
        )
        self._network, self._nodes = network, (start, end)
        self._arms = [
            self._arm_box(start, names[0], names[1], tr("leaves")),
            self._arm_box(end, names[1], names[0], tr("enters")),
        ]
        self.length = named(
            QSpinBox(minimum=1, maximum=LENGTH_LIMIT, value=FIRST_LENGTH), tr("Length in cells")
        )
        self.time = label("", "second")
        self.both = named(QCheckBox(tr(BACK)), tr(BACK))
        self.both.setChecked(True)
        self.form.addRow(label(tr("Length, in cells"), "field"), self.length)
        self.form.addRow(label(""), self.time)
        self.form.addRow(label("", "field"), self.both)
        self.length.valueChanged.connect(self._show_time)
        self._show_time(FIRST_LENGTH)
        self.length.selectAll()
        self.length.setFocus()

    @property
    def answer(self) -> LinkAnswer:
        """What was given."""
        start, end = (
            name_of(self._network, item)
            if box is None
            else end_of(name_of(self._network, item), box.currentText().strip())
            for item, box in zip(self._nodes, self._arms, strict=True)
        )
        return LinkAnswer(start, end, self.length.value(), self.both.isChecked())

    def _arm_box(self, item: Item, name: str, other: str, verb: str) -> QComboBox | None:
        """The arm of a junction: one that is free and called like the other end first; or a new word."""
        if item.kind is not Kind.JUNCTION:
            return None
        junction = self._network.junctions[item.place]
        box = named(ChoiceBox(), tr("Arm by which it {verb} {name}", verb=verb, name=name))
        box.setEditable(junction.plan is None)
        box.addItems(arms_of(self._network, junction))
        used = {end for link in self._network.links for end in (link.start, link.end)}
        free = [arm for arm in arms_of(self._network, junction) if end_of(name, arm) not in used]
        best = next((arm for arm in free if arm == other), None) or (free[0] if free else "")
        box.setCurrentText(best)
        self.form.addRow(
            label(tr("{capitalize} {name} by arm", capitalize=verb.capitalize(), name=name), "field"), box
        )
        return box

    def _show_time(self, length: int) -> None:
        self.time.setText(tr("{time} at 8 cells a second", time=time_words(length)))


class TripDialog(Question):
    """From where to where, and how often."""

    def __init__(self, parent: QWidget | None, network: Network, start: str = "", end: str = "") -> None:
        super().__init__(parent, tr("Trip"), tr("How many ride from one station to another."), tr("Add trip"))
        names = list(dict.fromkeys(station.name for station in network.stations))
        self.start, self.end = named(ChoiceBox(), tr("From")), named(ChoiceBox(), tr("To"))
        for box, name, otherwise in ((self.start, start, 0), (self.end, end, 1)):
            box.addItems(names)
            box.setCurrentText(name) if name else box.setCurrentIndex(min(otherwise, len(names) - 1))
        self.per_week = named(
            QDoubleSpinBox(decimals=2, minimum=0, maximum=PER_WEEK_LIMIT, value=FIRST_PER_WEEK),
            tr("Trips a week"),
        )
        self.form.addRow(label(tr("From"), "field"), self.start)
        self.form.addRow(label(tr("To"), "field"), self.end)
        self.form.addRow(label(tr("Trips a week"), "field"), self.per_week)
        self.per_week.selectAll()
        (self.per_week if start and end else self.start).setFocus()

    @property
    def answer(self) -> Trip:
        """What was given."""
        return Trip(self.start.currentText(), self.end.currentText(), whole(self.per_week.value()))


def whole(value: float) -> int | float:
    """A whole number without a fraction, as files have it."""
    return int(value) if value == int(value) else value
