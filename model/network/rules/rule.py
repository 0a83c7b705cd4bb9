"""What a finding rule of networks is, and what it finds."""

from __future__ import annotations

from collections.abc import Callable, Iterable

import msgspec

from model.network.rules.sight import Sight
from model.severity import Severity


class Found(msgspec.Struct, frozen=True):
    """What a rule finds in one place, with the places in the network of what it is about."""

    message: str
    """In the user's words, plain text."""
    names: tuple[str, ...]
    """Stations, junctions and arms (``Mill/East``), the one to go to first."""
    stations: tuple[int, ...] = ()
    junctions: tuple[int, ...] = ()
    links: tuple[int, ...] = ()
    trips: tuple[int, ...] = ()


class NetworkFinding(msgspec.Struct, frozen=True):
    """What a rule finds in one place, with the weight of the rule."""

    rule: str
    severity: Severity
    found: Found
    waived: bool = False
    """Whether it is set aside."""
    reason: str = ""

    @property
    def key(self) -> tuple[str, tuple[str, ...]]:
        """What tells it from others: that of the waiver that sets it aside."""
        return self.rule, self.found.names

    @property
    def message(self) -> str:
        """In the user's words, plain text."""
        return self.found.message

    @property
    def names(self) -> tuple[str, ...]:
        """Stations, junctions and arms (``Mill/East``), the one to go to first."""
        return self.found.names


class NetworkRule(msgspec.Struct, frozen=True):
    """A finding rule: what it says of itself, and the function that finds."""

    id: str
    severity: Severity
    title: str
    why: str
    """One sentence: what follows from it."""
    remedy: str
    """What to do."""
    find: Callable[[Sight], Iterable[Found]]

    def findings(self, sight: Sight) -> Iterable[NetworkFinding]:
        """What the rule finds."""
        return (NetworkFinding(self.id, self.severity, found) for found in self.find(sight))
