"""How grave a finding is, of a plan or of a network."""

from __future__ import annotations

from enum import StrEnum


class Severity(StrEnum):
    """How grave a finding is."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"

    @property
    def rank(self) -> int:
        """0 for the gravest."""
        return list(Severity).index(self)
