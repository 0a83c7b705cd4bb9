"""Whether things may move on the screen: as the system asks, or less because the user asks for less."""

from __future__ import annotations

from PySide6.QtWidgets import QStyle, QWidget


class _User:
    wants_less = False


def reduce(wanted: bool) -> None:
    """Let nothing glide or run from now on, or as much as the system allows."""
    _User.wants_less = wanted


def is_reduced(widget: QWidget) -> bool:
    """Whether the user or the system asks for no animation."""
    hint = QStyle.StyleHint.SH_Widget_Animation_Duration
    return _User.wants_less or widget.style().styleHint(hint, None, widget) == 0
