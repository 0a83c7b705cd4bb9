"""The findings: the list, and under it why the chosen one matters and what to do."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Final

from PySide6.QtCore import QItemSelection, Qt, QTimer, Signal
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QPushButton,
    QStackedLayout,
    QVBoxLayout,
    QWidget,
)

from app.background import Newest
from app.dialogs.waiver import ask_reason
from app.document import Document
from app.panels.findings_delegate import ROW
from app.panels.findings_list import findings_list
from app.panels.findings_model import FINDING_ROLE, FindingsModel
from app.panels.look import fit_lines, heads, label, named, panel
from app.panels.row_menu import RowMenu
from app.panels.rows import FRAME
from app.panels.side_panel import WIDTH
from app.panels.words import plain_tip
from app.panels.wrapped_row import WrappedRow
from app.translation import tr
from model.edits import set_aside, take_up
from model.edits.changes import detailed
from model.grid import Cell
from model.plan import Change, Plan, Waiver
from model.routing.junction import Junction
from model.rules import RULES, Finding, fix, waiver_for
from model.rules.local import Difference

HEAD: Final = 32
GAP: Final = 4
SENTENCE_WIDTH: Final = WIDTH - 2 * 14 - HEAD - GAP
"""Of Why and Do, in pixels: the panel without its margins, the words before them and the gap."""


MOST_SEEN: Final = 100
"""Rows that no screen is tall enough for."""


class FindingsPanel(QWidget):
    """Choosing a finding goes there."""

    chosen = Signal(object)
    """The finding that was chosen."""
    help_asked = Signal(str)
    """The rule of which more is to be told."""
    count_changed = Signal(int)

    def __init__(self, document: Document, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self._document = document
        self._fix: Change | None = None
        self._fixer = Newest(self)
        self._fixer.yielded.connect(self._offer_fix)
        self.model = FindingsModel(self)
        self.list = findings_list(self, self.model, tr("Findings"))
        self.empty = label(tr("No findings: nothing stands in the way of building this plan."), "second")
        self._why = _sentence()
        self._do = _sentence()
        self.fix_button = named(QPushButton(self), tr("Mend the finding"))
        self.fix_button.setProperty("look", "main")
        self.aside_button = QPushButton(tr("Set aside…"), self)
        self.help_button = named(QPushButton(tr("What is this?"), self), tr("What the finding means"))
        self._below = self._lay_out_below()
        self.stale = label("", "second")
        self.drop_button = QPushButton(tr("Drop"), self)
        self.drop_button.setAccessibleName(tr("Drop the waivers without a finding"))
        self._stale_row = self._lay_out_stale()
        self._lay_out()
        self._is_taking_over = False
        self.list.selectionModel().selectionChanged.connect(self._choose)
        # A click on the row that is chosen already goes there once more.
        self.list.clicked.connect(lambda index: self.chosen.emit(index.data(FINDING_ROLE)))
        self.fix_button.clicked.connect(self._carry_out_fix)
        self.aside_button.clicked.connect(self._set_aside_or_take_up)
        self.help_button.clicked.connect(self._ask_help)
        self.drop_button.clicked.connect(lambda: document.edit(drop_waivers, document.stale_waivers))
        RowMenu(self.list, (self.fix_button, self.aside_button, self.help_button))
        document.work_out_beside(names_of)
        document.junction_updated.connect(self.take_over)
        document.findings_changed.connect(self._follow)
        document.reset.connect(self.list.clearSelection)
        self.take_over()

    @property
    def finding(self) -> Finding | None:
        """The chosen finding."""
        indexes = self.list.selectedIndexes()
        return indexes[0].data(FINDING_ROLE) if indexes else None

    def take_over(self) -> None:
        """Show the findings that the document has now."""
        document = self._document
        names = document.shown(names_of) or {}
        with self._keeping_choice():
            self.model.show(document.findings, names, document.is_old_for_long)
        self._show_around()

    def _follow(self, difference: Difference | None) -> None:
        """An edit changes few of what may be many rows."""
        if difference is None:
            self.take_over()
            return
        with self._keeping_choice():
            self.model.follow(difference)
        # Else the list would be laid out as it is painted, and then be painted once more.
        self.list.doItemsLayout()
        self._show_around()

    def _show_around(self) -> None:
        document = self._document
        self.count_changed.emit(document.found.open.total())
        self._fit_list(min(self.model.total, MOST_SEEN))
        self._show_stale()
        self.empty.setText(self._words_for_nothing())
        self._stack.setCurrentIndex(0 if document.findings or document.stale_waivers else 1)
        self._show_chosen()

    @contextmanager
    def _keeping_choice(self) -> Iterator[None]:
        """A row that goes makes Qt choose the next one; nobody asked to go there."""
        before = self.finding
        self._is_taking_over = True
        yield
        if self.finding is not None and (before is None or self.finding.key != before.key):
            self.list.clearSelection()
        self._is_taking_over = False

    def _show_stale(self) -> None:
        stale = self._document.stale_waivers
        self.stale.setText(
            tr("{findings} set aside no longer found", findings=tr("%n finding(s)", "", len(stale)))
        )
        self.stale.setToolTip(plain_tip("\n".join(f"{waiver.rule}: {waiver.reason}" for waiver in stale)))
        self._stale_row.setVisible(bool(stale) and not self._document.junction_is_old)

    def _fit_list(self, rows: int) -> None:
        """No taller than its rows, so that Why and Do stand right below them, and never less than two."""
        self.list.setMinimumHeight(min(rows, 2) * ROW + 2 * FRAME)
        self.list.setMaximumHeight(max(rows, 1) * ROW + 2 * FRAME)

    def _words_for_nothing(self) -> str:
        if not len(self._document.plan.pieces):
            return tr("What stands in the way of a plan is listed here as you draw.")
        if self._document.junction_is_old:
            return tr("Looking for what stands in the way…")
        return tr("No findings: nothing stands in the way of this plan.")

    def _lay_out(self) -> None:
        listed = QWidget()
        column = QVBoxLayout(listed)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.list, 1)
        column.addWidget(self._below)
        column.addWidget(self._stale_row)
        column.addStretch(0)
        bare = QWidget()
        column = QVBoxLayout(bare)
        column.setContentsMargins(14, 12, 14, 12)
        self.empty.setWordWrap(True)
        column.addWidget(self.empty)
        column.addStretch(1)
        self._stack = QStackedLayout(self)
        self._stack.addWidget(listed)
        self._stack.addWidget(bare)

    def _lay_out_stale(self) -> QWidget:
        made = QWidget()
        row = QHBoxLayout(made)
        row.setContentsMargins(14, 8, 14, 8)
        row.addWidget(self.stale, 1)
        row.addWidget(self.drop_button)
        return made

    def _lay_out_below(self) -> QWidget:
        below = QWidget()
        column = QVBoxLayout(below)
        column.setContentsMargins(14, 8, 14, 12)
        column.setSpacing(8)
        words = heads((tr("Why"), tr("Do")), HEAD)
        self._lacks = words[0].width() - HEAD
        for head, sentence in zip(words, (self._why, self._do), strict=True):
            row = QHBoxLayout()
            row.setSpacing(GAP)
            row.addWidget(head, 0, Qt.AlignmentFlag.AlignTop)
            row.addWidget(sentence, 1)
            column.addLayout(row)
        for buttons in ((self.fix_button,), (self.aside_button, self.help_button)):
            foot = WrappedRow()
            foot.setContentsMargins(36, 0, 0, 0)
            for button in buttons:
                foot.addWidget(button)
            column.addLayout(foot)
        return below

    def _choose(self, _now: QItemSelection, _before: QItemSelection) -> None:
        self._show_chosen()
        if self.finding is not None and not self._is_taking_over:
            self.chosen.emit(self.finding)
            # What is said below takes room from the list; the row itself must stay in sight.
            QTimer.singleShot(0, self.list, lambda: self.list.scrollTo(self.list.currentIndex()))

    def _show_chosen(self) -> None:
        finding = self.finding
        self._below.setVisible(finding is not None)
        self.fix_button.setVisible(False)
        self._fix = None
        if finding is None:
            return
        rule = RULES[finding.rule]
        self._why.setText(f"{finding.message} {tr(rule.why)}")
        self._do.setText(tr(rule.remedy))
        for sentence in (self._why, self._do):
            fit_lines(sentence, SENTENCE_WIDTH - self._lacks)
        self.aside_button.setText(tr("Take up again") if finding.waived else tr("Set aside…"))
        junction = self._document.junction
        if junction is not None and not self._document.junction_is_old:
            self._fixer.ask(lambda: _find_fix(junction, finding))

    def _offer_fix(self, change: object) -> None:
        if isinstance(change, Change) and not change.is_empty:
            self._fix = change
            self.fix_button.setText(change.label)
            self.fix_button.setAccessibleName(change.label)
            self.fix_button.setVisible(True)

    def _carry_out_fix(self) -> None:
        if self._fix is not None:
            self._document.apply(self._fix)

    def _ask_help(self) -> None:
        if self.finding is not None:
            self.help_asked.emit(self.finding.rule)

    def _set_aside_or_take_up(self) -> None:
        finding = self.finding
        if finding is None:
            return
        if finding.waived:
            self._document.edit(take_up, waiver_for(finding, finding.reason))
            return
        reason = ask_reason(self, tr(RULES[finding.rule].title))
        if reason is not None:
            self._document.edit(set_aside, waiver_for(finding, reason))


def names_of(junction: Junction) -> dict[Cell, str]:
    """The names of the switches, by cell."""
    return {switch.at: switch.name for switch in junction.switches}


def drop_waivers(plan: Plan, stale: tuple[Waiver, ...]) -> Change:
    """The plan without these waivers, as one step."""
    kept = tuple(waiver for waiver in plan.details.waivers if waiver not in stale)
    return detailed(
        plan,
        tr("Drop {waivers}", waivers=tr("%n waiver(s)", "", len(stale))),
        plan.details.replace(waivers=kept),
    )


def _sentence() -> QLabel:
    made = label()
    made.setWordWrap(True)
    return made


def _find_fix(junction: Junction, finding: Finding) -> Iterator[object]:
    yield fix(junction, finding)
