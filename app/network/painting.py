"""Paints the map, layer by layer, from a description of what it shows."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import pairwise

from PySide6.QtCore import QLineF, QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen

from app.canvas.geometry import Viewport
from app.canvas.ground import paint_grid
from app.canvas.symbols import WayKind, draw_cursor, draw_marker, draw_ring, ring_of
from app.canvas.symbols.lettering import capital, draw_text
from app.canvas.symbols.network import (
    INSIDE_FROM,
    Passage,
    draw_band,
    draw_band_chevrons,
    draw_head,
    draw_junction,
    draw_link,
    draw_passages,
    draw_station,
    junction_radius,
    line_path,
    middle_of,
    passage_path,
    station_half,
    wide_line,
)
from app.network.ghost import Ghost
from app.network.items import Item, Kind
from app.network.labels import Label
from app.network.lit import NOTHING_LIT, Lit
from app.network.passages import Through
from app.network.picture import Joint, Picture
from app.theme import Theme
from model.network.network import Spot

SMALL_MARKERS_BELOW = 20
"""px a square."""
HEADS_FROM = 12
ONE = ring_of({(0, 0)})
"""About a single square."""
MANY_LINES = 800
"""Links in sight above which they are drawn plainly."""
ONE_WAY_HEADS_FROM = 4
"""px a square from which links have heads, and those that have none beside them the other way."""
Place = tuple[float, float]


@dataclass(frozen=True)
class Shown:
    """All that one picture of the map depends on."""

    size: QRect
    view: Viewport
    theme: Theme
    picture: Picture
    passages: Mapping[Item, Sequence[Through]]
    labels: Sequence[Label] = ()
    lit: Lit = NOTHING_LIT
    selection: frozenset[Item] = frozenset()
    hovered: Item | None = None
    ghost: Ghost | None = None
    band: tuple[Spot, Spot] | None = None
    cursor: Place | None = None
    """Where the keyboard's cursor is drawn."""
    markers: Mapping[Item, tuple[str, int]] = field(default_factory=dict)
    """The gravest severity of each, and how many findings there are."""

    @property
    def c(self) -> float:
        """px a square."""
        return float(self.view.scale)

    def point(self, spot: Spot) -> QPointF:
        """A place in px; a crossing of the grid lies on the corner of four squares."""
        return QPointF(
            self.view.origin_x + spot[0] * self.view.scale, self.view.origin_y + spot[1] * self.view.scale
        )

    def points(self, line: Sequence[Spot]) -> list[QPointF]:
        """A line in px, kept to whole pixels so that what lies level is crisp."""
        half = 0.5 if wide_line(self.c) % 2 else 0.0
        return [QPointF(round(at.x()) + half, round(at.y()) + half) for at in map(self.point, line)]


def paint_map(painter: QPainter, shown: Shown) -> None:
    """The whole map."""
    _paint_grid(painter, shown)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    seen = _seen_lines(shown)
    if len(seen) > MANY_LINES:
        _paint_plainly(painter, shown)
        seen = [(index, line) for index, line in seen if index in shown.lit.links or _is_marked(shown, index)]
    paths = {index: line_path(shown.points(line), shown.c) for index, line in seen}
    for index, kind in shown.lit.links.items():
        if index in paths:
            draw_band(painter, paths[index], shown.c, kind, shown.theme)
    _paint_links(painter, shown, paths)
    _paint_nodes(painter, shown)
    turns = _turns(shown)
    for path, kind in turns:
        draw_band(painter, path, shown.c, kind, shown.theme)
    _paint_passages(painter, shown)
    for path, _kind in turns:
        draw_link(painter, path, shown.c, shown.theme.ink)
    _paint_chevrons(painter, shown, paths)
    _paint_rings(painter, shown)
    if shown.ghost is not None:
        paint_ghost(painter, shown, shown.ghost)
    _paint_labels(painter, shown)
    _paint_markers(painter, shown)
    _paint_pointers(painter, shown)


def _paint_grid(painter: QPainter, shown: Shown) -> None:
    view = shown.view
    area = view.area(0, 0, shown.size.width(), shown.size.height())
    left, top = view.corner(area.west, area.north)
    painter.save()
    painter.translate(left, top)
    paint_grid(painter, area, view.scale, shown.theme)
    painter.restore()


def _seen_lines(shown: Shown) -> list[tuple[int, tuple[Spot, ...]]]:
    view = shown.view
    left, top = view.place(-view.scale, -view.scale)
    right, bottom = view.place(shown.size.width() + view.scale, shown.size.height() + view.scale)
    return [
        (index, shown.picture.routes[index])
        for index, (west, north, east, south) in _bounds(shown.picture)
        if east >= left and west <= right and south >= top and north <= bottom
    ]


@lru_cache(maxsize=2)
def _bounds(picture: Picture) -> list[tuple[int, tuple[float, float, float, float]]]:
    """The box of each line, in squares."""
    found = []
    for index, line in picture.routes.items():
        xs, ys = [x for x, _ in line], [y for _, y in line]
        found.append((index, (min(xs), min(ys), max(xs), max(ys))))
    return found


@lru_cache(maxsize=2)
def _plain_lines(picture: Picture, scale: int) -> list[QLineF]:
    """All lines at a scale, about the place where x = y = 0 lies at (0, 0)."""
    return [
        QLineF(round(a[0] * scale), round(a[1] * scale), round(b[0] * scale), round(b[1] * scale))
        for line in picture.routes.values()
        for a, b in pairwise(line)
    ]


def _paint_plainly(painter: QPainter, shown: Shown) -> None:
    """Very many links in one stroke, without rounded bends and heads, which nobody could tell apart."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    painter.setPen(QPen(shown.theme.ink, wide_line(shown.c)))
    painter.translate(shown.view.origin_x, shown.view.origin_y)
    painter.drawLines(_plain_lines(shown.picture, shown.view.scale))
    painter.restore()


def _is_marked(shown: Shown, link: int) -> bool:
    item = Item(Kind.LINK, link)
    return item in shown.selection or item == shown.hovered


def _paint_links(painter: QPainter, shown: Shown, paths: Mapping[int, QPainterPath]) -> None:
    theme, c = shown.theme, shown.c
    chosen = {item.place for item in shown.selection if item.kind is Kind.LINK}
    for index in chosen & paths.keys():
        wide = wide_line(c)
        for colour, more in ((theme.ink, 8), (theme.pick or theme.paper, 6)):
            painter.strokePath(paths[index], QPen(colour, wide + more, c=Qt.PenCapStyle.FlatCap))
    hovered = shown.hovered.place if shown.hovered and shown.hovered.kind is Kind.LINK else -1
    for index, path in paths.items():
        if index == hovered and index not in chosen:
            painter.strokePath(path, QPen(theme.edge2, wide_line(c) + 4, c=Qt.PenCapStyle.FlatCap))
        draw_link(painter, path, c, theme.ink)
        has_head = c >= HEADS_FROM or (c >= ONE_WAY_HEADS_FROM and index in shown.picture.one_way)
        if has_head and index not in shown.lit.links:
            at, towards = middle_of(shown.points(shown.picture.routes[index]))
            draw_head(painter, at, towards, c, theme.ink)


def _paint_nodes(painter: QPainter, shown: Shown) -> None:
    for item, spot in shown.picture.spots.items():
        at = shown.points((spot,))[0]
        if not QRectF(shown.size).adjusted(-shown.c, -shown.c, shown.c, shown.c).contains(at):
            continue
        if item.kind is Kind.STATION:
            draw_station(painter, at.x(), at.y(), shown.c, shown.theme, filled=item in shown.lit.ends)
        else:
            draw_junction(painter, at.x(), at.y(), shown.c, shown.theme)


def _paint_passages(painter: QPainter, shown: Shown) -> None:
    """The ways through junctions, where they are large enough to be told apart."""
    if shown.c < INSIDE_FROM:
        return
    for item, passages in shown.passages.items():
        if QRectF(shown.size).contains(shown.point(shown.picture.spots[item])):
            inner = [_passage(shown, through) for through in passages]
            draw_passages(painter, shown.c, shown.theme, inner)


def _passage(shown: Shown, through: Through) -> Passage:
    enter, leave = through.enter, through.leave
    return Passage(
        shown.point(enter.at),
        QPointF(*enter.towards),
        shown.point(leave.at),
        QPointF(*leave.towards),
        through.kind,
    )


def _turns(shown: Shown) -> list[tuple[QPainterPath, WayKind]]:
    """The lit ways through junctions."""
    picture = shown.picture
    found = []
    for into, out, kind in shown.lit.turns:
        item = picture.ends_of(into)[1]
        if item is None or item.kind is not Kind.JUNCTION or not {into, out} <= picture.routes.keys():
            continue
        through = Through(picture.joint_in(item, into), picture.joint_out(item, out), "default")
        found.append((passage_path(_passage(shown, through)), kind))
    return found


def _paint_chevrons(painter: QPainter, shown: Shown, paths: Mapping[int, QPainterPath]) -> None:
    if shown.c < HEADS_FROM:
        return
    for index, kind in shown.lit.links.items():
        if index in paths:
            at, towards = middle_of(shown.points(shown.picture.routes[index]))
            draw_band_chevrons(painter, at, towards, shown.c, kind, shown.theme)


def reach_of(item: Item, c: float) -> float:
    """How far a node's symbol reaches from its middle, in px."""
    return station_half(c) if item.kind is Kind.STATION else junction_radius(c)


def _paint_rings(painter: QPainter, shown: Shown) -> None:
    for item in shown.selection:
        if item.is_node and item in shown.picture.spots:
            _ring(painter, shown, shown.picture.spots[item], reach_of(item, shown.c))
    joint = _marked_arm(shown)
    if joint is not None:
        at = shown.point(joint.at)
        half = max(5.0, 0.16 * shown.c)
        draw_ring(painter, round(at.x() - half), round(at.y() - half), round(2 * half), ONE, shown.theme)


def _ring(painter: QPainter, shown: Shown, spot: Spot, reach: float) -> None:
    at = shown.points((spot,))[0]
    half = round(reach) + 1
    draw_ring(painter, at.x() - half, at.y() - half, 2 * half, ONE, shown.theme)


def _marked_arm(shown: Shown) -> Joint | None:
    """Where the reader that is shown stands."""
    picture = shown.picture
    link = picture.link_into(shown.lit.reader) if shown.lit.reader else None
    item = picture.ends_of(link)[1] if link is not None else None
    return picture.joint_in(item, link) if item is not None and link is not None else None


def paint_ghost(painter: QPainter, shown: Shown, ghost: Ghost) -> None:
    """Hollow lines, and outlines in a narrow dash; a cross where something cannot be."""
    theme, c = shown.theme, shown.c
    wide = wide_line(c)
    painter.setBrush(theme.paper)
    for line in ghost.lines:
        path = line_path(shown.points(line), c)
        for colour, width in ((theme.ink2, wide + 2), (theme.paper, wide)):
            painter.strokePath(path, QPen(colour, width, c=Qt.PenCapStyle.FlatCap))
    pen = QPen(theme.ink2, max(1.0, wide / 2))
    pen.setDashPattern([3, 2])
    painter.setPen(pen)
    for spot in ghost.stations:
        half = station_half(c)
        painter.drawRect(
            QRectF(shown.point(spot) - QPointF(half, half), shown.point(spot) + QPointF(half, half))
        )
    for spot in ghost.junctions:
        painter.drawEllipse(shown.point(spot), junction_radius(c), junction_radius(c))
    painter.setPen(QPen(theme.ink, max(1.0, wide / 2)))
    for spot in ghost.refused:
        at, r = shown.point(spot), 0.3 * c
        painter.drawLines([QLineF(at.x() - r, at.y() - r, at.x() + r, at.y() + r)])
        painter.drawLines([QLineF(at.x() - r, at.y() + r, at.x() + r, at.y() - r)])


def _paint_labels(painter: QPainter, shown: Shown) -> None:
    for label in shown.labels:
        rect, em = label.rect, 12.0 if label.bold else 11.0
        painter.setOpacity(0.82)
        painter.fillRect(rect, shown.theme.paper)
        painter.setOpacity(1.0)
        colour = shown.theme.ink if label.bold else shown.theme.ink2
        baseline = rect.center().y() + capital(em) / 2
        draw_text(painter, rect.left() + 2, baseline, label.text, em, colour, label.bold)


def _paint_markers(painter: QPainter, shown: Shown) -> None:
    small = shown.c < SMALL_MARKERS_BELOW
    for item, (severity, count) in shown.markers.items():
        at = place_of_marker(shown, item)
        if at is not None and not (small and severity == "note"):
            draw_marker(
                painter,
                at.x(),
                at.y(),
                severity,
                shown.theme,
                10.0 if small else 16.0,
                count=1 if small else count,
            )


def place_of_marker(shown: Shown, item: Item) -> QPointF | None:
    """At the upper right of a node, or a quarter along a link."""
    if item.is_node:
        reach = reach_of(item, shown.c)
        spot = shown.picture.spots.get(item)
        return None if spot is None else shown.point(spot) + QPointF(reach, -reach) * 0.9
    line = shown.picture.routes.get(item.place)
    return None if line is None else line_path(shown.points(line), shown.c).pointAtPercent(0.3)


def _paint_pointers(painter: QPainter, shown: Shown) -> None:
    if shown.band is not None:
        painter.setPen(QPen(shown.theme.ink, 1))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(QRectF(shown.point(shown.band[0]), shown.point(shown.band[1])).normalized().toRect())
    if shown.cursor is not None:
        at = shown.point(shown.cursor)
        half = round(shown.c / 2)
        draw_cursor(painter, round(at.x()) - half, round(at.y()) - half, 2 * half, shown.theme)
