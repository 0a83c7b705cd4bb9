"""A step of the building: what is placed together, and what the builder then sees."""

from __future__ import annotations

import msgspec

from model.grid import Cell
from model.pieces import Piece
from model.track.shapes import Shape


class Step(msgspec.Struct, frozen=True):
    """Pieces that are placed one after another without a look at anything else."""

    number: int
    """From 1."""
    level: int
    """Of all its pieces."""
    title: str
    """What to place and where: ``5 rails from −3 64 1 to 1 64 1, facing east``."""
    place: tuple[Piece, ...]
    """In the order of placing, each as the plan has it."""
    why: str | None
    """Why it comes out of the order of the levels, or what is wrong with it; ``None`` for most."""
    see: str
    """What the builder should now see, in a sentence or a few."""
    shapes: dict[Cell, Shape]
    """The rails placed in this step and those that it bends, as they lie after it."""
