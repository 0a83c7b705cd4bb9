"""Couplings in plain words."""

from __future__ import annotations

from typing import Final

from model.edits.words import part_word
from model.grid import Cell
from model.parts import Part
from model.pieces import Pieces
from model.wiring.lines.looking import Look, Role

_DOES_TO: Final = {
    Role.FEED: "feed",
    Role.BACK: "drive",
    Role.SIDE: "act at the side of",
    Role.LOCK: "lock",
    Role.READ: "be read by",
    Role.BASE: "put out",
    Role.ITEMS: "exchange items with",
}
"""What the source does to the part that looks at it."""
_POWERS: Final = {
    Part.RAIL: "throw",
    Part.BOOSTER_RAIL: "drive",
    Part.HOPPER: "stop",
    Part.LAMP: "light",
    Part.AUTO_CRAFTER: "set off",
}


def joining_words(pieces: Pieces, cell: Cell, look: Look, through: Cell | None) -> str:
    """Says that the part in a cell would look at the source."""
    part, source = named(pieces, cell), named(pieces, look.source)
    if look.role is Role.LINK:
        step = _step_words(cell, look.source)
        return f"The {source} would join the {part}{step}."
    if look.role is Role.NOTICE:
        return f"The {source} would make the {part} settle again whenever it changes."
    way = "" if through is None else f", through the {named(pieces, through)}"
    return f"The {source} would {_verb(pieces, cell, look)} the {part}{way}."


def cut_words(before: Pieces, after: Pieces, cell: Cell, look: Look, new: Cell) -> str:
    """Says that the part in a cell would look at the source no longer, because of a new piece."""
    what, part, source = named(after, new), named(before, cell), named(before, look.source)
    if look.source == new:
        return f"The {what} would take the place of what the {part} looks at."
    if look.role is Role.LINK:
        return f"The {what} would cut the {part} off from the {source}."
    if before.part_at(look.source) is Part.DUST and before.part_at(new) is None:
        return f"The {what} would bend the {source}, so that it no longer acts on the {part}."
    return f"The {what} would keep the {source} from the {part}."


def named(pieces: Pieces, cell: Cell) -> str:
    """A piece with its place: ``dust at 1 64 0``."""
    part = pieces.part_at(cell)
    return f"{'cell' if part is None else part_word(part)} at {cell}"


def _verb(pieces: Pieces, cell: Cell, look: Look) -> str:
    part = pieces.part_at(cell)
    if look.role is Role.POWER and part is not None:
        return _POWERS[part]
    return _DOES_TO[look.role]


def _step_words(cell: Cell, source: Cell) -> str:
    if cell.y == source.y:
        return ""
    return ", a step up" if cell.y > source.y else ", a step down"
