"""What the help is asked about: where the focus is says what the user looks at."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from app.actions import TOOLS
from app.help.drawings import module_key
from app.help.rules import network_key, rule_key
from app.network.actions import NETWORK_TOOLS
from app.panels.tray import part_of

if TYPE_CHECKING:
    from app.network.window import NetworkWindow
    from app.window import MainWindow


def topic_of(window: MainWindow) -> str | None:
    """The entry of the chosen finding, part or module, or of the tool in use; ``None``: the first."""
    panels, view = window.panels, window.view
    if _has_focus(panels.findings) and panels.findings.finding is not None:
        return rule_key(panels.findings.finding.rule)
    item = panels.tray.currentItem()
    part = None if item is None else part_of(item)
    if _has_focus(panels.tray) and part is not None:
        return f"part {part}"
    if _has_focus(panels.modules) and panels.modules.list.module is not None:
        return module_key(panels.modules.list.module)
    if _has_focus(view) and view.tool in TOOLS:
        return f"tool {view.tool}"
    return None


def network_topic_of(window: NetworkWindow) -> str | None:
    """The entry of the chosen finding, or of the tool in use; ``None``: that of choosing."""
    finding = window.panels.findings.finding
    if _has_focus(window.panels.findings) and finding is not None:
        return network_key(finding.finding.rule)
    return f"map tool {window.view.tool}" if window.view.tool in NETWORK_TOOLS else None


def _has_focus(widget: QWidget) -> bool:
    focus = widget.window().focusWidget()
    return focus is not None and (focus is widget or widget.isAncestorOf(focus))
