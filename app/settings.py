"""What is kept between two runs: recent files, the theme, export choices, the window."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from PySide6.QtCore import QByteArray, QSettings

RECENT_LIMIT: Final = 10


class Settings:
    """A typed face of QSettings."""

    def __init__(self, store: QSettings | None = None) -> None:
        self._store = QSettings("Platelayer", "Platelayer") if store is None else store

    @property
    def recent(self) -> list[Path]:
        """The plans opened last, newest first."""
        value = self._store.value("recent", [])
        # QSettings gives back a list of one as a plain string.
        names = [value] if isinstance(value, str) else list(value or [])  # type: ignore[call-overload]
        return [Path(name) for name in names if name]

    def add_recent(self, path: Path) -> None:
        """Put a plan first among the recent ones."""
        path = path.absolute()
        others = [other for other in self.recent if other != path]
        self._store.setValue("recent", [str(entry) for entry in [path, *others][:RECENT_LIMIT]])

    def forget_recent(self, path: Path) -> None:
        """Take a plan that is gone off the recent ones."""
        self._store.setValue("recent", [str(other) for other in self.recent if other != path.absolute()])

    @property
    def theme(self) -> str:
        """``system``, ``light`` or ``dark``."""
        return self.choice("theme", "system")

    @theme.setter
    def theme(self, name: str) -> None:
        self.choose("theme", name)

    def choice(self, key: str, otherwise: str) -> str:
        """A remembered choice of words."""
        return str(self._store.value(key, otherwise))

    def choose(self, key: str, value: str) -> None:
        """Remember a choice of words."""
        self._store.setValue(key, value)

    @property
    def is_first_start(self) -> bool:
        """Whether the editor has never been started here."""
        return self.choice("started", "") != "yes"

    def note_start(self) -> None:
        """Remember that the editor has been started."""
        self.choose("started", "yes")

    @property
    def geometry(self) -> QByteArray | None:
        """Where the window stood when it was closed."""
        value = self._store.value("geometry")
        return value if isinstance(value, QByteArray) else None

    @geometry.setter
    def geometry(self, value: QByteArray) -> None:
        self._store.setValue("geometry", value)
