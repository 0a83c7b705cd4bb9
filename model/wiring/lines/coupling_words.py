"""Couplings in plain words."""

from __future__ import annotations

from typing import Final

from model.edits.words import part_word
from model.grid import Cell
from model.parts import Part
from model.pieces import Pieces
from model.wiring.lines.looking import Look, Role
from model.wording import QT_TR_NOOP, tr

_DOES_TO: Final = {
    Role.FEED: QT_TR_NOOP("The {source} would feed the {part}."),
    Role.BACK: QT_TR_NOOP("The {source} would drive the {part}."),
    Role.SIDE: QT_TR_NOOP("The {source} would act at the side of the {part}."),
    Role.LOCK: QT_TR_NOOP("The {source} would lock the {part}."),
    Role.READ: QT_TR_NOOP("The {source} would be read by the {part}."),
    Role.BASE: QT_TR_NOOP("The {source} would put out the {part}."),
    Role.ITEMS: QT_TR_NOOP("The {source} would exchange items with the {part}."),
}
"""What the source does to the part that looks at it."""
_POWERS: Final = {
    Part.RAIL: QT_TR_NOOP("The {source} would throw the {part}."),
    Part.BOOSTER_RAIL: QT_TR_NOOP("The {source} would drive the {part}."),
    Part.HOPPER: QT_TR_NOOP("The {source} would stop the {part}."),
    Part.LAMP: QT_TR_NOOP("The {source} would light the {part}."),
    Part.AUTO_CRAFTER: QT_TR_NOOP("The {source} would set off the {part}."),
}


def joining_words(pieces: Pieces, cell: Cell, look: Look, through: Cell | None) -> str:
    """Says that the part in a cell would look at the source."""
    part, source = named(pieces, cell), named(pieces, look.source)
    if look.role is Role.LINK:
        return tr(_join(cell, look.source), source=source, part=part)
    if look.role is Role.NOTICE:
        return tr(
            "The {source} would make the {part} settle again whenever it changes.", source=source, part=part
        )
    said = tr(_deed(pieces, cell, look), source=source, part=part)
    if through is None:
        return said
    return tr("{said} It would do so through the {block}.", said=said, block=named(pieces, through))


def cut_words(before: Pieces, after: Pieces, cell: Cell, look: Look, new: Cell) -> str:
    """Says that the part in a cell would look at the source no longer, because of a new piece."""
    what, part, source = named(after, new), named(before, cell), named(before, look.source)
    if look.source == new:
        return tr("The {what} would take the place of what the {part} looks at.", what=what, part=part)
    if look.role is Role.LINK:
        return tr(
            "The {what} would cut the {part} off from the {source}.", what=what, part=part, source=source
        )
    if before.part_at(look.source) is Part.DUST and before.part_at(new) is None:
        return tr(
            "The {what} would bend the {source}, so that it no longer acts on the {part}.",
            what=what,
            source=source,
            part=part,
        )
    return tr("The {what} would keep the {source} from the {part}.", what=what, source=source, part=part)


def named(pieces: Pieces, cell: Cell) -> str:
    """A piece with its place: ``dust at 1 64 0``."""
    part = pieces.part_at(cell)
    return tr("{part} at {cell}", part=tr("cell") if part is None else part_word(part), cell=cell)


def _deed(pieces: Pieces, cell: Cell, look: Look) -> str:
    part = pieces.part_at(cell)
    if look.role is Role.POWER and part is not None:
        return _POWERS[part]
    return _DOES_TO[look.role]


def _join(cell: Cell, source: Cell) -> str:
    if cell.y == source.y:
        return QT_TR_NOOP("The {source} would join the {part}.")
    if cell.y > source.y:
        return QT_TR_NOOP("The {source} would join the {part}, a step up.")
    return QT_TR_NOOP("The {source} would join the {part}, a step down.")
