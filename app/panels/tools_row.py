"""The row of tools: what the pointer does, steps back and forth, the view, the build sheet."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QSizePolicy, QToolButton, QWidget

from app.actions import TOOLS
from app.commands.letters import plain_text
from app.panels.dark_button import DarkButton
from app.panels.look import hairline, named, panel
from app.translation import QT_TR_NOOP, tr

HEIGHT: Final = 44
STEPS: Final = ("undo", "redo", "turn_chosen", "mirror_chosen")
FITS: Final = ("fit_all", "fit_selection", "zoom_100")
FROM_TRAY: Final = ("module",)
"""Tools that are taken up in the tray, beside the parts: the row has no room for all."""
SHORT_WORDS: Final = {"undo": QT_TR_NOOP("Undo"), "redo": QT_TR_NOOP("Redo")}
"""On these the menu also names the step; the button keeps its size."""


class ToolsRow(QWidget):
    """Buttons of the actions in the table; narrow windows drop the words of the tools."""

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
        self.tools = {
            tool: _tool_button(actions[name]) for tool, name in tools.items() if tool not in FROM_TRAY
        }
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 4, 14, 4)
        row.setSpacing(2)
        for tool in self.tools.values():
            row.addWidget(tool)
        row.addSpacing(6)
        row.addWidget(hairline("upright"))
        row.addSpacing(6)
        for name in steps:
            row.addWidget(_word_button(actions[name], tr(SHORT_WORDS[name]) if name in SHORT_WORDS else None))
        row.addStretch(1)
        for name in FITS:
            row.addWidget(_push_button(actions[name]))
        row.addSpacing(12)
        self.main = _push_button(actions[main], DarkButton)
        row.addWidget(self.main)

    def set_words_shown(self, shown: bool) -> None:
        """Show the tools with their words, or as symbols alone with the words in tooltips."""
        style = (
            Qt.ToolButtonStyle.ToolButtonTextBesideIcon if shown else Qt.ToolButtonStyle.ToolButtonIconOnly
        )
        for tool in self.tools.values():
            tool.setToolButtonStyle(style)


def _tool_button(action: QAction) -> QToolButton:
    button = named(QToolButton(), plain_text(action))
    button.setDefaultAction(action)
    button.setIconSize(QSize(24, 24))
    button.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
    button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    button.setFixedHeight(36)
    return button


def _word_button(action: QAction, word: str | None) -> QToolButton:
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
