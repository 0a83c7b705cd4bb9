"""What a tool hears of the pointer and the keys."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Flag, StrEnum, auto

from model.grid import Cell


class Buttons(Flag):
    """Pointer buttons that are down."""

    NONE = 0
    LEFT = auto()
    RIGHT = auto()


class Modifiers(Flag):
    """Keys held beside another key or a button."""

    NONE = 0
    SHIFT = auto()
    CTRL = auto()
    ALT = auto()


class Key(StrEnum):
    """The keys that tools know; all others belong to the window."""

    TURN = "R"
    CYCLE = "D"
    MIRROR = "M"
    WAYBILL = "W"
    LEFT = "Left"
    RIGHT = "Right"
    UP = "Up"
    DOWN = "Down"


@dataclass(frozen=True)
class PointerEvent:
    """The pointer, or the keyboard's cursor, over a cell of the level shown."""

    cell: Cell
    fraction: tuple[float, float] = (0.5, 0.5)
    """Where in the cell, from its north-west corner, 0 to 1."""
    buttons: Buttons = Buttons.LEFT
    modifiers: Modifiers = Modifiers.NONE
