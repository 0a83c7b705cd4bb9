"""Words on the canvas: the preview's chip, labels, and what an empty plan says."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPen

from app.canvas.symbols.lettering import capital, draw_text, elided, width
from app.shown_keys import key_of
from app.theme import Theme
from app.translation import QT_TR_NOOP, tr
from app.user_keys import entry_of
from model.grid import VECTORS, Heading

CHIP: Final = 28
"""Height of the chip, in px."""
BAR: Final = 4
EDGE: Final = 12
"""px between the chips and the edges of the plan view."""
RADIUS: Final = 2
SMALL: Final = 11
NORMAL: Final = 12
HEADING: Final = 16
END_WORDS: Final = QT_TR_NOOP("Esc ends")
HINTS: Final = (
    ("tool_lay", QT_TR_NOOP("then drag: lays track")),
    ("tool_place", QT_TR_NOOP("then click: places the part in hand")),
    ("open", QT_TR_NOOP("opens a plan")),
)
"""Actions, each with what comes of it."""
KEY_ROOM: Final = 60
"""px for the keys of the hints; more where a key is long."""


def draw_panel(painter: QPainter, box: QRectF, theme: Theme) -> None:
    """A raised panel with a thin outline."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    painter.setPen(QPen(theme.edge2, 1))
    painter.setBrush(theme.raised)
    painter.drawRoundedRect(box.adjusted(0.5, 0.5, -0.5, -0.5), RADIUS, RADIUS)
    painter.restore()


def draw_preview_chip(painter: QPainter, x: float, y: float, text: str, widest: float, theme: Theme) -> None:
    """What is being previewed, and that Esc ends it; its upper left corner at (x, y)."""
    end = width(tr(END_WORDS), SMALL)
    shown = elided(text, NORMAL, widest - end - 48)
    words = width(shown, NORMAL)
    box = QRectF(x, y, BAR + 12 + words + 12 + 1 + 8 + end + 8, CHIP)
    draw_panel(painter, box, theme)
    painter.fillRect(QRectF(x, y, BAR, CHIP), theme.live)
    baseline = y + CHIP / 2 + capital(NORMAL) / 2
    draw_text(painter, x + BAR + 12, baseline, shown, NORMAL, theme.ink)
    line = x + BAR + 12 + words + 12
    painter.fillRect(QRectF(round(line), y + 6, 1, CHIP - 12), theme.edge)
    draw_text(painter, line + 9, baseline, tr(END_WORDS), SMALL, theme.ink2)


def label_box(at: QPointF, towards: Heading, text: str) -> QRectF:
    """The room of a short text that begins at a point and lies in a heading from it."""
    wide, high = width(text, SMALL) + 8, SMALL + 6.0
    dx, dz = VECTORS[towards]
    middle = at + QPointF(dx * wide / 2, dz * high / 2)
    return QRectF(middle.x() - wide / 2, middle.y() - high / 2, wide, high)


def draw_label(painter: QPainter, box: QRectF, text: str, theme: Theme) -> None:
    """A short text in its room, on a patch of paper."""
    painter.fillRect(box, theme.paper)
    draw_text(painter, box.left() + 4, box.center().y() + capital(SMALL) / 2, text, SMALL, theme.ink)


def draw_empty_hint(painter: QPainter, x: float, y: float, level: int, theme: Theme) -> None:
    """What an empty plan says, on a patch of paper with its upper left corner at (x, y)."""
    below = tr("Level {level} · north is up", level=level).replace("-", "\u2212")
    draw_hint(painter, x, y, HINTS, below, theme)


def draw_hint(
    painter: QPainter, x: float, y: float, hints: Sequence[tuple[str, str]], below: str, theme: Theme
) -> None:
    """The keys of actions, each with what comes of it, and a line below them."""
    last = 57 + 27 * len(hints)
    keys = [_key_words(name) for name, _does in hints]
    room = max(KEY_ROOM, *(width(key, SMALL, bold=True) + 24 for key in keys))
    painter.fillRect(QRectF(x, y, 224 + room, last + (10 if below else -15)), theme.paper)
    draw_text(painter, x + 8, y + 28, tr("Nothing here yet"), HEADING, theme.ink, bold=True)
    for row, (key, (_name, does)) in enumerate(zip(keys, hints, strict=True)):
        baseline = y + 58 + row * 27
        _draw_key(painter, x + 8, baseline, key, theme)
        draw_text(painter, x + 8 + room, baseline, tr(does), NORMAL, theme.ink)
    draw_text(painter, x + 8, y + last, below, SMALL, theme.ink2)


def _key_words(name: str) -> str:
    """The key of an action; where it has none, its name, by which the menus know it."""
    return key_of(name) or entry_of(name).text


def _draw_key(painter: QPainter, x: float, baseline: float, key: str, theme: Theme) -> None:
    box = QRectF(x, baseline - 15, width(key, SMALL, bold=True) + 14, 21)
    draw_panel(painter, box, theme)
    draw_text(painter, x + 7, baseline, key, SMALL, theme.ink, bold=True)
