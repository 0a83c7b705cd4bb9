"""What comes of wiring a junction."""

from __future__ import annotations

from msgspec import Struct

from model.grid import Cell
from model.plan import Change
from model.wiring.proof.proof import Headway


class LineReport(Struct, frozen=True):
    """A line as it was laid."""

    arm: str
    """That of the reader."""
    switches: tuple[Cell, ...]
    """Those that it throws."""
    dust: int
    repeaters: int


class Unwired(Struct, frozen=True):
    """What could not be wired, or went wrong in the proof."""

    arm: str | None
    at: Cell | None
    message: str
    """In the user's words, plain text."""


class Wiring(Struct, frozen=True):
    """A plan wired and proved, or why it is not."""

    wired: bool
    change: Change | None
    """What wires the plan, one undo step; ``None`` where it is not wired."""
    lines: tuple[LineReport, ...]
    footprint_cells: int
    """Columns in which the wired plan has pieces."""
    depth: int
    """Levels used below the lowest rail."""
    runs: int
    passed: int
    findings: tuple[Unwired, ...]
    headways: tuple[Headway, ...] = ()
    """Of the arms with readers."""
