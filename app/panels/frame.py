"""Where everything stands in the window; narrow windows fold the tray and the orientations."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from typing import Final, TypeVar

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QHBoxLayout, QLayout, QSplitter, QVBoxLayout, QWidget

from app.canvas.view import PlanView
from app.comparing.panel import ComparisonPanel
from app.document import Document
from app.panels.arrangement import PLAN_PANELS, Arrangement
from app.panels.commissioning_panel import CommissioningPanel
from app.panels.findings_panel import FindingsPanel
from app.panels.in_hand import InHand
from app.panels.level_strip import LevelStrip
from app.panels.look import hairline
from app.panels.materials_panel import MaterialsPanel
from app.panels.message_bar import MessageBar
from app.panels.modules_panel import ModulesPanel
from app.panels.orientation_strip import OrientationStrip
from app.panels.pieces_panel import PiecesPanel
from app.panels.readers_panel import ReadersPanel
from app.panels.routes_panel import RoutesPanel
from app.panels.side_panel import SidePanel, Tabs
from app.panels.status_bar import StatusBar
from app.panels.switches_panel import SwitchesPanel
from app.panels.timing_panel import TALL, TimingPanel
from app.panels.tools_row import ToolsRow
from app.panels.tray import NARROW, WIDE, Tray
from app.translation import QT_TR_NOOP, tr

NARROW_TRAY_BELOW: Final = 1280
FOLDED_STRIP_BELOW: Final = 1100
LEAST_PLAN: Final = 360
"""Px that the plan and its levels keep, however wide the side panel is drawn."""
DIAGRAM_SHARE: Final = 0.36
"""Of the height of plan and timing diagram, where that is less than the diagram would have."""

Box = TypeVar("Box", QHBoxLayout, QVBoxLayout)


class Panels:
    """All panels of one document, not yet placed."""

    def __init__(self, document: Document, view: PlanView) -> None:
        self.findings = FindingsPanel(document)
        self.materials = MaterialsPanel(document)
        self.commissioning = CommissioningPanel(document)
        self.switches = SwitchesPanel(document)
        self.routes = RoutesPanel(document)
        self.readers = ReadersPanel(document)
        self.pieces = PiecesPanel(document)
        self.tray = Tray()
        self.in_hand = InHand(view.hand)
        self.modules = ModulesPanel(view.module_hand)
        self.levels = LevelStrip(document, view.level)
        self.orientations = OrientationStrip(document)
        self.comparison = ComparisonPanel(view.comparing)
        self.timing = TimingPanel(document, view.dry_run.runner)
        self.status = StatusBar()
        self.message = MessageBar()
        self.side = SidePanel(
            Tabs(
                tr("Findings, materials and test runs"),
                {
                    QT_TR_NOOP("Findings"): self.findings,
                    QT_TR_NOOP("Materials"): self.materials,
                    QT_TR_NOOP("Test runs"): self.commissioning,
                },
            ),
            Tabs(
                tr("Switches, routes, readers and pieces"),
                {
                    QT_TR_NOOP("Switches"): self.switches,
                    QT_TR_NOOP("Routes"): self.routes,
                    QT_TR_NOOP("Readers"): self.readers,
                    QT_TR_NOOP("Pieces"): self.pieces,
                },
            ),
        )
        self.side.add_on_top(self.comparison)


class Frame(QWidget):
    """The window below its menu row."""

    arranged = Signal()
    """The user has drawn a panel to another size."""
    panel_set = PLAN_PANELS

    def __init__(self, panels: Panels, view: PlanView, actions: Mapping[str, QAction]) -> None:
        super().__init__()
        self._panels = panels
        self._across = QSplitter(Qt.Orientation.Horizontal)
        self._split = QSplitter(Qt.Orientation.Vertical)
        self._arrangement = self.panel_set.first
        self._has_modules = False
        self.tools = ToolsRow(actions)
        column = bare(QVBoxLayout(self))
        column.addWidget(self.tools)
        column.addWidget(hairline())
        column.addWidget(panels.message)
        column.addLayout(self._middle(view), 1)
        column.addWidget(hairline())
        column.addWidget(panels.status)
        self.fold_for(NARROW_TRAY_BELOW)
        self._order_focus(view)
        for split in (self._across, self._split):
            split.splitterMoved.connect(lambda _place, _index: self._take_sizes())
        panels.side.moved.connect(self._take_sizes)

    @property
    def arrangement(self) -> Arrangement:
        """How large the panels are, and which are hidden."""
        return self._arrangement

    def arrange(self, arrangement: Arrangement) -> None:
        """Set the panels so; those that need room in a narrow window still fold."""
        self._arrangement = arrangement
        hidden, panels = arrangement.hidden, self._panels
        panels.levels.setVisible("levels" not in hidden)
        self._foot.setVisible("orientations" not in hidden)
        panels.side.setVisible("side" not in hidden)
        panels.side.share(arrangement.shares)
        self._across.setSizes((max(0, self._across.width() - arrangement.side), arrangement.side))
        self._show_tray()
        self._set_diagram()

    def fold_for(self, width: int) -> None:
        """Fold what does not fit into a window of that width, in pixels."""
        narrow = width < NARROW_TRAY_BELOW
        self._panels.tray.set_narrow(narrow)
        self._panels.in_hand.setFixedWidth(NARROW if narrow else WIDE)
        # The diagram needs the height; how the plan may be turned stands in a line meanwhile.
        has_diagram = not self._panels.timing.isHidden()
        # The modules never fold, so what lies beside them is as narrow as in a narrower window.
        lacking = WIDE - NARROW if narrow and not self._panels.modules.isHidden() else 0
        self._panels.orientations.set_folded(width - lacking < FOLDED_STRIP_BELOW or has_diagram)

    def show_timing(self, shown: bool) -> None:
        """Show or hide the timing diagram under the plan."""
        was_shown = not self._panels.timing.isHidden()
        self._panels.timing.setVisible(shown)
        self.fold_for(self.width())
        if shown and not was_shown:
            self._set_diagram()

    def show_modules(self, shown: bool) -> None:
        """Show the modules in place of the parts, or the parts again."""
        self._has_modules = shown
        self._show_tray()

    def _show_tray(self) -> None:
        has_tray = not self._has_modules and "tray" not in self._arrangement.hidden
        self._panels.modules.setVisible(self._has_modules)
        self._panels.tray.setVisible(has_tray)
        self._panels.in_hand.setVisible(has_tray)
        # An empty layout in its place would let the row take no more height than it must.
        self._left.setVisible(has_tray or self._has_modules)
        self.fold_for(self.width())

    def _set_diagram(self) -> None:
        """As high as the user drew it, else a share of the height."""
        high = self._split.height()
        tall = self._arrangement.diagram or min(TALL, round(high * DIAGRAM_SHARE))
        self._split.setSizes((high - tall, tall))

    def _take_sizes(self) -> None:
        """Remember the sizes of what is seen; what is hidden keeps the one that it had."""
        side, timing, was = self._panels.side, self._panels.timing, self._arrangement
        has_side = not side.isHidden()
        self._arrangement = Arrangement(
            side.width() if has_side else was.side,
            side.shares if has_side else was.shares,
            was.diagram if timing.isHidden() else timing.height(),
            was.hidden,
        )
        self.arranged.emit()

    def _order_focus(self, view: PlanView) -> None:
        """Tab goes as the eye does: tools, tray, levels, plan, orientations, then down the side panel."""
        panels = self._panels
        stops = [*focusable(self.tools), *focusable(panels.message), panels.tray]
        stops += [*focusable(panels.modules), panels.levels, view]
        stops += focusable(view.survey_bar)
        stops += focusable(view.run_bar)
        stops += focusable(panels.timing)
        stops += focusable(panels.orientations)
        stops += focusable(panels.comparison)
        for tabs in (panels.side.upper_tabs, panels.side.lower_tabs):
            stops.append(tabs.tabBar())
            stops += [stop for panel in tabs.panels for stop in focusable(panel)]
        for before, after in pairwise(stops):
            QWidget.setTabOrder(before, after)

    def _middle(self, view: PlanView) -> QLayout:
        panels = self._panels
        self._left = QWidget()
        tray = bare(QVBoxLayout(self._left))
        tray.addWidget(panels.tray, 1)
        tray.addWidget(panels.in_hand)
        tray.addWidget(panels.modules, 1)
        panels.modules.hide()
        drawing = bare(QHBoxLayout())
        drawing.addWidget(panels.levels)
        drawing.addWidget(view, 1)
        above = QWidget()
        above.setLayout(drawing)
        split = self._split
        split.setChildrenCollapsible(False)
        split.setHandleWidth(1)
        split.addWidget(above)
        split.addWidget(panels.timing)
        split.setStretchFactor(0, 1)
        split.setStretchFactor(1, 0)
        panels.timing.hide()
        self._foot = QWidget()
        foot = bare(QVBoxLayout(self._foot))
        foot.addWidget(hairline())
        foot.addWidget(panels.orientations)
        middle = QWidget()
        middle.setMinimumWidth(LEAST_PLAN)
        plan = bare(QVBoxLayout(middle))
        plan.addWidget(split, 1)
        plan.addWidget(self._foot)
        row = bare(QHBoxLayout())
        row.addWidget(self._left)
        row.addWidget(hairline("upright"))
        across = self._across
        across.setChildrenCollapsible(False)
        across.setHandleWidth(1)
        across.addWidget(middle)
        across.addWidget(panels.side)
        across.setStretchFactor(0, 1)
        across.setStretchFactor(1, 0)
        row.addWidget(across, 1)
        return row


def bare(box: Box) -> Box:
    """The layout without margins and gaps."""
    box.setContentsMargins(0, 0, 0, 0)
    box.setSpacing(0)
    return box


def focusable(panel: QWidget) -> list[QWidget]:
    """What Tab can reach in a panel, in the order in which it was put there; lists that pop up left out."""
    inside = (w for w in panel.findChildren(QWidget) if w.window() is panel.window())
    return [w for w in inside if w.focusPolicy() & Qt.FocusPolicy.TabFocus]
