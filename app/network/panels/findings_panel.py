"""The findings of a network: the list, and under it why the chosen one matters and what to do."""

from __future__ import annotations

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from app.dialogs.waiver import ask_reason
from app.network.document import NetworkDocument
from app.network.found import Found
from app.network.panels.common import Facts, empty_words
from app.panels.findings_list import findings_list
from app.panels.findings_model import FINDING_ROLE, PLACE_ROLE, SECOND_ROLE
from app.panels.kept_rows import KeptRows
from app.panels.look import named, panel
from app.panels.row_menu import RowMenu
from app.panels.table_model import Index
from app.panels.words import plain_tip
from app.translation import QT_TR_NOOP, tr
from model.network.edits import set_aside, take_up
from model.network.findings import NETWORK_RULES, waiver_for

NOTHING = QT_TR_NOOP("No findings: nothing stands in the way of this network.")
NOTHING_YET = QT_TR_NOOP("What stands in the way of a network is listed here as you draw.")
LOOKING = QT_TR_NOOP("Looking for what stands in the way…")


class NetworkFindingsModel(KeptRows[Found]):
    """The findings in their order."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        found = self._rows[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return found.title
        if role == PLACE_ROLE:
            return found.place
        if role == SECOND_ROLE:
            aside = tr("Set aside: “{reason}”", reason=found.finding.reason)
            return aside if found.waived else found.message
        if role == FINDING_ROLE:
            return found
        if role == Qt.ItemDataRole.ToolTipRole:
            return plain_tip(f"{found.title}\n{found.message}")
        if role == Qt.ItemDataRole.AccessibleTextRole:
            severity = tr("set aside") if found.waived else tr(found.severity.value)
            return f"{severity}: {found.title}, {found.message} {found.place}"
        return None


class NetworkFindingsPanel(QWidget):
    """Choosing a finding goes there."""

    chosen = Signal(object)
    """A Found."""
    help_asked = Signal(str)
    """The rule of which more is to be told."""
    count_changed = Signal(int)

    def __init__(self, document: NetworkDocument, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self._document = document
        self._is_taking_over = False
        self.model = NetworkFindingsModel(self)
        self.list = findings_list(self, self.model, tr("Findings"))
        self.facts = Facts((tr("Why"), tr("Do")), 32)
        self.aside_button = QPushButton(tr("Set aside…"))
        self.help_button = named(QPushButton(tr("What is this?")), tr("What the finding means"))
        self.empty = empty_words(tr(NOTHING_YET))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.empty)
        column.addWidget(self.list, 1)
        column.addWidget(self.facts)
        column.addLayout(self._button_row())
        column.addStretch(0)
        self.list.selectionModel().selectionChanged.connect(lambda *_: self._choose())
        self.list.clicked.connect(lambda index: self.chosen.emit(index.data(FINDING_ROLE)))
        RowMenu(self.list, (self.aside_button, self.help_button))
        document.plan_updated.connect(self.take_over)
        document.reset.connect(self.list.clearSelection)
        self.take_over()

    def _button_row(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setContentsMargins(50, 0, 14, 0)
        row.setSpacing(8)
        row.addWidget(self.aside_button)
        row.addWidget(self.help_button)
        row.addStretch(1)
        self.help_button.clicked.connect(self._ask_help)
        self.aside_button.clicked.connect(self._set_aside_or_take_up)
        return row

    @property
    def finding(self) -> Found | None:
        """The chosen finding."""
        indexes = self.list.selectedIndexes()
        return indexes[0].data(FINDING_ROLE) if indexes else None

    def take_over(self) -> None:
        """Show the findings that the document has now."""
        document, before = self._document, self.finding
        self._is_taking_over = True
        self.model.show_rows(list(document.findings))
        # A row that goes makes Qt choose the next one; nobody asked to go there.
        if self.finding is not None and (before is None or self.finding.key != before.key):
            self.list.clearSelection()
        self._is_taking_over = False
        network = document.network
        is_empty = not (network.stations or network.junctions or network.trips)
        self.empty.setText(
            tr(NOTHING_YET) if is_empty else tr(LOOKING) if document.plan_is_old else tr(NOTHING)
        )
        self.empty.setVisible(not document.findings)
        self.list.setVisible(bool(document.findings))
        self.count_changed.emit(sum(not found.waived for found in document.findings))
        self._show_chosen()

    def _ask_help(self) -> None:
        if self.finding is not None:
            self.help_asked.emit(self.finding.finding.rule)

    def _set_aside_or_take_up(self) -> None:
        found = self.finding
        if found is None:
            return
        if found.waived:
            self._document.edit(take_up, waiver_for(found.finding, found.finding.reason))
            return
        reason = ask_reason(self, found.title)
        if reason is not None:
            self._document.edit(set_aside, waiver_for(found.finding, reason))

    def _choose(self) -> None:
        self._show_chosen()
        if self.finding is not None and not self._is_taking_over:
            self.chosen.emit(self.finding)

    def _show_chosen(self) -> None:
        finding = self.finding
        self.facts.setVisible(finding is not None)
        self.help_button.setVisible(finding is not None)
        self.aside_button.setVisible(finding is not None)
        if finding is not None:
            self.aside_button.setText(tr("Take up again") if finding.waived else tr("Set aside…"))
            rule = NETWORK_RULES[finding.finding.rule]
            self.facts.show_facts({tr("Why"): f"{finding.message} {tr(rule.why)}", tr("Do"): tr(rule.remedy)})
