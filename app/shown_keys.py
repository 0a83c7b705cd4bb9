"""The keys of actions as the user reads them: those that hold now, and anew when they change."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QWidget

from app.user_keys import entry_of, keys_of


def shown(key: str) -> str:
    """A key as the system writes it."""
    return QKeySequence(key).toString(QKeySequence.SequenceFormat.NativeText)


def key_of(name: str) -> str:
    """The first key of an action now; empty where it has none. Raises KeyError."""
    return shown(next(iter(keys_of(entry_of(name))), ""))


def in_brackets(name: str) -> str:
    """What stands behind the name of an action: `` (L)``, or nothing. Raises KeyError."""
    return f" ({key})" if (key := key_of(name)) else ""


def follow_keys(owner: QObject, show: Callable[[], object]) -> None:
    """Show what says a key: now, and whenever keys change, for as long as the owner is there."""
    _Follower(owner, show)


def keep_tip(widget: QWidget, tip: str, name: str) -> None:
    """A tooltip that ends with the key of an action. Raises KeyError."""
    follow_keys(widget, lambda: widget.setToolTip(f"{tip}{in_brackets(name)}"))


def tell_changed() -> None:
    """Actions have other keys by now."""
    _NEWS.changed.emit()


class _News(QObject):
    changed = Signal()


_NEWS: Final = _News()


class _Follower(QObject):
    """Goes with its owner; a function alone would be called on what is gone."""

    def __init__(self, owner: QObject, show: Callable[[], object]) -> None:
        super().__init__(owner)
        self._show = show
        _NEWS.changed.connect(self.follow)
        show()

    def follow(self) -> None:
        self._show()
