"""The switches as a table: how each rests and lies powered, what is wanted of it, who calls it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QObject, Qt

from app.panels.table_model import Index, TableModel
from app.panels.words import listed, plain_tip
from app.translation import QT_TR_NOOP, tr
from model.grid import Cell
from model.routing.junction import Switch

NAME, CELL, RESTS, POWERED, IDLE, CALLED_BY = range(6)
TITLES: Final = (
    "",
    QT_TR_NOOP("cell"),
    QT_TR_NOOP("rests"),
    QT_TR_NOOP("powered"),
    QT_TR_NOOP("idle"),
    QT_TR_NOOP("called by"),
)
TIPS: Final = (
    QT_TR_NOOP("Named in the order of placing"),
    QT_TR_NOOP("Where the switch lies"),
    QT_TR_NOOP("How it lies without a signal"),
    QT_TR_NOOP("How it lies with a signal"),
    QT_TR_NOOP("What it must do while no reader holds: rest, or be powered by an inverter"),
    QT_TR_NOOP("The arms whose reader throws it"),
)
SWITCH_ROLE: Final = Qt.ItemDataRole.UserRole


def idle_words(switch: Switch) -> str:
    """What the switch must do while no reader holds."""
    if switch.idle is None:
        return "—"
    return tr("inverter") if switch.inverter else tr("rests")


def called_words(switch: Switch) -> str:
    """The arms whose reader throws the switch."""
    if switch.idle is None:
        return tr("not wired")
    return ", ".join(switch.called_by) if switch.called_by else tr("never")


class SwitchesModel(TableModel):
    """A row a switch, in file order."""

    titles = TITLES
    tips = TIPS

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._switches: tuple[Switch, ...] = ()

    def rows(self) -> Sequence[Switch]:
        """What stands in the table, a row each."""
        return self._switches

    def show(self, switches: tuple[Switch, ...]) -> bool:
        """Take over switches, the choice staying where the same cells are switches; whether they are new."""
        if switches == self._switches:
            return False
        if [switch.at for switch in switches] == [switch.at for switch in self._switches]:
            self._switches = switches
            self.dataChanged.emit(self.index(0, 0), self.index(len(switches) - 1, CALLED_BY))
        else:
            self.beginResetModel()
            self._switches = switches
            self.endResetModel()
        return True

    def row_of(self, cell: Cell) -> int | None:
        """The row of the switch in a cell, or ``None``."""
        return next((row for row, switch in enumerate(self._switches) if switch.at == cell), None)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        switch = self._switches[index.row()]
        if role == SWITCH_ROLE:
            return switch
        words = (
            switch.name,
            str(switch.at),
            tr(switch.resting.word),
            tr(switch.powered.word),
            idle_words(switch),
            called_words(switch),
        )[index.column()]
        if role == Qt.ItemDataRole.DisplayRole:
            return words
        if role == Qt.ItemDataRole.ToolTipRole:
            return plain_tip(f"{tr(TITLES[index.column()]) or tr('switch')}: {words}")
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return f"{tr(TITLES[index.column()]) or tr('switch')} {words}".strip()
        return None


def summary(switches: tuple[Switch, ...], wanted: int, *, serves: bool) -> str:
    """One sentence on the whole choice, for so many wanted routes."""
    wired = [switch for switch in switches if switch.idle is not None]
    if not switches:
        return tr("A curve with a third neighbour becomes a switch, and is listed here.")
    if not wanted:
        return tr("No route is wanted yet, so that no switch need be wired.")
    if not serves:
        return tr("No choice of signals serves all wanted routes; the findings say why.")
    if not wired:
        return tr("Every wanted route arrives without a switch being wired.")
    inverters = sum(switch.inverter for switch in wired)
    throws = sum(len(switch.called_by) for switch in wired)
    inverter_word = (
        tr("1 inverter") if inverters == 1 else tr("{inverters} inverters", inverters=inverters or "No")
    )
    throw_word = tr("1 throw") if throws == 1 else tr("{throws} throws", throws=throws)
    return tr(
        "{inverter_word}, {throw_word}: the fewest for this orientation.",
        inverter_word=inverter_word,
        throw_word=throw_word,
    )


def reader_sentence(names: list[str]) -> str:
    """What a reader throws."""
    return tr("throws {listed}", listed=listed(names)) if names else tr("throws nothing")
