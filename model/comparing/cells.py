"""The cells in which two plans differ."""

from __future__ import annotations

from collections.abc import Generator, Iterator
from enum import StrEnum
from typing import Final

import msgspec

from model.grid import Cell
from model.pieces import Piece, Pieces
from model.progress import Progress, result_of
from model.track.layout import Layout
from model.track.shapes import Shape
from model.wording import QT_TR_NOOP, tr

TOLD_EVERY: Final = 1_024
"""Cells between two words on how far the comparison is."""
COMPARING: Final = QT_TR_NOOP("Comparing the cells")


class Kind(StrEnum):
    """In which way a cell differs."""

    TAKEN = "taken"
    """Only the earlier plan has a piece there."""
    PLACED = "placed"
    """Only the later one has."""
    TURNED = "turned"
    """The same piece faces another way."""
    CHANGED = "changed"
    """Another part, or the same part set otherwise."""
    RESHAPED = "reshaped"
    """The same rail, but the other rails or the order of placing make it lie otherwise."""


_EXCHANGED: Final = {Kind.TAKEN: Kind.PLACED, Kind.PLACED: Kind.TAKEN}


class Difference(msgspec.Struct, frozen=True):
    """What is otherwise in one cell."""

    kind: Kind
    before: Piece | None
    """``None``: nothing stands there in the earlier plan."""
    after: Piece | None
    """``None``: nothing stands there in the later plan. At least one of the two is a piece."""
    lay: Shape | None = None
    """How the rail lies in the earlier plan as built; ``None`` unless rails in both lie otherwise."""
    lies: Shape | None = None
    """How it lies in the later plan, where ``lay`` is given."""

    @property
    def at(self) -> Cell:
        """The cell."""
        piece = self.before if self.after is None else self.after
        assert piece is not None, "one of the two plans has a piece"
        return piece.at

    @property
    def inverse(self) -> Difference:
        """The same with the two plans exchanged."""
        kind = _EXCHANGED.get(self.kind, self.kind)
        return Difference(kind, self.after, self.before, self.lies, self.lay)


def difference(
    before: Piece | None, after: Piece | None, lay: Shape | None = None, lies: Shape | None = None
) -> Difference | None:
    """What is otherwise in a cell of which this is known; ``None`` where nothing is.

    ``lay`` and ``lies`` are the shapes of the pieces that are rails.
    """
    if lay is None or lies is None or lay == lies:
        lay = lies = None
    if before == after:
        return None if lay is None else Difference(Kind.RESHAPED, before, after, lay, lies)
    return Difference(_kind(before, after), before, after, lay, lies)


def _kind(before: Piece | None, after: Piece | None) -> Kind:
    if before is None:
        return Kind.PLACED
    if after is None:
        return Kind.TAKEN
    turned = msgspec.structs.replace(before, facing=after.facing)
    return Kind.TURNED if turned == after else Kind.CHANGED


def difference_at(before: Layout, after: Layout, cell: Cell) -> Difference | None:
    """What is otherwise in a cell, the shapes of rails too; ``None`` where nothing is."""
    pieces = before.plan.pieces.get(cell), after.plan.pieces.get(cell)
    return difference(*pieces, before.shape(cell), after.shape(cell))


def compare(before: Pieces, after: Pieces) -> tuple[Difference, ...]:
    """All cells that differ, the shapes of rails left aside.

    Those taken come in the earlier order of placing, then the others in the later one.
    """
    found = (difference(before.get(cell), after.get(cell)) for cell in _cells(before, after))
    return tuple(each for each in found if each is not None)


def compare_as_built(before: Layout, after: Layout) -> tuple[Difference, ...]:
    """The same with the rails that lie otherwise in the two plans, each as built."""
    return result_of(comparison(before, after))


def comparison(before: Layout, after: Layout) -> Generator[Progress, None, tuple[Difference, ...]]:
    """As ``compare_as_built``, and tells how far it is."""
    cells = tuple(_cells(before.plan.pieces, after.plan.pieces))
    found = []
    for done, cell in enumerate(cells, 1):
        if not done % TOLD_EVERY:
            yield Progress(tr(COMPARING), done, len(cells))
        found.append(difference_at(before, after, cell))
    return tuple(each for each in found if each is not None)


def _cells(before: Pieces, after: Pieces) -> Iterator[Cell]:
    """The cells that hold a piece: those that only the earlier plan has, then those of the later plan."""
    yield from (piece.at for piece in before if piece.at not in after)
    yield from (piece.at for piece in after)
