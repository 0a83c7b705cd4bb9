"""What a piece looks like at one moment: everything that a symbol depends on, and nothing else."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from model.grid import Facing, Heading
from model.parts import Mode, Part
from model.pieces import Piece
from model.track.shapes import Shape


class Mark(StrEnum):
    """What stands in place of a figure. The letters are what is drawn."""

    UNSURE = "?"
    """The order of updates inside a tick decides, and the world may decide otherwise."""
    WAVERING = "~"
    """It changes too often to be drawn each time."""


@dataclass(frozen=True, slots=True)
class Look:
    """A part with its state. Hashable: the key of the cache of symbols."""

    part: Part
    facing: Facing = Facing.NORTH
    shape: Shape | None = None
    """Rails: the shape as it lies now."""
    on: bool = False
    """A booster has a signal, a detector a cart; a torch or lamp is lit; any other part is on."""
    strength: int | None = None
    """Dust: 0 to 15; ``None`` draws it at rest without a figure."""
    delay: int = 2
    """Repeaters, in ticks."""
    mode: Mode = Mode.COMPARE
    """Comparators."""
    locked: bool = False
    """Repeaters held from the side."""
    burnt: bool = False
    """Torches that went out from changing too often."""
    links: frozenset[Heading] = frozenset()
    """Dust: the edges that its lines run to."""
    other_shape: Shape | None = None
    """Switches: the shape in the other state, drawn dashed; makes the rail a switch."""
    powered: bool = False
    """Switches: whether the present shape is the powered one."""
    inverter: bool = False
    """Switches: whether the line comes in through an inverter."""
    name: str | None = None
    """Switches: ``S1``."""
    run_through: tuple[Shape, ...] = ()
    """Curves: the straight shapes along which wanted routes run straight through."""
    power: int | None = None
    """Solid parts: the power into the block, 1 to 15; ``None`` for none."""
    strong: bool = False
    """Whether any of that power is strong."""
    count: int | None = None
    """Containers: how many items they hold; ``None`` draws them without a figure."""
    mark: Mark | None = None
    """In place of the figure: what the dry run cannot say of the part."""


def look_of(piece: Piece) -> Look:
    """A piece at rest, as in the tray, in tables and under the cursor; rails lie along their facing."""
    return Look(piece.part, piece.facing, lying(piece), delay=piece.delay, mode=piece.mode)


def lying(piece: Piece) -> Shape | None:
    """The straight shape in which a rail starts, for pieces that have not been placed yet."""
    if not piece.part.endswith("rail"):
        return None
    along = piece.facing in (Facing.NORTH, Facing.SOUTH)
    return Shape.NORTH_SOUTH if along else Shape.EAST_WEST
