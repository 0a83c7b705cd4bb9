"""The catalogue of parts: what can stand in a cell, and what each can do.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Final

import msgspec

from model.grid import Facing


class Part(StrEnum):
    """The kinds of pieces, by the word that files use."""

    RAIL = "rail"
    BOOSTER_RAIL = "booster-rail"
    DETECTOR_RAIL = "detector-rail"
    SOLID_BLOCK = "solid-block"
    GLASS = "glass"
    SLAB = "slab"
    TARGET_BLOCK = "target-block"
    DUST = "dust"
    TORCH = "torch"
    REPEATER = "repeater"
    COMPARATOR = "comparator"
    LEVER = "lever"
    BUTTON = "button"
    HOPPER = "hopper"
    BARREL = "barrel"
    AUTO_CRAFTER = "auto-crafter"
    LAMP = "lamp"


class Mode(StrEnum):
    """What a comparator does with its inputs."""

    COMPARE = "compare"
    SUBTRACT = "subtract"


class Support(StrEnum):
    """Where a part needs a carrying part."""

    NOTHING = "nothing"
    BELOW = "below"
    BACK = "back"
    """At the side away from its facing: up-facing stands on a block, down-facing hangs under one."""


class Traits(msgspec.Struct, frozen=True):
    """What the rules of the world say of one part."""

    group: str
    facings: tuple[Facing, ...]
    first_facing: Facing = Facing.NORTH
    support: Support = Support.NOTHING
    carries: bool = False
    """Whether rails and other parts can stand on it."""
    solid: bool = False
    """Whether it can be powered and cuts dust."""
    signals: bool = False
    """Whether its change gives notice to rails beside it."""
    slots: int = 0
    """Slots of a container."""


LEVEL: Final = (Facing.NORTH, Facing.EAST, Facing.SOUTH, Facing.WEST)
ANY_WAY: Final = (*LEVEL, Facing.UP, Facing.DOWN)

RAILS: Final = frozenset({Part.RAIL, Part.BOOSTER_RAIL, Part.DETECTOR_RAIL})
DELAYS: Final = (2, 4, 6, 8)
"""Delays that a repeater can have, in ticks."""
STACK: Final = 64
"""Items in a full stack."""

TRAITS: Final[dict[Part, Traits]] = {
    Part.RAIL: Traits("track", LEVEL, support=Support.BELOW),
    Part.BOOSTER_RAIL: Traits("track", LEVEL, support=Support.BELOW),
    Part.DETECTOR_RAIL: Traits("track", LEVEL, support=Support.BELOW, signals=True),
    Part.SOLID_BLOCK: Traits("carries", LEVEL, carries=True, solid=True),
    Part.GLASS: Traits("carries", LEVEL, carries=True),
    Part.SLAB: Traits("carries", LEVEL, carries=True),
    Part.TARGET_BLOCK: Traits("carries", LEVEL, carries=True, solid=True),
    Part.DUST: Traits("signals", LEVEL, support=Support.BELOW, signals=True),
    Part.TORCH: Traits("signals", (*LEVEL, Facing.UP), Facing.UP, support=Support.BACK, signals=True),
    Part.REPEATER: Traits("signals", LEVEL, support=Support.BELOW, signals=True),
    Part.COMPARATOR: Traits("signals", LEVEL, support=Support.BELOW, signals=True),
    Part.LEVER: Traits("signals", ANY_WAY, Facing.UP, support=Support.BACK, signals=True),
    Part.BUTTON: Traits("signals", ANY_WAY, Facing.UP, support=Support.BACK, signals=True),
    Part.LAMP: Traits("signals", LEVEL, carries=True, solid=True),
    Part.HOPPER: Traits("items", (*LEVEL, Facing.DOWN), Facing.DOWN, carries=True, slots=5),
    Part.BARREL: Traits("items", LEVEL, carries=True, solid=True, slots=27),
    Part.AUTO_CRAFTER: Traits("items", ANY_WAY, carries=True, solid=True, slots=9),
}

CARRIERS: Final = frozenset(part for part, traits in TRAITS.items() if traits.carries)
SIGNAL_PARTS: Final = frozenset(part for part, traits in TRAITS.items() if traits.signals)
STOPPERS: Final = CARRIERS
"""What a cart cannot run into: just the parts that carry rails."""
FACED: Final = RAILS | {
    Part.TORCH,
    Part.LEVER,
    Part.BUTTON,
    Part.HOPPER,
    Part.AUTO_CRAFTER,
    Part.REPEATER,
    Part.COMPARATOR,
}
"""Parts for which the facing means something."""


def next_delay(delay: int) -> int:
    """The delay after this one, in ticks; after the longest comes the shortest."""
    return DELAYS[(DELAYS.index(delay) + 1) % len(DELAYS)]


def next_mode(mode: Mode) -> Mode:
    """The other mode of a comparator."""
    return Mode.SUBTRACT if mode is Mode.COMPARE else Mode.COMPARE


def next_facing(part: Part, facing: Facing) -> Facing:
    """The facing after this one that the part can have; the first where it cannot have this one."""
    facings = TRAITS[part].facings
    at = facings.index(facing) if facing in facings else -1
    return facings[(at + 1) % len(facings)]
