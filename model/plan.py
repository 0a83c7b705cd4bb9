"""The plan: what stands where and in which order, and what is wanted of it. And the change of a plan."""

from __future__ import annotations

from enum import StrEnum
from functools import cached_property
from typing import Any, Final

import msgspec

from model.grid import VECTORS, Cell, Heading
from model.pieces import Piece, Pieces, Placed

NAME_LIMIT: Final = 80
"""Characters in the name of an arm or a waybill, at most."""
TEXT_LIMIT: Final = 10_000
"""Characters in a title, a reason, or a field of the title block, at most."""
PIECE_LIMIT: Final = 2_000_000
ARM_LIMIT: Final = 1_000

Kept = tuple[tuple[str, str], ...]
"""Keys that this version does not know, each with its JSON text; written back as they were."""


class Side(StrEnum):
    """The side on which carts run, seen in their heading."""

    LEFT = "left"
    RIGHT = "right"

    @property
    def other(self) -> Side:
        """The other side."""
        return Side.RIGHT if self is Side.LEFT else Side.LEFT


class ArmEnd(msgspec.Struct, frozen=True):
    """Where carts enter a cell or leave it, with the cart's heading as it does so."""

    at: Cell
    heading: Heading
    kept: Kept = ()


class Arm(msgspec.Struct, frozen=True):
    """Where track enters and leaves the junction; at least one of the two ends is there."""

    name: str
    enter: ArmEnd | None = None
    """``in`` in files."""
    leave: ArmEnd | None = None
    """``out`` in files."""
    kept: Kept = ()

    @property
    def side(self) -> Side | None:
        """On which side of the out the in lies, seen along the heading in which carts come in.

        ``None`` where an end is missing, or where the one lies straight before or behind the other.
        """
        enter, leave = self.enter, self.leave
        if enter is None or leave is None:
            return None
        to_the_right = VECTORS[enter.heading.clockwise]
        across = (enter.at.x - leave.at.x) * to_the_right[0] + (enter.at.z - leave.at.z) * to_the_right[1]
        return None if across == 0 else Side.RIGHT if across > 0 else Side.LEFT


class Route(msgspec.Struct, frozen=True):
    """What is wanted of the carts from one arm; arms are named, and may be unknown."""

    start: str
    """``from`` in files."""
    idle: str
    """Where an empty cart must leave."""
    called: str | None = None
    """Where a cart with the waybill must leave."""
    waybill: str | None = None
    kept: Kept = ()


class Waiver(msgspec.Struct, frozen=True):
    """A finding set aside: the rule with the cells and arms that it names, and the reason."""

    rule: str
    cells: tuple[Cell, ...] = ()
    arms: tuple[str, ...] = ()
    reason: str = ""
    kept: Kept = ()


class SheetData(msgspec.Struct, frozen=True):
    """What the title block of the build sheet says; blank where nothing is given."""

    owner: str = ""
    number: str = ""
    revision: str = ""
    date: str = ""
    created_by: str = ""
    approved_by: str = ""
    kept: Kept = ()


class Details(msgspec.Struct, frozen=True):
    """All of a plan that is not pieces."""

    title: str = ""
    running_side: Side | None = None
    """``None``: not checked."""
    arms: tuple[Arm, ...] = ()
    routes: tuple[Route, ...] = ()
    waivers: tuple[Waiver, ...] = ()
    sheet: SheetData = SheetData()
    kept: Kept = ()

    def arm(self, name: str) -> Arm | None:
        """The first arm of that name, or ``None``."""
        return next((arm for arm in self.arms if arm.name == name), None)

    def replace(self, **fields: Any) -> Details:
        """A copy with other fields."""
        return msgspec.structs.replace(self, **fields)


class Plan(msgspec.Struct, frozen=True):
    """The document, as a value."""

    pieces: Pieces
    details: Details = Details()

    @property
    def arms(self) -> tuple[Arm, ...]:
        """The arms in file order."""
        return self.details.arms

    @property
    def routes(self) -> tuple[Route, ...]:
        """The wanted routes in file order."""
        return self.details.routes


EMPTY_PLAN: Final = Plan(Pieces.of(()))


class Change(msgspec.Struct, frozen=True, dict=True):
    """An edit as a value: what it takes, what it places, and the details before and after.

    A cell whose piece is replaced stands both in ``taken`` and in ``placed``.
    """

    label: str
    """In the user's words: "Lay 6 rails"."""
    taken: tuple[Placed, ...] = ()
    placed: tuple[Placed, ...] = ()
    before: Details | None = None
    after: Details | None = None

    @property
    def is_empty(self) -> bool:
        """Whether applying it leaves the plan as it was."""
        return self.taken == self.placed and self.before == self.after

    @cached_property
    def cells(self) -> frozenset[Cell]:
        """The cells whose piece may differ afterwards."""
        return frozenset(entry.piece.at for entry in (*self.taken, *self.placed))

    def inverse(self) -> Change:
        """The change that undoes this one, under the same label."""
        return Change(self.label, self.placed, self.taken, self.after, self.before)

    def applied(self, plan: Plan) -> Plan:
        """The plan afterwards. Raises KeyError or ValueError when made for another plan."""
        pieces = plan.pieces
        if self.taken or self.placed:
            pieces = pieces.replaced(self.taken, self.placed)
        return Plan(pieces, plan.details if self.after is None else self.after)


def plan_of(pieces: list[Piece] | tuple[Piece, ...], details: Details | None = None) -> Plan:
    """A plan with the pieces in the order given."""
    return Plan(Pieces.of(pieces), Details() if details is None else details)
