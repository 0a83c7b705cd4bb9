"""Where everything stands in the network window."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from typing import Final

import msgspec
from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QSplitter, QVBoxLayout, QWidget

from app.network.actions import NETWORK_TOOLS
from app.network.document import NetworkDocument
from app.network.map_view import MapView
from app.network.panels.findings_panel import NetworkFindingsPanel
from app.network.panels.readers_panel import ReadersPanel
from app.network.panels.stations_panel import StationsPanel
from app.network.panels.summary import Summary
from app.network.panels.trips_panel import TripsPanel
from app.panels.arrangement import Arrangement, PanelSet
from app.panels.frame import LEAST_PLAN, bare, focusable
from app.panels.look import hairline
from app.panels.message_bar import MessageBar
from app.panels.side_panel import SidePanel, Tabs
from app.panels.status_bar import StatusBar
from app.panels.tools_row import ToolsRow
from app.translation import QT_TR_NOOP, tr

WIDE_SIDE, NARROW_SIDE = 440, 408
SHARES: Final = (540, 260)
"""Of the height of the side panel, for the lists and the findings."""
NARROW_BELOW: Final = 1280
NETWORK_PANEL_SET: Final = PanelSet("network_panels", ("summary", "side"), Arrangement(side=0, shares=SHARES))


class NetworkPanels:
    """All panels of one network, not yet placed."""

    def __init__(self, document: NetworkDocument) -> None:
        self.trips = TripsPanel(document)
        self.readers = ReadersPanel(document)
        self.stations = StationsPanel(document)
        self.findings = NetworkFindingsPanel(document)
        self.summary = Summary(document)
        self.status = StatusBar()
        self.message = MessageBar()
        self.side = SidePanel(
            Tabs(
                tr("Trips, readers and stations"),
                {
                    QT_TR_NOOP("Trips"): self.trips,
                    QT_TR_NOOP("Readers"): self.readers,
                    QT_TR_NOOP("Stations"): self.stations,
                },
            ),
            Tabs(tr("Findings"), {QT_TR_NOOP("Findings"): self.findings}),
            SHARES,
        )


class NetworkFrame(QWidget):
    """The window below its menu row."""

    arranged = Signal()
    """The user has drawn a panel to another size."""
    panel_set = NETWORK_PANEL_SET

    def __init__(self, panels: NetworkPanels, view: MapView, actions: Mapping[str, QAction]) -> None:
        super().__init__()
        self._panels = panels
        self._across = QSplitter(Qt.Orientation.Horizontal)
        self._foot = QWidget()
        self._arrangement = self.panel_set.first
        self.tools = ToolsRow(actions, NETWORK_TOOLS, ("undo", "redo"), "cards")
        column = bare(QVBoxLayout(self))
        column.addWidget(self.tools)
        column.addWidget(hairline())
        column.addWidget(panels.message)
        column.addWidget(self._middle(view), 1)
        column.addWidget(hairline())
        column.addWidget(panels.status)
        self.fold_for(NARROW_BELOW)
        self._order_focus(view)
        self._across.splitterMoved.connect(lambda _place, _index: self._take(side=panels.side.width()))
        panels.side.moved.connect(lambda: self._take(shares=panels.side.shares))

    @property
    def arrangement(self) -> Arrangement:
        """How large the panels are, and which are hidden."""
        return self._arrangement

    def arrange(self, arrangement: Arrangement) -> None:
        """Set the panels so."""
        self._arrangement = arrangement
        self._foot.setVisible("summary" not in arrangement.hidden)
        self._panels.side.setVisible("side" not in arrangement.hidden)
        self._panels.side.share(arrangement.shares)
        self.fold_for(self.width())

    def fold_for(self, width: int) -> None:
        """Fold what does not fit into a window of that width, in pixels."""
        usual = NARROW_SIDE if width < NARROW_BELOW else WIDE_SIDE
        side = self._arrangement.side or max(usual, self._panels.trips.table.wanted_width)
        self._across.setSizes((max(0, width - side), side))

    def _take(self, **sizes: int | tuple[int, int]) -> None:
        """Remember what the user drew to another size."""
        self._arrangement = msgspec.structs.replace(self._arrangement, **sizes)
        self.arranged.emit()

    def _middle(self, view: MapView) -> QWidget:
        foot = bare(QVBoxLayout(self._foot))
        foot.addWidget(hairline())
        foot.addWidget(self._panels.summary)
        drawing = QWidget()
        drawing.setMinimumWidth(LEAST_PLAN)
        column = bare(QVBoxLayout(drawing))
        column.addWidget(view, 1)
        column.addWidget(self._foot)
        self._panels.side.setMinimumWidth(NARROW_SIDE)
        across = self._across
        across.setChildrenCollapsible(False)
        across.setHandleWidth(1)
        across.addWidget(drawing)
        across.addWidget(self._panels.side)
        across.setStretchFactor(0, 1)
        across.setStretchFactor(1, 0)
        return across

    def _order_focus(self, view: MapView) -> None:
        """Tab goes as the eye does: tools, map, then down the side panel."""
        panels = self._panels
        stops: list[QWidget] = [*focusable(self.tools), *focusable(panels.message), view]
        for tabs in (panels.side.upper_tabs, panels.side.lower_tabs):
            stops.append(tabs.tabBar())
            stops += [stop for panel in tabs.panels for stop in focusable(panel)]
        for before, after in pairwise(stops):
            QWidget.setTabOrder(before, after)
