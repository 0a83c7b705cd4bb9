"""Where everything stands in the network window."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from typing import Final

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from app.network.actions import NETWORK_TOOLS
from app.network.document import NetworkDocument
from app.network.map_view import MapView
from app.network.panels.findings_panel import NetworkFindingsPanel
from app.network.panels.readers_panel import ReadersPanel
from app.network.panels.stations_panel import StationsPanel
from app.network.panels.summary import Summary
from app.network.panels.trips_panel import TripsPanel
from app.panels.frame import bare, focusable
from app.panels.look import hairline
from app.panels.message_bar import MessageBar
from app.panels.side_panel import SidePanel, Tabs
from app.panels.status_bar import StatusBar
from app.panels.tools_row import ToolsRow
from app.translation import tr

WIDE_SIDE, NARROW_SIDE = 440, 400
SHARES: Final = (540, 260)
"""Of the height of the side panel, for the lists and the findings."""
NARROW_BELOW: Final = 1280
WORDLESS_TOOLS_BELOW: Final = 1180


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
                {"Trips": self.trips, "Readers": self.readers, "Stations": self.stations},
            ),
            Tabs("Findings", {"Findings": self.findings}),
            SHARES,
        )


class NetworkFrame(QWidget):
    """The window below its menu row."""

    def __init__(self, panels: NetworkPanels, view: MapView, actions: Mapping[str, QAction]) -> None:
        super().__init__()
        self._panels = panels
        self.tools = ToolsRow(actions, NETWORK_TOOLS, ("undo", "redo"), "cards")
        column = bare(QVBoxLayout(self))
        column.addWidget(self.tools)
        column.addWidget(hairline())
        column.addWidget(panels.message)
        column.addLayout(self._middle(view), 1)
        column.addWidget(hairline())
        column.addWidget(panels.status)
        self.fold_for(NARROW_BELOW)
        self._order_focus(view)

    def fold_for(self, width: int) -> None:
        """Fold what does not fit into a window of that width, in pixels."""
        self._panels.side.setFixedWidth(NARROW_SIDE if width < NARROW_BELOW else WIDE_SIDE)
        self.tools.set_words_shown(width >= WORDLESS_TOOLS_BELOW)

    def _middle(self, view: MapView) -> QHBoxLayout:
        drawing = bare(QVBoxLayout())
        drawing.addWidget(view, 1)
        drawing.addWidget(hairline())
        drawing.addWidget(self._panels.summary)
        row = bare(QHBoxLayout())
        row.addLayout(drawing, 1)
        row.addWidget(hairline("upright"))
        row.addWidget(self._panels.side)
        return row

    def _order_focus(self, view: MapView) -> None:
        """Tab goes as the eye does: tools, map, then down the side panel."""
        panels = self._panels
        stops: list[QWidget] = [*focusable(self.tools), *focusable(panels.message), view]
        for tabs in (panels.side.upper_tabs, panels.side.lower_tabs):
            stops.append(tabs.tabBar())
            stops += [stop for panel in tabs.panels for stop in focusable(panel)]
        for before, after in pairwise(stops):
            QWidget.setTabOrder(before, after)
