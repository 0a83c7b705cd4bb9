"""The row of tools: what the pointer does, steps back and forth, the view, the build sheet."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QResizeEvent
from PySide6.QtWidgets import QAbstractButton, QHBoxLayout, QPushButton, QSizePolicy, QToolButton, QWidget

from app.actions import TOOLS
from app.commands.letters import plain_text
from app.panels.dark_button import DarkButton
from app.panels.look import hairline, named, panel
from app.panels.tool_button import ToolButton
from app.translation import QT_TR_NOOP, tr

HEIGHT: Final = 44
STEPS: Final = ("undo", "redo", "turn_chosen", "mirror_chosen")
FITS: Final = ("fit_all", "fit_selection", "zoom_100")
FROM_TRAY: Final = ("module",)
"""Tools that are taken up in the tray, beside the parts: the row has no room for all."""
SHORT_WORDS: Final = {"undo": QT_TR_NOOP("Undo"), "redo": QT_TR_NOOP("Redo")}
"""On these the menu also names the step; the button keeps its size."""


LEFT, RIGHT, GAP = 12, 14, 2
APART: Final = 6
"""px on both sides of the line between tools and steps."""
BEFORE_MAIN: Final = 12
LEAVE_FIRST: Final = ("zoom_100", "fit_selection", "fit_all", "mirror_chosen", "turn_chosen", "redo", "undo")
"""What gives way where even the symbols of the tools leave too little room; the menus have all of it."""


class ToolsRow(QWidget):
    """Buttons of the actions in the table; where room lacks, the words of the tools go first."""

    def __init__(
        self,
        actions: Mapping[str, QAction],
        tools: Mapping[str, str] = TOOLS,
        steps: Sequence[str] = STEPS,
        main: str = "build_sheet",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        panel(self)
        self.setFixedHeight(HEIGHT)
        # The row takes the room that there is, and does not keep the window from being made narrower.
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.tools = {
            tool: _tool_button(actions[name]) for tool, name in tools.items() if tool not in FROM_TRAY
        }
        self.others: dict[str, QAbstractButton] = {}
        self.others |= {name: _word_button(actions[name], SHORT_WORDS.get(name)) for name in steps}
        self.others |= {name: _push_button(actions[name]) for name in FITS}
        self.main = _push_button(actions[main], DarkButton)
        row = QHBoxLayout(self)
        row.setContentsMargins(LEFT, 4, RIGHT, 4)
        row.setSpacing(GAP)
        for tool in self.tools.values():
            row.addWidget(tool)
        row.addSpacing(APART)
        row.addWidget(hairline("upright"))
        row.addSpacing(APART)
        for name in steps:
            row.addWidget(self.others[name])
        row.addStretch(1)
        for name in FITS:
            row.addWidget(self.others[name])
        row.addSpacing(BEFORE_MAIN)
        row.addWidget(self.main)

    def fold_for(self, width: int) -> None:
        """Show as much as a width in px has room for."""
        words = self._need(True, ()) <= width
        leave = [name for name in LEAVE_FIRST if name in self.others]
        count = next((n for n in range(len(leave)) if self._need(words, leave[:n]) <= width), len(leave))
        for tool in self.tools.values():
            tool.show_word(words)
        for name, button in self.others.items():
            button.setVisible(name not in leave[:count])

    def _need(self, words: bool, without: Sequence[str]) -> int:
        """The width in px that all buttons but those need."""
        widths = [tool.width_with(words) for tool in self.tools.values()]
        kept = [button for name, button in self.others.items() if name not in without]
        widths += [button.sizeHint().width() for button in (*kept, self.main)]
        around = LEFT + RIGHT + 2 * (APART + GAP) + 1 + BEFORE_MAIN + GAP
        return sum(widths) + GAP * len(widths) + around

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.fold_for(event.size().width())


def _tool_button(action: QAction) -> ToolButton:
    button = named(ToolButton(), plain_text(action))
    button.setDefaultAction(action)
    return button


def _word_button(action: QAction, short: str | None) -> QToolButton:
    word = None if short is None else tr(short)
    button = named(QToolButton(), word or plain_text(action))
    button.setDefaultAction(action)
    button.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextOnly)
    button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    button.setFixedHeight(28)
    if word is not None:
        button.setText(word)
        action.changed.connect(lambda: button.setText(word))
    return button


def _push_button(action: QAction, kind: type[QPushButton] = QPushButton) -> QPushButton:
    button = named(kind(plain_text(action)), plain_text(action))
    action.changed.connect(lambda: button.setToolTip(action.toolTip()))
    button.setToolTip(action.toolTip())
    button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    button.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
    button.clicked.connect(action.trigger)
    button.setEnabled(action.isEnabled())
    action.enabledChanged.connect(button.setEnabled)
    return button
