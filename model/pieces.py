"""Pieces in the order in which they are placed: a persistent, ordered set, one piece a cell."""

from __future__ import annotations

from bisect import bisect_left, insort
from collections.abc import Container, Iterable, Iterator
from typing import Final, NamedTuple

import msgspec
from immutables import Map

from model.grid import Cell, Facing
from model.parts import CARRIERS, STACK, TRAITS, Mode, Part, Support


class Held(msgspec.Struct, frozen=True):
    """Items of one kind: one entry a slot, more than a stack goes on in the next slot."""

    item: str
    count: int
    kept: tuple[tuple[str, str], ...] = ()
    """Keys that this version does not know, each with its JSON text."""


WAYBILL: Final = "waybill:"
"""How the item of a waybill begins; its name follows."""


def slots_needed(holds: Iterable[Held]) -> int:
    """The slots that some content takes: one an entry, and an entry over the stack size goes on in the next.

    Common practice of the trade, written from memory, no published source.
    """
    return sum(-(-held.count // STACK) for held in holds)


class Piece(msgspec.Struct, frozen=True, gc=False, omit_defaults=True):
    """A part in a cell.

    Encoded, it leaves out what is as always: most pieces go into a file just so.
    """

    part: Part
    at: Cell
    facing: Facing = Facing.NORTH
    delay: int = 2
    """Ticks; repeaters only."""
    mode: Mode = Mode.COMPARE
    """Comparators only."""
    wooden: bool = False
    """Buttons only."""
    holds: tuple[Held, ...] = ()
    """Containers only."""
    kept: tuple[tuple[str, str], ...] = ()
    """Keys that this version does not know, each with its JSON text."""


def new_piece(part: Part, at: Cell, facing: Facing | None = None) -> Piece:
    """A piece as it comes out of the tray: the part's first facing where none is given."""
    return Piece(part, at, TRAITS[part].first_facing if facing is None else facing)


def rests_on(piece: Piece) -> Cell | None:
    """The cell in which a part must stand that carries the piece; ``None`` where it needs none."""
    support = TRAITS[piece.part].support
    if support is Support.NOTHING:
        return None
    return piece.at.beside(Facing.DOWN if support is Support.BELOW else piece.facing.opposite)


class Placed(NamedTuple):
    """A piece with its rank: a smaller rank is placed earlier. Ranks have gaps."""

    rank: int
    piece: Piece


FOLLOWED_UP_TO: Final = 1_000
"""Changed pieces up to which the order is worked out from an earlier one; sorting all takes longer."""


class _Since(NamedTuple):
    """An earlier set in its order, and what was taken out of it and put into it since, step by step."""

    ordered: tuple[Placed, ...]
    steps: tuple[tuple[tuple[Placed, ...], tuple[Placed, ...]], ...]
    size: int
    """Pieces in all steps."""

    def and_then(self, taken: tuple[Placed, ...], placed: tuple[Placed, ...]) -> _Since | None:
        """With one step more; ``None`` where they come to be too many."""
        size = self.size + len(taken) + len(placed)
        if size > FOLLOWED_UP_TO:
            return None
        return _Since(self.ordered, (*self.steps, (taken, placed)), size)

    def in_order(self) -> tuple[Placed, ...]:
        """The set as it is by now."""
        now = list(self.ordered)
        for taken, placed in self.steps:
            for entry in taken:
                del now[bisect_left(now, entry.rank, key=_rank)]
            for entry in placed:
                insort(now, entry, key=_rank)
        return tuple(now)


class Pieces:
    """An immutable ordered set of pieces; two sets are equal when the same pieces come in the same order.

    A changed copy costs time and memory in the size of the change, not of the set.
    """

    __slots__ = ("_by_cell", "_next_rank", "_ordered", "_since")

    def __init__(self, by_cell: Map[Cell, Placed], next_rank: int, since: _Since | None = None) -> None:
        self._by_cell = by_cell
        self._next_rank = next_rank
        self._ordered: tuple[Placed, ...] | None = None
        self._since = since

    @classmethod
    def of(cls, pieces: Iterable[Piece]) -> Pieces:
        """The pieces in the order given. Raises ValueError for two pieces in one cell."""
        placed = tuple(Placed(rank, piece) for rank, piece in enumerate(pieces))
        by_cell = Map({entry.piece.at: entry for entry in placed})
        if len(by_cell) != len(placed):
            raise ValueError("two pieces in one cell")
        made = cls(by_cell, len(placed))
        made._ordered = placed
        return made

    @property
    def next_rank(self) -> int:
        """The rank that puts a new piece after all others."""
        return self._next_rank

    def get(self, cell: Cell) -> Piece | None:
        """The piece in a cell, or ``None``."""
        placed = self._by_cell.get(cell)
        return None if placed is None else placed.piece

    def placed(self, cell: Cell) -> Placed | None:
        """The piece in a cell with its rank, or ``None``."""
        return self._by_cell.get(cell)

    def part_at(self, cell: Cell) -> Part | None:
        """The part in a cell, or ``None``."""
        placed = self._by_cell.get(cell)
        return None if placed is None else placed.piece.part

    def in_order(self) -> tuple[Placed, ...]:
        """All pieces with their ranks, earliest first."""
        if self._ordered is None:
            since = self._since
            self._ordered = self._sorted() if since is None else since.in_order()
            self._since = None
        return self._ordered

    def _sorted(self) -> tuple[Placed, ...]:
        return tuple(sorted(self._by_cell.values(), key=_rank))

    def replaced(self, taken: Iterable[Placed], placed: Iterable[Placed]) -> Pieces:
        """A copy without ``taken`` and with ``placed``; cells taken must be filled, cells placed free."""
        placed = tuple(placed)
        next_rank = self._next_rank
        cells = self._by_cell.mutate()
        gone = tuple(cells.pop(entry.piece.at) for entry in taken)
        for entry in placed:
            if entry.piece.at in cells:
                raise ValueError(f"two pieces in {entry.piece.at}")
            cells[entry.piece.at] = entry
            next_rank = max(next_rank, entry.rank + 1)
        known = self._since if self._ordered is None else _Since(self._ordered, (), 0)
        return Pieces(cells.finish(), next_rank, None if known is None else known.and_then(gone, placed))

    def __contains__(self, cell: object) -> bool:
        return cell in self._by_cell

    def __iter__(self) -> Iterator[Piece]:
        return (placed.piece for placed in self.in_order())

    def __len__(self) -> int:
        return len(self._by_cell)

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Pieces):
            return NotImplemented
        return self is other or (len(self) == len(other) and list(self) == list(other))

    def __hash__(self) -> int:
        return hash(tuple(self))


def is_seen_from_above(piece: Piece, filled: Container[Cell]) -> bool:
    """Whether a piece shows under the next level: a part that carries what stands on it is hidden by it."""
    return piece.part not in CARRIERS or piece.at.moved(dy=1) not in filled


def _rank(placed: Placed) -> int:
    return placed.rank
