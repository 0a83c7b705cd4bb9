"""The box around very many pieces, which stands for them while they are carried."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from model.grid import Cell

SHOWN_UP_TO: Final = 2_000
"""Pieces up to which a gesture shows each as it would lie; more would hold the pointer up."""
Box = tuple[Cell, Cell]
"""Two corners of a box, opposite each other."""


def box_of(cells: Iterable[Cell]) -> Box:
    """The least box around some cells. Raises ValueError where there are none."""
    xs, ys, zs = zip(*cells, strict=True)
    return Cell(min(xs), min(ys), min(zs)), Cell(max(xs), max(ys), max(zs))
