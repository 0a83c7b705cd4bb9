"""Asks what a junction is: a plan file, or its readers only."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from msgspec import structs
from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFileDialog,
    QHBoxLayout,
    QHeaderView,
    QLineEdit,
    QPushButton,
    QRadioButton,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from app.commands.files import plan_in
from app.network.dialogs import Question
from app.network.document import NetworkDocument
from app.panels.look import label, named
from app.translation import QT_TR_NOOP, tr
from model.files.errors import PlanFileError
from model.network.drawn import with_plan
from model.network.network import JunctionSpec, ReaderSpec

COLUMNS: Final = (QT_TR_NOOP("from"), QT_TR_NOOP("way"), QT_TR_NOOP("other way"), QT_TR_NOOP("default"))
ROW: Final = 28
SHOWN_ROWS: Final = 5
SENTENCE: Final = QT_TR_NOOP(
    "Carts that come by an arm leave by one way, or by one of two where there is a "
    "reader. An empty default is chosen by the program."
)


class JunctionDialog(Question):
    """A name, and where the readers come from."""

    def __init__(
        self, parent: QWidget | None, junction: JunctionSpec, document: NetworkDocument, is_new: bool
    ) -> None:
        super().__init__(parent, tr("Junction"), tr(SENTENCE), tr("Add junction") if is_new else tr("Change"))
        self._before = junction
        self._folder = document.path.parent if document.path else Path()
        self.plan: str | None = junction.plan
        self.name = named(QLineEdit(junction.name), tr("Name"))
        self.by_readers = named(QRadioButton(tr("By its readers")), tr("By its readers"))
        self.by_plan = named(QRadioButton(tr("From a plan file")), tr("From a plan file"))
        self.choose_button = QPushButton(tr("Choose plan…"))
        self.file = label("", "second")
        self.arms = named(_ArmsField(placeholderText=tr("North, East, South")), tr("Arms"))
        self.fill_button = QPushButton(tr("Each arm to the others"))
        self.table = self._table()
        self.add_button, self.remove_button = QPushButton(tr("Add reader")), QPushButton(tr("Remove reader"))
        self._lay_out()
        self.choose_button.clicked.connect(self._choose_plan)
        self.fill_button.clicked.connect(self._fill)
        self.arms.returnPressed.connect(self._fill)
        self.add_button.clicked.connect(lambda: self._add_row(("", "", "", "")))
        self.remove_button.clicked.connect(self._remove_row)
        self.by_plan.toggled.connect(self._show_kind)
        for reader in () if junction.plan else junction.readers:
            self._add_row(_texts(reader))
        (self.by_plan if junction.plan else self.by_readers).setChecked(True)
        self._show_kind()
        self.name.selectAll()
        self.name.setFocus()

    @property
    def junction(self) -> JunctionSpec | None:
        """What was given; ``None`` where the plan cannot be read, which is told."""
        name = self.name.text().strip()
        if self.by_readers.isChecked():
            readers = tuple(self._reader(row) for row in range(self.table.rowCount()))
            kept = tuple(reader for reader in readers if reader.start or any(reader.ways))
            return structs.replace(self._before, name=name, plan=None, readers=kept, arms=())
        if self.plan is None:
            self.tell(tr("Choose the plan file first."))
            return None
        try:
            return with_plan(
                structs.replace(self._before, name=name, plan=self.plan), plan_in(Path(self.plan))
            )
        except (PlanFileError, OSError) as error:
            self.tell(str(error))
            return None

    def _lay_out(self) -> None:
        self.form.addRow(label(tr("Name"), "field"), self.name)
        self.form.addRow(label(tr("Built"), "field"), self.by_readers)
        self.form.addRow(label("", "field"), self.by_plan)
        self._arms_row = QHBoxLayout()
        self._arms_row.addWidget(self.arms, 1)
        self._arms_row.addWidget(self.fill_button)
        self.form.addRow(label(tr("Arms"), "field"), self._arms_row)
        plan = QHBoxLayout()
        plan.addWidget(self.choose_button)
        plan.addWidget(self.file, 1)
        rows = QHBoxLayout()
        rows.addWidget(self.add_button)
        rows.addWidget(self.remove_button)
        rows.addStretch(1)
        self._plan_part, self._reader_part = QWidget(), QWidget()
        plan.setContentsMargins(0, 0, 0, 0)
        self._plan_part.setLayout(plan)
        column = QVBoxLayout(self._reader_part)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self.table)
        column.addLayout(rows)
        self.body.addWidget(self._plan_part)
        self.body.addWidget(self._reader_part)

    def _table(self) -> QTableWidget:
        table = named(QTableWidget(0, len(COLUMNS)), tr("Readers"))
        table.setHorizontalHeaderLabels([tr(title) for title in COLUMNS])
        table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        table.horizontalHeader().setHighlightSections(False)
        table.horizontalHeader().setDefaultAlignment(
            Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        )
        table.verticalHeader().hide()
        table.verticalHeader().setDefaultSectionSize(ROW)
        table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        table.setTabKeyNavigation(False)
        table.setFixedHeight(ROW * (SHOWN_ROWS + 1) + 6)
        return table

    def _show_kind(self) -> None:
        is_plan = self.by_plan.isChecked()
        self._plan_part.setVisible(is_plan)
        self._reader_part.setVisible(not is_plan)
        self.form.setRowVisible(self._arms_row, not is_plan)
        self.file.setText(Path(self.plan).name if self.plan else tr("No plan chosen yet"))
        self.adjustSize()

    def _choose_plan(self) -> None:
        name, _ = QFileDialog.getOpenFileName(
            self, tr("Choose a plan"), str(self._folder), tr("Plans (*.plan.json);;All files (*)")
        )
        if name:
            self.plan = str(Path(name).absolute())
            self._show_kind()

    def _fill(self) -> None:
        """A reader an arm, with the others as its ways; of more than two others the first two."""
        arms = list(dict.fromkeys(word.strip() for word in self.arms.text().split(",") if word.strip()))
        self.table.setRowCount(0)
        for arm in arms:
            others = [other for other in arms if other != arm][:2]
            self._add_row((arm, *others, *[""] * (3 - len(others))))

    def _add_row(self, texts: tuple[str, ...]) -> None:
        row = self.table.rowCount()
        self.table.insertRow(row)
        for column, text in enumerate(texts):
            self.table.setItem(row, column, QTableWidgetItem(text))
        self.table.setCurrentCell(row, 0)

    def _remove_row(self) -> None:
        self.table.removeRow(self.table.currentRow())

    def _reader(self, row: int) -> ReaderSpec:
        start, way, other, default = (
            (self.table.item(row, column) or QTableWidgetItem()).text().strip()
            for column in range(len(COLUMNS))
        )
        known = self._before.reader(start) or ReaderSpec(start, ())
        ways = tuple(word for word in (way, other) if word)
        return structs.replace(known, ways=ways, default=default or None)


class _ArmsField(QLineEdit):
    """Return hands over the arms, and does not answer the whole question."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keeps Return to itself."""
        super().keyPressEvent(event)
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            event.accept()


def _texts(reader: ReaderSpec) -> tuple[str, ...]:
    ways = [*reader.ways, ""][:2]
    return (reader.start, *ways, reader.default or "")
