"""The looks of pieces as they were found last: finding that of a switch costs more than drawing it."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Final

from app.canvas.looks import Looks
from app.canvas.symbols import Look
from model.grid import Cell
from model.pieces import Piece

COLUMNS: Final = tuple((dx, dz) for dx in range(-2, 3) for dz in range(-2, 3) if abs(dx) + abs(dz) <= 2)
"""How far from a changed cell a piece may look otherwise: what a power cycle of a switch may see."""
FORGET_ALL_FROM: Final = 1_000
"""Changed cells from which on it costs less to find all looks again."""


_Column = dict[int, Look]


class KnownLooks:
    """Remembers looks by column and level; looks that are the same are one object, a quick key."""

    def __init__(self, looks: Looks) -> None:
        self._looks = looks
        self._own: dict[tuple[int, int], _Column] = {}
        self._bare: dict[tuple[int, int], _Column] = {}
        self._same: dict[Look, Look] = {}

    def look(self, piece: Piece) -> Look:
        """The look of a piece of the level shown."""
        return self._known(self._own, piece, self._looks.look)

    def bare(self, piece: Piece) -> Look:
        """The look of a piece of a neighbour level."""
        return self._known(self._bare, piece, self._looks.bare)

    def forget(self, cells: Iterable[Cell]) -> None:
        """These look otherwise now."""
        self._forget_columns({(cell.x, cell.z) for cell in cells})

    def forget_around(self, cells: frozenset[Cell]) -> None:
        """These were changed, and whatever sees them may look otherwise."""
        if len(cells) >= FORGET_ALL_FROM:
            self.clear()
        else:
            self._forget_columns({(x + dx, z + dz) for x, _, z in cells for dx, dz in COLUMNS})

    def clear(self) -> None:
        """All may look otherwise."""
        self._own.clear()
        self._bare.clear()
        self._same.clear()

    def _forget_columns(self, columns: set[tuple[int, int]]) -> None:
        """All levels at once: to tell which of them see a change takes longer than to find looks again."""
        for column in columns:
            self._own.pop(column, None)
            self._bare.pop(column, None)

    def _known(
        self, known: dict[tuple[int, int], _Column], piece: Piece, find: Callable[[Piece], Look]
    ) -> Look:
        x, y, z = piece.at
        column = known.get((x, z))
        if column is None:
            column = known[x, z] = {}
        look = column.get(y)
        if look is None:
            look = column[y] = self._one(find(piece))
        return look

    def _one(self, look: Look) -> Look:
        return self._same.setdefault(look, look)
