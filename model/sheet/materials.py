"""What to carry: pieces by part and by level, in stacks."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from typing import NamedTuple

import msgspec

from model.parts import STACK, Part
from model.pauses import with_pauses
from model.pieces import Piece
from model.plan import Change, Plan


class Stacks(NamedTuple):
    """Full stacks of 64 and the pieces over."""

    full: int
    over: int

    def __str__(self) -> str:
        """``1 + 24``, as on the sheet."""
        return f"{self.full} + {self.over}"


def stacks(pieces: int) -> Stacks:
    """So many pieces in stacks of 64."""
    return Stacks(*divmod(pieces, STACK))


class Material(msgspec.Struct, frozen=True):
    """How many of a part a plan takes."""

    part: Part
    pieces: int
    levels: dict[int, int]
    """Pieces by level, lowest first; levels without any left out."""

    @property
    def stacks(self) -> Stacks:
        """The pieces in stacks of 64."""
        return stacks(self.pieces)


class Materials(msgspec.Struct, frozen=True):
    """All parts of a plan, in the order of the catalogue; parts without a piece left out."""

    parts: tuple[Material, ...]

    @property
    def pieces(self) -> int:
        """The pieces of all parts."""
        return sum(material.pieces for material in self.parts)

    def of(self, part: Part) -> int:
        """The pieces of one part."""
        return next((material.pieces for material in self.parts if material.part is part), 0)


Counts = Counter[tuple[Part, int]]
"""Pieces by part and level."""


def materials(plan: Plan) -> Materials:
    """What a plan takes, by part and by level."""
    return materials_of(counted(plan.pieces))


def counted(pieces: Iterable[Piece]) -> Counts:
    """So many pieces there are."""
    return Counter((piece.part, piece.at.y) for piece in with_pauses(pieces))


def follow_counts(counts: Counts, change: Change) -> None:
    """Counts on after a change of the plan; costs what it changed, however large the plan."""
    counts.subtract(counted(entry.piece for entry in change.taken))
    counts.update(counted(entry.piece for entry in change.placed))


def materials_of(counts: Counts) -> Materials:
    """What so many pieces are."""
    by_part: dict[Part, dict[int, int]] = {part: {} for part in Part}
    for part, level in sorted(+counts, key=lambda key: key[1]):
        by_part[part][level] = counts[part, level]
    return Materials(
        tuple(Material(part, sum(levels.values()), levels) for part, levels in by_part.items() if levels)
    )
