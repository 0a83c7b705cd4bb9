"""What is to be laid as lines, and what came of it."""

from __future__ import annotations

from collections.abc import Mapping

import msgspec

from model.grid import Cell
from model.parts import Part
from model.pieces import Piece


class Line(msgspec.Struct, frozen=True):
    """A line that is wanted, from one start to all of its targets."""

    name: str
    start: Cell
    """In front of the repeater that drives the line: dust must lie here, of strength 15 while it is on."""
    targets: tuple[tuple[Cell, ...], ...]
    """For each switch the target blocks of which one is enough; dust must lie beside it on its level."""


Limits = Mapping[tuple[str, int], int]
"""The latest delay, in ticks from the start, by the name of a line and the place in its ``targets``."""


class Laid(msgspec.Struct, frozen=True):
    """A line as laid; it couples with nothing but its targets, and never with itself round a repeater."""

    line: Line
    pieces: tuple[Piece, ...]
    """The new blocks first, then dust and repeaters from the start on."""
    reached: tuple[Cell, ...]
    """The target block reached, for each of the line's targets."""
    delays: tuple[int, ...]
    """Ticks from the start, for each of the line's targets."""

    @property
    def dust(self) -> int:
        """How many dust it takes."""
        return sum(piece.part is Part.DUST for piece in self.pieces)

    @property
    def repeaters(self) -> int:
        """How many repeaters it takes."""
        return sum(piece.part is Part.REPEATER for piece in self.pieces)


class Failure(msgspec.Struct, frozen=True):
    """A target that no line could be led to."""

    line: Line
    target: Cell
    reason: str
    """A sentence for the user."""


class Routed(msgspec.Struct, frozen=True):
    """The lines laid, and what could not be; a line with a failed target is not laid at all."""

    laid: tuple[Laid, ...]
    failed: tuple[Failure, ...]
