"""What a finding rule is, and what it finds."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from inspect import cleandoc
from textwrap import dedent
from typing import NamedTuple

import msgspec

from model.grid import Cell
from model.plan import Change
from model.routing.junction import Junction
from model.severity import Severity

__all__ = ["Examples", "Finding", "Found", "Key", "Rule", "Severity"]


class Found(NamedTuple):
    """What a rule finds in one place."""

    message: str
    """In the user's words, plain text."""
    cells: tuple[Cell, ...] = ()
    """The cells concerned, the one to go to first."""
    arms: tuple[str, ...] = ()


Key = tuple[str, frozenset[Cell], frozenset[str]]
"""The rule, the cells and the arms of a finding, in whatever order: what survives saving and turning."""


class Finding(msgspec.Struct, frozen=True):
    """What a rule finds in one place, with the weight of the rule and whether it was set aside."""

    rule: str
    severity: Severity
    cells: tuple[Cell, ...]
    arms: tuple[str, ...]
    message: str
    waived: bool = False
    reason: str = ""
    """Why it was set aside."""

    @property
    def at(self) -> Cell | None:
        """The first of the cells, or ``None``."""
        return self.cells[0] if self.cells else None

    @property
    def key(self) -> Key:
        """What a waiver must name to set this finding aside."""
        return self.rule, frozenset(self.cells), frozenset(self.arms)


class Examples(NamedTuple):
    """Two drawings in the notation of ``model.text_drawing``."""

    bad: str
    good: str


class Rule(msgspec.Struct, frozen=True):
    """A finding rule: what it says of itself, and the functions that find and fix."""

    id: str
    severity: Severity
    title: str
    why: str
    """One sentence: what follows from it."""
    remedy: str
    """What to do."""
    find: Callable[[Junction], Iterable[Found]]
    fix: Callable[[Junction, Finding], Change | None] | None = None
    """The change that mends a finding, or ``None`` where none can be computed."""

    def findings(self, junction: Junction) -> Iterable[Finding]:
        """What the rule finds, none of it set aside yet."""
        for message, cells, arms in self.find(junction):
            yield Finding(self.id, self.severity, cells, arms, message)

    def examples(self) -> Examples:
        """The bad and the good drawing from the docstring of ``find``."""
        _, _, after = cleandoc(self.find.__doc__ or "").partition("\nBad::\n")
        bad, _, good = after.partition("\nGood::\n")
        return Examples(dedent(bad).strip("\n"), dedent(good).strip("\n"))
