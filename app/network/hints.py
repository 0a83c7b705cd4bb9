"""Words over the map: the chip of what is lit, its key, the numbers of waybills, what an empty map says."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath

from app.canvas.chips import EDGE, draw_hint, draw_panel, draw_preview_chip
from app.canvas.symbols import WayKind
from app.canvas.symbols.lettering import draw_centred, draw_text, width
from app.canvas.symbols.network import draw_band, draw_band_chevrons, draw_link
from app.network.ghost import Ghost
from app.network.painting import Shown, paint_ghost
from app.network.picture import Joint
from app.translation import QT_TR_NOOP, tr

KEY_ROW: Final = 24
SAMPLE: Final = 56.0
LETTERS: Final = 11
DISC: Final = 8.0
HINTS: Final = (
    ("tool_station", QT_TR_NOOP("then click: places a station")),
    ("tool_junction", QT_TR_NOOP("then click: places a junction")),
    ("tool_link", QT_TR_NOOP("then drag: joins two of them")),
    ("tool_trip", QT_TR_NOOP("then drag: says who rides")),
)
HINT_LINES: Final = (((-2.0, -3.0), (3.0, -3.0), (6.0, 0.0), (6.0, 3.0)),)


def paint_over(painter: QPainter, shown: Shown) -> None:
    """Everything that is said over the map."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    if not shown.picture.spots and shown.ghost is None:
        _paint_empty(painter, shown)
    if shown.lit.title:
        _paint_numbers(painter, shown)
        draw_preview_chip(
            painter, EDGE, EDGE, shown.lit.title, shown.size.width() - 2 * EDGE - 20, shown.theme
        )
        _paint_key(painter, shown)


def _paint_numbers(painter: QPainter, shown: Shown) -> None:
    """Where each waybill is taken, in order."""
    picture = shown.picture
    for call in shown.lit.calls:
        link = picture.link_into(call.reader)
        item = picture.ends_of(link)[1] if link is not None else None
        if link is None or item is None:
            continue
        at = _disc_place(shown, picture.joint_in(item, link))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(shown.theme.paper)
        painter.drawEllipse(at, DISC + 1.5, DISC + 1.5)
        painter.setBrush(shown.theme.ink)
        painter.drawEllipse(at, DISC, DISC)
        draw_centred(painter, at, str(call.place), 11, shown.theme.paper, bold=True)


def _disc_place(shown: Shown, joint: Joint) -> QPointF:
    return shown.point(joint.at)


def _paint_key(painter: QPainter, shown: Shown) -> None:
    """Which band is which, at the lower left."""
    kinds = [kind for kind in WayKind if kind in shown.lit.links.values()]
    if not kinds:
        return
    words = dict(zip((WayKind.IDLE, WayKind.CALLED), map(tr, shown.lit.words), strict=True))
    wide = SAMPLE + 40 + max(width(words[kind], LETTERS) for kind in kinds)
    high = KEY_ROW * len(kinds) + 8.0
    box = QRectF(EDGE, shown.size.height() - EDGE - high, wide, high)
    draw_panel(painter, box, shown.theme)
    for row, kind in enumerate(kinds):
        y = round(box.top() + 4 + (row + 0.5) * KEY_ROW)
        path = QPainterPath(QPointF(box.left() + 12, y))
        path.lineTo(box.left() + 12 + SAMPLE, y)
        draw_band(painter, path, 24, kind, shown.theme)
        draw_link(painter, path, 24, shown.theme.ink)
        middle = QPointF(box.left() + 12 + SAMPLE / 2, y)
        draw_band_chevrons(painter, middle, QPointF(1, 0), 24, kind, shown.theme)
        draw_text(painter, box.left() + SAMPLE + 26, y + 4, words[kind], LETTERS, shown.theme.ink)


def _paint_empty(painter: QPainter, shown: Shown) -> None:
    """A ghost of a line shows what a drag makes; below it what to do."""
    ghost = Ghost(HINT_LINES, stations=((-2.0, -3.0),), junctions=((6.0, 3.0),))
    paint_ghost(painter, shown, ghost)
    corner = shown.point((0.0, 0.0))
    draw_hint(
        painter,
        corner.x() - 140,
        corner.y() - 90,
        HINTS,
        "",
        shown.theme,
    )
