"""The looks of pieces as they were found last: finding that of a switch costs more than drawing it."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from app.canvas.looks import Looks
from app.canvas.symbols import Look
from model.grid import Cell
from model.pieces import Piece

COLUMNS: Final = tuple((dx, dz) for dx in range(-2, 3) for dz in range(-2, 3) if abs(dx) + abs(dz) <= 2)
LEVELS: Final = range(-4, 5)
"""How far from a changed cell a piece may look otherwise: what a power cycle of a switch may see."""
FORGET_ALL_FROM: Final = 1_000
"""Changed cells from which on it costs less to find all looks again."""


class KnownLooks:
    """Remembers looks by cell; looks that are the same are one object, which makes them quick keys."""

    def __init__(self, looks: Looks) -> None:
        self._looks = looks
        self._own: dict[Cell, Look] = {}
        self._bare: dict[Cell, Look] = {}
        self._same: dict[Look, Look] = {}

    def look(self, piece: Piece) -> Look:
        """The look of a piece of the level shown."""
        look = self._own.get(piece.at)
        if look is None:
            look = self._own[piece.at] = self._one(self._looks.look(piece))
        return look

    def bare(self, piece: Piece) -> Look:
        """The look of a piece of a neighbour level."""
        look = self._bare.get(piece.at)
        if look is None:
            look = self._bare[piece.at] = self._one(self._looks.bare(piece))
        return look

    def forget(self, cells: Iterable[Cell]) -> None:
        """These look otherwise now."""
        for cell in cells:
            self._own.pop(cell, None)
            self._bare.pop(cell, None)

    def forget_around(self, cells: frozenset[Cell]) -> None:
        """These were changed, and whatever sees them may look otherwise."""
        if len(cells) >= FORGET_ALL_FROM:
            self.clear()
            return
        for cell in cells:
            self.forget(cell.moved(dx, dy, dz) for dx, dz in COLUMNS for dy in LEVELS)

    def clear(self) -> None:
        """All may look otherwise."""
        self._own.clear()
        self._bare.clear()
        self._same.clear()

    def _one(self, look: Look) -> Look:
        return self._same.setdefault(look, look)
