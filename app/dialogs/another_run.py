"""Asks for a test run besides those that are listed."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtWidgets import QDialog, QFormLayout, QVBoxLayout, QWidget

from app.dialogs.asking import asking
from app.dialogs.buttons import answer_buttons
from app.panels.choice_box import ChoiceBox
from app.panels.look import label, named
from app.translation import tr
from model.commissioning import Run


class AnotherRunDialog(QDialog):
    """From where the cart comes, and what it carries. Needs a run to offer."""

    def __init__(self, parent: QWidget | None, runs: Sequence[Run]) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Another run"))
        self._runs = runs
        self.start = named(ChoiceBox(self), tr("from"))
        self.load = named(ChoiceBox(self), tr("waybill"))
        self.start.addItems(list(dict.fromkeys(run.start for run in runs)))
        self.start.currentIndexChanged.connect(self._offer_loads)
        self._offer_loads()
        buttons, _ = answer_buttons(self, tr("Add"))
        form = QFormLayout()
        form.addRow(label(tr("from"), "field"), self.start)
        form.addRow(label(tr("waybill"), "field"), self.load)
        column = QVBoxLayout(self)
        column.setSpacing(12)
        column.addWidget(label(tr("A run besides those that are listed.")))
        column.addLayout(form)
        column.addWidget(buttons)

    @property
    def run(self) -> Run:
        """What was chosen."""
        return Run(self.start.currentText(), self.load.currentData())

    def _offer_loads(self) -> None:
        self.load.clear()
        for run in self._runs:
            if run.start == self.start.currentText():
                self.load.addItem(tr("empty") if run.waybill is None else run.waybill, run.waybill)


def ask_run(parent: QWidget, runs: Sequence[Run]) -> Run | None:
    """The run to add, or ``None`` when the user thinks better of it."""
    with asking(AnotherRunDialog(parent, runs)) as dialog:
        return dialog.run if dialog.exec() else None
