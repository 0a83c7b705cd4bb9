"""The button of a tool: its symbol, and its word where there is room."""

from __future__ import annotations

from typing import Final

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QFontMetrics, QIcon, QPaintEvent
from PySide6.QtWidgets import QStyle, QStyleOptionToolButton, QStylePainter, QToolButton

from app import theme as themes
from app.panels.look import font

HEIGHT: Final = 36
SYMBOL: Final = 24
BESIDE: Final = 7
"""px left and right of symbol and word."""
GAP: Final = 7
"""px between symbol and word; Qt leaves 4, and symbols that reach their edge would touch the word."""
TEXT: Final = 12


class ToolButton(QToolButton):
    """As wide while its tool is taken up, and its word bold, as before: taking one up moves no other."""

    def __init__(self) -> None:
        super().__init__()
        self._has_word = True
        self.setIconSize(QSize(SYMBOL, SYMBOL))
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setFixedHeight(HEIGHT)

    def show_word(self, shown: bool) -> None:
        """Show the word beside the symbol, or the symbol alone."""
        self._has_word = shown
        self.updateGeometry()
        self.update()

    def width_with(self, word: bool) -> int:
        """The width that it needs with its word or without, in px."""
        words = GAP + QFontMetrics(font(TEXT, True)).horizontalAdvance(self.text()) if word else 0
        return BESIDE + SYMBOL + words + BESIDE

    def sizeHint(self) -> QSize:
        return QSize(self.width_with(self._has_word), HEIGHT)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        option = QStyleOptionToolButton()
        self.initStyleOption(option)
        option.icon, option.text = QIcon(), ""
        painter = QStylePainter(self)
        painter.drawComplexControl(QStyle.ComplexControl.CC_ToolButton, option)
        symbol = QRect(BESIDE, (HEIGHT - SYMBOL) // 2, SYMBOL, SYMBOL)
        mode = QIcon.Mode.Normal if self.isEnabled() else QIcon.Mode.Disabled
        self.icon().paint(painter, symbol, Qt.AlignmentFlag.AlignCenter, mode)
        if self._has_word:
            theme = themes.current()
            painter.setFont(font(TEXT, self.isChecked()))
            painter.setPen(theme.ink if self.isEnabled() else theme.ink3)
            room = QRect(symbol.right() + 1 + GAP, 0, self.width(), HEIGHT)
            painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, self.text())
