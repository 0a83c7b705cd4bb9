"""A plan with all that must be known of it before it is shown, worked out where the window need not wait."""

from __future__ import annotations

from collections.abc import Callable, Generator
from dataclasses import dataclass
from typing import NamedTuple

from app.canvas.index import PieceIndex
from model.grid import Cell
from model.plan import EMPTY_PLAN, Change, Plan
from model.progress import Progress
from model.track.layout import Layout


@dataclass(frozen=True)
class Laid:
    """A plan as built, and where its pieces lie. Whoever holds it is the only one to change it."""

    layout: Layout
    index: PieceIndex

    @property
    def plan(self) -> Plan:
        """What was laid."""
        return self.layout.plan

    def copy(self) -> Laid:
        """The same, to be changed on its own."""
        return Laid(self.layout.copy(), self.index.copy())

    def become(self, other: Laid) -> None:
        """Takes all over from another one, which must not be used any more."""
        self.layout.become(other.layout)
        self.index.become(other.index)

    def follow(self, change: Change) -> frozenset[Cell]:
        """Applies a change; returns the cells whose shape came, went or became another."""
        self.index.follow(change)
        return self.layout.follow(change)


class Followed(NamedTuple):
    """A change that is ready to be taken over: only what hangs on it must be told then."""

    change: Change
    laid: Laid
    reshaped: frozenset[Cell]


def laid(plan: Plan) -> Generator[Progress, None, Laid]:
    """The plan laid, in steps."""
    layout = yield from Layout.of(plan)
    return Laid(layout, PieceIndex(plan.pieces))


def nothing_laid() -> Laid:
    """The empty plan."""
    return Laid(Layout(EMPTY_PLAN), PieceIndex())


def followed(before: Laid, make: Callable[[Plan], Change]) -> Generator[Progress, None, Followed]:
    """What is made of a plan and all that follows, in steps; ``before`` is used up. Raises as ``make``."""
    plan = before.plan
    change = make(plan)
    reshaped = yield from before.layout.following(change)
    before.index.follow(change)
    change.cells  # noqa: B018  # so many are not gathered while the window waits
    return Followed(change, before, reshaped)
