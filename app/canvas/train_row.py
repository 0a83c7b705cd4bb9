"""The row in the chip of the dry run that says what the test cart tool sends: carts, gap, waybill."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSpinBox, QWidget

from app.canvas.dry_running import DryRunning
from app.canvas.trains import CARTS_AT_MOST, GAP_AT_MOST
from app.panels.choice_box import ChoiceBox
from app.panels.look import label, named
from app.panels.wrapped_row import WrappedRow
from app.translation import QT_TR_NOOP, tr

NO_WAYBILL: Final = QT_TR_NOOP("no waybill")
OF_THE_ARM: Final = QT_TR_NOOP("waybill of the arm")


class TrainRow(QWidget):
    """Two figures and a choice."""

    def __init__(self, dry_run: DryRunning, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._dry_run = dry_run
        self.carts = _figure(tr("Carts in the train"), 1, CARTS_AT_MOST)
        self.gap = _figure(tr("Free cells between two carts"), 0, GAP_AT_MOST)
        self.waybill = named(ChoiceBox(), tr("Waybill in each cart"))
        self.waybill.setToolTip(tr("What each cart carries (W, or Shift while letting go)"))
        row = WrappedRow()
        self.setLayout(row)
        for word, field in ((tr("Carts"), self.carts), (tr("Gap"), self.gap)):
            row.add_together(label(word), field)
        row.addWidget(self.waybill)
        self.carts.valueChanged.connect(self._set)
        self.gap.valueChanged.connect(self._set)
        self.waybill.activated.connect(self._set)
        dry_run.train_changed.connect(self._show)
        self.take_over()

    def take_over(self) -> None:
        """Offer the waybills that the plan names now."""
        self._names = ("", *self._dry_run.waybills)
        self.waybill.clear()
        self.waybill.addItems([tr(NO_WAYBILL), tr(OF_THE_ARM), *self._names[1:]])
        if self._dry_run.train.waybill not in self._names:
            self._dry_run.train = replace(self._dry_run.train, waybill="")
        self._show()

    def _set(self) -> None:
        chosen, train = self.waybill.currentIndex(), self._dry_run.train
        name = self._names[chosen - 1] if chosen else train.waybill
        self._dry_run.train = replace(
            train, carts=self.carts.value(), gap=self.gap.value(), loaded=chosen > 0, waybill=name
        )

    def _show(self) -> None:
        train = self._dry_run.train
        for field, value in ((self.carts, train.carts), (self.gap, train.gap)):
            # The figures come one after the other, and a train of halves must not be set.
            field.blockSignals(True)
            field.setValue(value)
            field.blockSignals(False)
        self.waybill.setCurrentIndex(1 + self._names.index(train.waybill) if train.loaded else 0)


def _figure(name: str, least: int, most: int) -> QSpinBox:
    made = named(QSpinBox(), name)
    made.setToolTip(name)
    made.setRange(least, most)
    made.setFixedWidth(48)
    made.setAlignment(Qt.AlignmentFlag.AlignRight)
    return made
