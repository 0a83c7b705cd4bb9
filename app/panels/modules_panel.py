"""The modules in place of the parts tray: choosing one takes it in hand, and its page stands below."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QScrollArea, QVBoxLayout, QWidget

from app.panels.focus_frame import FocusFrame
from app.panels.look import fit_lines, hairline, label, named, panel
from app.panels.modules_list import ModulesList
from app.panels.modules_picture import ModulePicture
from app.panels.modules_settings import ModuleSettings
from app.panels.modules_words import facts_words, port_words, spoken
from app.panels.tray import WIDE
from app.shown_keys import keep_tip
from app.tools.module_hand import ModuleHand
from app.translation import QT_TR_NOOP, tr
from model.grid import Cell
from model.wiring.modules.modules import module_parameters

MARGIN: Final = 16
PAGE: Final = WIDE - 2 * MARGIN - 8
"""Width of what stands on the page, beside its scroll bar, in pixels."""
KEYS: Final = QT_TR_NOOP("R turns, M mirrors; a click puts it down.")
ORIGIN: Final = Cell(0, 0, 0)


class ModulesPanel(QWidget):
    """The list, and of the module in hand: how it is set, its picture, ports, delay and size."""

    module_chosen = Signal(str)
    parameter_set = Signal(str, str)
    parts_asked = Signal()

    def __init__(self, hand: ModuleHand, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self.setFixedWidth(WIDE)
        self.list = ModulesList(self)
        self.back = named(QPushButton(tr("Parts")), tr("Back to the parts"))
        keep_tip(self.back, tr("Back to the parts"), "tool_select")
        self.settings = ModuleSettings()
        self.picture = ModulePicture(PAGE)
        self.title, self.keys = label("", "strong"), label(tr(KEYS), "second")
        self.facts, self.ports, self.about = label(), label(), label()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(self._head())
        column.addWidget(self.list)
        column.addWidget(hairline())
        column.addWidget(self._page(), 1)
        self.back.clicked.connect(self.parts_asked)
        self.list.module_chosen.connect(self.module_chosen)
        self.settings.value_set.connect(self.parameter_set)
        self.show_hand(hand)

    def show_hand(self, hand: ModuleHand) -> None:
        """Show the module in hand, turned as it is."""
        module = hand.module(ORIGIN)
        self.list.show_module(hand.name)
        self.settings.show_parameters(module_parameters(hand.name), hand.parameters)
        self.picture.show_module(module, hand.track(ORIGIN))
        self.picture.setAccessibleName(spoken(module))
        self.title.setText(tr(module.title))
        self.facts.setText(facts_words(module))
        self.ports.setText("\n".join(port_words(number, port) for number, port in enumerate(module.ports, 1)))
        self.about.setText(tr(module.about))
        for text in (self.title, self.keys, self.facts, self.ports, self.about):
            fit_lines(text, PAGE)

    def _head(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setContentsMargins(MARGIN, 6, MARGIN, 6)
        row.addWidget(label(tr("Modules"), "section"))
        row.addStretch(1)
        row.addWidget(self.back)
        return row

    def _page(self) -> QScrollArea:
        page = QWidget()
        panel(page)
        column = QVBoxLayout(page)
        column.setContentsMargins(MARGIN, 8, 0, 12)
        column.setSpacing(6)
        for shown in (self.title, self.keys, self.settings, self.picture, self.ports, self.facts, self.about):
            column.addWidget(shown)
        for text in (self.title, self.keys, self.facts, self.ports, self.about):
            text.setWordWrap(True)
            text.setFixedWidth(PAGE)
        self.settings.setFixedWidth(PAGE)
        column.addStretch(1)
        area = named(QScrollArea(), tr("Page of the module"))
        area.setWidget(page)
        area.setWidgetResizable(True)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        FocusFrame(area)
        return area
