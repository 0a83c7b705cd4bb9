"""What is kept between two runs: recent files, the theme, export choices, the window."""

from __future__ import annotations

import json
import time
from collections.abc import Mapping
from pathlib import Path
from typing import Final

import msgspec
from PySide6.QtCore import QByteArray, QSettings

from app.theme import Scheme
from model.severity import Severity

RECENT_LIMIT: Final = 10
GRAVEST: Final = (None, "", *Severity)
"""What can be known of a recent plan."""


class Recent(msgspec.Struct, frozen=True):
    """A plan opened or saved before, with what was found in it then."""

    file: str
    seconds: float = 0.0
    """When it was opened or saved last, in seconds since 1970."""
    title: str = ""
    gravest: str | None = None
    """The gravest severity found; empty where nothing was, ``None`` where that is not known."""
    count: int = 0
    """How many findings of that severity there were."""

    @property
    def path(self) -> Path:
        """The file of the plan."""
        return Path(self.file)


class Settings:
    """A typed face of QSettings."""

    def __init__(self, store: QSettings | None = None) -> None:
        self._store = QSettings("Platelayer", "Platelayer") if store is None else store

    @property
    def recent(self) -> list[Recent]:
        """The plans opened or saved last, newest first."""
        try:
            kept = msgspec.convert(json.loads(self.choice("recent", "[]")), list[Recent])
        except (ValueError, msgspec.ValidationError):
            # Settings of another version: an empty list is better than no window.
            return []
        return [entry for entry in kept if entry.gravest in GRAVEST]

    def add_recent(self, path: Path) -> None:
        """Put a plan first among the recent ones."""
        path = path.absolute()
        known = next((entry for entry in self.recent if entry.path == path), Recent(str(path)))
        others = [other for other in self.recent if other.path != path]
        self._keep([msgspec.structs.replace(known, seconds=time.time()), *others])

    def describe_recent(self, path: Path, title: str, gravest: str, count: int) -> None:
        """Remember what was found in a recent plan."""
        path = path.absolute()
        described = {"title": title, "gravest": gravest, "count": count}
        self._keep(
            [
                msgspec.structs.replace(entry, **described) if entry.path == path else entry
                for entry in self.recent
            ]
        )

    def forget_recent(self, path: Path) -> None:
        """Take a plan that cannot be opened off the recent ones."""
        path = path.absolute()
        self._keep([other for other in self.recent if other.path != path])

    @property
    def theme(self) -> str:
        """``system``, ``light`` or ``dark``."""
        kept = self.choice("theme", Scheme.SYSTEM)
        return kept if kept in [*Scheme] else Scheme.SYSTEM.value

    @theme.setter
    def theme(self, name: str) -> None:
        self.choose("theme", name)

    @property
    def keys(self) -> dict[str, tuple[str, ...]]:
        """The keys that the user gave to actions, by the action's name."""
        try:
            return msgspec.json.decode(self.choice("keys", "{}"), type=dict[str, tuple[str, ...]])
        except msgspec.DecodeError:
            # Settings of another version: the keys of the table are better than no window.
            return {}

    @keys.setter
    def keys(self, chosen: Mapping[str, tuple[str, ...]]) -> None:
        self.choose("keys", msgspec.json.encode(chosen).decode())

    def choice(self, key: str, otherwise: str) -> str:
        """A remembered choice of words."""
        return str(self._store.value(key, otherwise))

    def choose(self, key: str, value: str) -> None:
        """Remember a choice of words."""
        self._store.setValue(key, value)

    @property
    def geometry(self) -> QByteArray | None:
        """Where the window stood when it was closed."""
        value = self._store.value("geometry")
        return value if isinstance(value, QByteArray) else None

    @geometry.setter
    def geometry(self, value: QByteArray) -> None:
        self._store.setValue("geometry", value)

    def _keep(self, recent: list[Recent]) -> None:
        # In ASCII: the bytes of a file's name need be no text, and then stand for no character of UTF-8.
        self.choose("recent", json.dumps(msgspec.to_builtins(recent[:RECENT_LIMIT])))
