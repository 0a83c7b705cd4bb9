"""Asks what lies in a hopper, a barrel or an auto-crafter."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import pairwise
from typing import Final

import msgspec
from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QDialog,
    QHBoxLayout,
    QPushButton,
    QScrollArea,
    QSpinBox,
    QVBoxLayout,
    QWidget,
)

from app.dialogs.buttons import answer_buttons
from app.names import part_name
from app.panels.choice_box import ChoiceBox
from app.panels.look import label, named
from app.translation import QT_TR_NOOP, tr
from model.edits import EditRefused, set_piece
from model.parts import STACK, TRAITS
from model.pieces import WAYBILL, Held, Piece, slots_needed
from model.plan import Plan
from model.signals.containers import reading, slots

USUAL: Final = ("ingot", "nugget")
"""Items that builders count with; any other word will do as well."""
ROWS_HIGH: Final = 196
SPREADS: Final = QT_TR_NOOP("One lies in each slot but the first, so the items do not wander.")
"""Said of a hopper with few items of one kind."""


class ContentsDialog(QDialog):
    """A row for each kind of item in its order; below them what comes of it, or what is wrong."""

    def __init__(self, parent: QWidget | None, plan: Plan, piece: Piece) -> None:
        super().__init__(parent)
        self._plan, self._piece = plan, piece
        name = part_name(piece.part)
        self.setWindowTitle(tr("Contents"))
        self.setMinimumWidth(440)
        self.rows: list[_Row] = []
        self._items = offered_items(plan)
        self.add_button = QPushButton(tr("Add item"))
        self.add_button.setAutoDefault(False)
        self.told = named(label("", "second"), tr("What comes of it"))
        self.told.setWordWrap(True)
        self._buttons, self.ok = answer_buttons(self, tr("Set"))
        self._column = QVBoxLayout()
        self._lay_out(tr("What the {part} at {place} holds.", part=name.lower(), place=piece.at))
        self.add_button.clicked.connect(lambda: self.add_row(Held(self._items[0], 1)).item.setFocus())
        for held in piece.holds:
            self.add_row(held)
        (self.rows[0].item if self.rows else self.add_button).setFocus()
        self._look()

    @property
    def piece(self) -> Piece:
        """The container with what was given."""
        return msgspec.structs.replace(self._piece, holds=tuple(row.held for row in self.rows))

    def add_row(self, held: Held) -> _Row:
        """One more kind of item, after the others."""
        row = _Row(held, self._items, TRAITS[self._piece.part].slots * STACK, self._look, self._remove)
        self.rows.append(row)
        self._column.insertWidget(len(self.rows) - 1, row)
        # A layout shows it a moment later only, and Tab would leave it out until then.
        row.show()
        for before, after in pairwise((row.item, row.count, row.remove, self.add_button)):
            QWidget.setTabOrder(before, after)
        if len(self.rows) > 1:
            QWidget.setTabOrder(self.rows[-2].remove, row.item)
        self._look()
        return row

    def _remove(self, row: _Row) -> None:
        at = self.rows.index(row)
        self.rows.remove(row)
        row.setParent(None)
        row.deleteLater()
        left = self.rows[min(at, len(self.rows) - 1) :]
        (left[0].remove if left else self.add_button).setFocus()
        self._look()

    def _look(self) -> None:
        """Say what comes of it; what a plan cannot have is not set."""
        for number, row in enumerate(self.rows, 1):
            row.show_number(number)
        problem = self._problem()
        self.ok.setEnabled(not problem)
        self.told.setText(problem or self._words())

    def _problem(self) -> str:
        try:
            set_piece(self._plan, self.piece)
        except EditRefused as refused:
            return str(refused)
        return ""

    def _words(self) -> str:
        piece, count = self.piece, TRAITS[self._piece.part].slots
        filled = slots(piece)
        said = tr(
            "{used} of {slots}; a comparator reads {strength}.",
            used=len(filled),
            slots=tr("%n slot(s)", "", count),
            strength=reading(piece),
        )
        return f"{said} {tr(SPREADS)}" if len(filled) > slots_needed(piece.holds) else said

    def _lay_out(self, sentence: str) -> None:
        inside = QWidget()
        self._column.setContentsMargins(0, 0, 8, 0)
        self._column.setSpacing(4)
        self._column.addStretch(1)
        inside.setLayout(self._column)
        area = named(QScrollArea(widgetResizable=True), tr("Items"))
        area.setWidget(inside)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        area.setMinimumHeight(ROWS_HIGH)
        add = QHBoxLayout()
        add.addWidget(self.add_button)
        add.addStretch(1)
        column = QVBoxLayout(self)
        column.setSpacing(12)
        column.addWidget(label(sentence))
        column.addWidget(area, 1)
        column.addLayout(add)
        column.addWidget(self.told)
        column.addWidget(self._buttons)


class _Row(QWidget):
    """An item and how many of it."""

    def __init__(
        self,
        held: Held,
        items: Sequence[str],
        most: int,
        look: Callable[[], object],
        remove: Callable[[_Row], object],
    ) -> None:
        super().__init__()
        self._before = held
        self.item = ChoiceBox()
        self.item.setEditable(True)
        self.item.addItems(list(dict.fromkeys((held.item, *items))))
        self.item.setCurrentText(held.item)
        self.count = QSpinBox(minimum=1, maximum=most, value=held.count)
        self.remove = QPushButton(tr("Remove"))
        self.remove.setAutoDefault(False)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        row.addWidget(self.item, 1)
        row.addWidget(self.count)
        row.addWidget(self.remove)
        self.item.currentTextChanged.connect(lambda _text: look())
        self.count.valueChanged.connect(lambda _count: look())
        self.remove.clicked.connect(lambda: remove(self))

    @property
    def held(self) -> Held:
        """What was given; keys of other versions stay with an item that is still the same."""
        item = self.item.currentText().strip()
        kept = self._before.kept if item == self._before.item else ()
        return Held(item, self.count.value(), kept)

    def show_number(self, number: int) -> None:
        """Say to a screen reader which row this is."""
        named(self.item, tr("Item {number}", number=number))
        named(self.count, tr("How many of item {number}", number=number))
        named(self.remove, tr("Remove item {number}", number=number))


def offered_items(plan: Plan) -> tuple[str, ...]:
    """The waybills that the plan names, then what builders count with."""
    waybills = sorted({route.waybill for route in plan.routes if route.waybill})
    return (*(WAYBILL + name for name in waybills), *USUAL)
