"""What the builder has in hand: the part that Place puts down, and how it is set."""

from __future__ import annotations

from dataclasses import dataclass, replace

from model.grid import Cell, Facing
from model.parts import DELAYS, LEVEL, RAILS, TRAITS, Mode, Part, next_delay, next_facing, next_mode
from model.pieces import Piece


@dataclass(frozen=True)
class Hand:
    """A part with its facing, its delay in ticks (repeaters) and its mode (comparators)."""

    part: Part = Part.SOLID_BLOCK
    facing: Facing = Facing.NORTH
    delay: int = DELAYS[0]
    mode: Mode = Mode.COMPARE

    def holding(self, part: Part) -> Hand:
        """Another part. Parts that first point up or down do so again; the others keep the facing in hand."""
        traits = TRAITS[part]
        stays = traits.first_facing in LEVEL and self.facing in traits.facings
        return replace(self, part=part, facing=self.facing if stays else traits.first_facing)

    def as_track(self) -> Hand:
        """What Lay track lays: the rail in hand, or plain rail when no rail is in hand."""
        return self if self.part in RAILS else self.holding(Part.RAIL)

    def turned(self) -> Hand:
        """The next facing that the part can have."""
        return replace(self, facing=next_facing(self.part, self.facing))

    def cycled(self) -> Hand:
        """The next delay of a repeater or the other mode of a comparator; any other part stays."""
        if self.part is Part.REPEATER:
            return replace(self, delay=next_delay(self.delay))
        if self.part is Part.COMPARATOR:
            return replace(self, mode=next_mode(self.mode))
        return self

    def piece(self, at: Cell) -> Piece:
        """The piece that Place puts into a cell."""
        delay = self.delay if self.part is Part.REPEATER else DELAYS[0]
        mode = self.mode if self.part is Part.COMPARATOR else Mode.COMPARE
        return Piece(self.part, at, self.facing, delay, mode)
