"""What was found in each of the eight orientations, a row each."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from PySide6.QtCore import QObject, Qt

from app.order_words import cheapest
from app.panels.table_model import Index, TableModel
from app.translation import QT_TR_NOOP, tr
from app.turn_words import turn_words
from model.grid import ALL_TURNS, Turn
from model.ordering import BuildOrder

NUMBER, ORIENTATION, INVERTERS, THROWN, WIRED, PROOF, MARK = range(7)
TITLES: Final = (
    "",
    QT_TR_NOOP("orientation"),
    QT_TR_NOOP("inverters"),
    QT_TR_NOOP("thrown"),
    QT_TR_NOOP("wired"),
    QT_TR_NOOP("a better order"),
    "",
)
TIPS: Final = (
    QT_TR_NOOP("The number of the orientation"),
    QT_TR_NOOP("How the plan is turned from how it is drawn now"),
    QT_TR_NOOP("Switches that are powered while no reader holds"),
    QT_TR_NOOP("Switches thrown, summed over the readers"),
    QT_TR_NOOP("Switches that need a line or an inverter"),
    QT_TR_NOOP("Whether it is proved that no order is better"),
    QT_TR_NOOP("Where the junction is cheapest"),
)
NONE: Final = "—"


def longest_words() -> dict[int, tuple[str, ...]]:
    """What may stand in the columns that hold words, for their widths."""
    return {
        ORIENTATION: tuple(map(turn_words, ALL_TURNS)),
        PROOF: (tr("not looked at"), tr("not ruled out"), tr("none found that serves")),
        MARK: (tr("cheapest so far"),),
    }


class OrdersModel(TableModel):
    """The rows stay where they are; only what stands in them changes."""

    titles = TITLES
    tips = TIPS

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._found: Mapping[Turn, BuildOrder] = {}
        self._searched: Turn | None = None
        self._cheapest: tuple[Turn, ...] = ()

    def rows(self) -> Sequence[Turn]:
        """What stands in the table, a row each."""
        return ALL_TURNS

    def show(self, found: Mapping[Turn, BuildOrder], searched: Turn | None) -> None:
        """Take over what was found, and where the search is; ``None`` when it is over."""
        self._found, self._searched = dict(found), searched
        least = cheapest(found)
        self._cheapest = () if len(least) == len(ALL_TURNS) else least
        self.dataChanged.emit(self.index(0, 0), self.index(len(ALL_TURNS) - 1, MARK))

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        words = self._words(ALL_TURNS[index.row()])[index.column()]
        if role == Qt.ItemDataRole.DisplayRole:
            return words
        if role in (Qt.ItemDataRole.ToolTipRole, Qt.ItemDataRole.AccessibleTextRole):
            return f"{tr(TITLES[index.column()])}: {words}" if tr(TITLES[index.column()]) else words
        return None

    def _words(self, turn: Turn) -> tuple[str, ...]:
        order = self._found.get(turn)
        figures = (order.inverters, order.thrown, order.wired) if order and order.served else (NONE,) * 3
        return (
            str(turn.number),
            turn_words(turn),
            *map(str, figures),
            self._proof(turn, order),
            self._mark(turn),
        )

    def _proof(self, turn: Turn, order: BuildOrder | None) -> str:
        if turn == self._searched:
            return tr("searching…")
        if order is None:
            return tr("waiting") if self._searched is not None else tr("not looked at")
        if order.served:
            return tr("there is none") if order.proved else tr("not ruled out")
        return tr("no order serves") if order.proved else tr("none found that serves")

    def _mark(self, turn: Turn) -> str:
        if turn not in self._cheapest:
            return ""
        return tr("cheapest") if self._searched is None else tr("cheapest so far")
