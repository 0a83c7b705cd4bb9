"""The foot of the tray: the part in hand, how it is set, and the keys that set it."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QRect, QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from app import theme as themes
from app.canvas.symbols.pieces import TURNED
from app.names import part_name
from app.panels.look import font, panel
from app.panels.rows import paint_text
from app.panels.symbols import paint_piece
from app.panels.tray import WIDE
from app.tools.hand import Hand
from app.translation import tr
from model.grid import Cell
from model.parts import RAILS, Part

HEIGHT: Final = 100
SYMBOL: Final = 48
ORIGIN: Final = Cell(0, 0, 0)


def hand_lines(hand: Hand) -> list[str]:
    """How the part in hand is set, and by which keys that changes."""
    turns = hand.part in RAILS or hand.part in TURNED
    lines = [tr("faces {facing}", facing=tr(hand.facing))] if turns else []
    keys = [tr("R turns")] if turns else []
    if hand.part is Part.REPEATER:
        lines.append(tr("delay {delay} ticks", delay=hand.delay))
        keys.append(tr("D delays"))
    if hand.part is Part.COMPARATOR:
        lines.append(tr(hand.mode))
        keys.append(tr("D changes"))
    return [*lines, ", ".join(keys) or tr("a click places it")]


def track_lines(hand: Hand) -> list[str]:
    """How the rail lies that Lay track lays: a drag faces it, and a click takes the facing in hand."""
    return [tr("faces the drag"), tr("a click: {facing}", facing=tr(hand.facing)), tr("R turns")]


class InHand(QWidget):
    """Shows the hand; it is set with the keys and the tray."""

    def __init__(self, hand: Hand, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self.setFixedHeight(HEIGHT)
        self.show_hand(hand)

    def show_hand(self, hand: Hand) -> None:
        """Show what Place places."""
        self._show(hand, hand_lines(hand))

    def show_track(self, hand: Hand) -> None:
        """Show what Lay track lays."""
        track = hand.as_track()
        self._show(track, track_lines(track))

    def _show(self, hand: Hand, lines: list[str]) -> None:
        self._hand, self._lines = hand, lines
        said = ", ".join([part_name(hand.part), *lines])
        self.setAccessibleName(tr("In hand: {said}", said=said))
        self.setToolTip(tr("In hand: {said}", said=said))
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        theme = themes.current()
        painter = QPainter(self)
        painter.fillRect(self.rect(), theme.panel)
        painter.fillRect(0, 0, self.width(), 1, theme.edge)
        piece = self._hand.piece(ORIGIN)
        if self.width() < WIDE // 2:
            symbol = QRect((self.width() - 36) // 2, (HEIGHT - 36) // 2, 36, 36)
            painter.fillRect(symbol, theme.paper)
            paint_piece(painter, symbol, piece, theme)
            return
        paint_text(painter, QRect(18, 4, 160, 18), tr("In hand"), font(11, True), theme.ink2)
        symbol = QRect(18, 26, SYMBOL, SYMBOL)
        painter.fillRect(symbol, theme.paper)
        painter.setPen(theme.edge)
        painter.drawRect(symbol.adjusted(-1, -1, 0, 0))
        paint_piece(painter, symbol, piece, theme)
        line = QRect(82, 22, self.width() - 90, 19)
        paint_text(painter, line, part_name(self._hand.part), font(13, True), theme.ink)
        for text in self._lines:
            line = line.translated(0, 18)
            paint_text(painter, line, text, font(11), theme.ink2)

    def sizeHint(self) -> QSize:
        return QSize(WIDE, HEIGHT)
