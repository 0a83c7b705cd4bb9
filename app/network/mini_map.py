"""A network drawn very small, in lines only, for the start screen."""

from __future__ import annotations

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainterPath, QPolygonF

from app.network.document import spots_of
from app.network.items import Kind
from app.network.lines import routes
from app.network.placing import first_spots
from app.translation import tr
from model.network.network import Network

STATION = 0.45
"""Half of the side of a station, in squares."""


def map_path(network: Network) -> QPainterPath:
    """The lines of all links, one for both ways, and a square for each station; in squares."""
    placed = spots_of(network, {})
    spots = placed if len(set(placed.values())) == len(placed) else first_spots(network)
    path = QPainterPath()
    drawn = set()
    for line in routes(network, spots, lane=0.0).values():
        if frozenset(line) not in drawn:
            drawn.add(frozenset(line))
            path.addPolygon(QPolygonF([QPointF(x, y) for x, y in line]))
    for item, (x, y) in spots.items():
        if item.kind is Kind.STATION:
            path.addRect(x - STATION, y - STATION, 2 * STATION, 2 * STATION)
    return path


def network_words(network: Network) -> str:
    """``7 stations, 40 trips``."""
    return tr(
        "{stations}, {trips}",
        stations=tr("%n station(s)", "", len(network.stations)),
        trips=tr("%n trip(s)", "", len(network.trips)),
    )
