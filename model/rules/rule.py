"""What a finding rule is, and what it finds."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import cached_property
from inspect import cleandoc
from textwrap import dedent
from typing import NamedTuple

import msgspec

from model.grid import Cell
from model.plan import Change
from model.routing.junction import Junction
from model.severity import Severity
from model.track.layout import Layout

__all__ = ["Examples", "Finding", "Found", "Key", "Nearby", "Rule", "Severity"]


class Found(NamedTuple):
    """What a rule finds in one place."""

    message: str
    """In the user's words, plain text."""
    cells: tuple[Cell, ...] = ()
    """The cells concerned, the one to go to first."""
    arms: tuple[str, ...] = ()


Key = tuple[str, frozenset[Cell], frozenset[str]]
"""The rule, the cells and the arms of a finding, in whatever order: what survives saving and turning."""


class Finding(msgspec.Struct, frozen=True, dict=True):
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

    @cached_property
    def key(self) -> Key:
        """What a waiver must name to set this finding aside."""
        return self.rule, frozenset(self.cells), frozenset(self.arms)


class Examples(NamedTuple):
    """Two drawings in the notation of ``model.text_drawing``."""

    bad: str
    good: str


class Nearby(NamedTuple):
    """How a rule that looks no further than a neighbourhood finds anew what an edit may have changed there.

    ``find`` of the rule uses the same ``at``, over all pieces. What is found at a cell has it as its first.
    """

    touched: Callable[[Layout, frozenset[Cell]], set[Cell]]
    """Where something else may be found when the pieces or shapes in these cells have changed."""
    at: Callable[[Layout, Iterable[Cell]], Iterable[Found]]
    """What is found at some cells, whatever is in them."""


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
    nearby: Nearby | None = None
    """For rules that look at pieces one by one."""
    asks_details: bool = False
    """Whether it asks the details of the plan and the rails at its arms, no more: quick after every edit."""

    @property
    def is_local(self) -> bool:
        """Whether it asks nothing that hangs on routes, so that its findings can follow every edit."""
        return self.nearby is not None or self.asks_details

    def findings(self, junction: Junction) -> Iterable[Finding]:
        """What the rule finds, none of it set aside yet."""
        return map(self.finding, self.find(junction))

    def finding(self, found: Found) -> Finding:
        """What was found, with what the rule says of it."""
        return Finding(self.id, self.severity, found.cells, found.arms, found.message)

    def examples(self) -> Examples:
        """The bad and the good drawing from the docstring of ``find``."""
        _, _, after = cleandoc(self.find.__doc__ or "").partition("\nBad::\n")
        bad, _, good = after.partition("\nGood::\n")
        return Examples(dedent(bad).strip("\n"), dedent(good).strip("\n"))
