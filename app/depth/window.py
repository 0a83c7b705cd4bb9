"""The window of the view in depth: beside the plan view, following it."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from app.canvas.view import PlanView
from app.depth.view import DepthView
from app.depth.which import WORDS, Which
from app.depth.words import gap_words, seen_words
from app.panels.choice_box import ChoiceBox
from app.panels.here import here_words
from app.panels.look import hairline, label, named, panel
from app.panels.words import cell_words
from app.titles import give_title
from app.translation import QT_TR_NOOP, tr
from model.grid import Cell

ROW: Final = 44
HINT: Final = QT_TR_NOOP("Click: go there in the plan. Wheel: zoom. Drag: move. Esc: close.")


class DepthWindow(QDialog):
    """A view in depth with its buttons above and, below, what is under the pointer."""

    def __init__(self, plan_view: PlanView, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        # It stays while the plan is drawn on, and may be made as large as the screen.
        self.setWindowFlags(Qt.WindowType.Window | Qt.WindowType.WindowCloseButtonHint)
        self.setWindowFlag(Qt.WindowType.WindowMaximizeButtonHint, True)
        self.view = DepthView(plan_view)
        self.clockwise = _button(tr("Turn ←"), tr("Turn the plan a quarter clockwise (Left)"))
        self.back = _button(tr("Turn →"), tr("Turn the plan a quarter counter-clockwise (Right)"))
        self.closer = _button(tr("Closer"), tr("Bring the levels closer together (−)"))
        self.apart = _button(tr("Apart"), tr("Pull the levels further apart (+)"))
        self.all = _button(tr("Fit all"), tr("Show all of it, the levels pulled apart (0)"))
        self.levels = named(ChoiceBox(), tr("Levels shown"))
        self.levels.setToolTip(tr("Which levels are shown (O)"))
        self.levels.addItems([tr(WORDS[which]) for which in Which])
        self.ways = _button(tr("Ways"), tr("Show the ways of carts as on the plan (W)"))
        self.ways.setCheckable(True)
        self.looks = label("", "second")
        self.foot = label("", "second")
        self._lay_out()
        self._connect()
        self._show_state()
        self._show_here(None)
        self.name()

    def name(self) -> None:
        """The window is called as the plan is."""
        give_title(self, tr("{name} in depth", name=self.view.plan_view.document.name))

    def _lay_out(self) -> None:
        top, row = QWidget(), QHBoxLayout()
        panel(top)
        top.setFixedHeight(ROW)
        top.setLayout(row)
        row.setContentsMargins(12, 4, 12, 4)
        for button in (self.clockwise, self.back, self.closer, self.apart, self.all):
            row.addWidget(button)
        row.addWidget(self.levels)
        row.addWidget(self.ways)
        row.addStretch(1)
        row.addWidget(self.looks)
        bottom, foot = QWidget(), QHBoxLayout()
        panel(bottom)
        bottom.setLayout(foot)
        foot.setContentsMargins(12, 4, 12, 4)
        foot.addWidget(self.foot, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        for widget in (top, hairline(), self.view, hairline(), bottom):
            column.addWidget(widget, 1 if widget is self.view else 0)
        self.resize(820, 760)
        self.view.setFocus()

    def _connect(self) -> None:
        view = self.view
        self.clockwise.clicked.connect(lambda: view.turn(1))
        self.back.clicked.connect(lambda: view.turn(-1))
        self.closer.clicked.connect(lambda: view.pull(-1))
        self.apart.clicked.connect(lambda: view.pull(1))
        self.all.clicked.connect(view.fit)
        self.levels.activated.connect(lambda index: view.show_levels(Which(index)))
        self.ways.clicked.connect(view.show_ways)
        view.changed.connect(self._show_state)
        view.hovered.connect(self._show_here)
        view.plan_view.document.details_changed.connect(self.name)

    def _show_state(self) -> None:
        sight = self.view.sight
        self.levels.setCurrentIndex(self.view.which)
        self.ways.setChecked(self.view.shows_ways)
        self.closer.setEnabled(sight.gap > 1)
        self.looks.setText(f"{seen_words(sight.view)} {gap_words(sight.gap)}")

    def _show_here(self, cell: Cell | None) -> None:
        document = self.view.plan_view.document
        self.foot.setText(tr(HINT) if cell is None else f"{cell_words(cell)}: {here_words(document, cell)}")


def _button(text: str, tip: str) -> QPushButton:
    button = named(QPushButton(text), tip)
    button.setToolTip(tip)
    button.setAutoDefault(False)
    return button
