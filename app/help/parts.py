"""A page of the help: the parts, from the catalogue and its names."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from app.help.entries import Entry, Line, Page
from app.names import group_name, part_about, part_name
from app.translation import QT_TR_NOOP, tr
from model.grid import Facing
from model.parts import FACED, TRAITS, Part, Support, Traits

SUPPORT: Final = {
    Support.NOTHING: QT_TR_NOOP("Needs nothing to stand on."),
    Support.BELOW: QT_TR_NOOP("Needs a part that carries below it."),
    Support.BACK: QT_TR_NOOP("Needs a part that carries at its back."),
}


def parts_page() -> Page:
    """Every part, in the order of the tray."""
    about = tr("What can stand in a cell. The symbols are those of the plan and of the build sheet.")
    return Page(tr("Parts"), about, tuple(part_entry(part) for part in TRAITS))


def part_entry(part: Part) -> Entry:
    """What the help says of a part."""
    lines = [Line("", part_about(part)), *(Line("", text) for text in _facts(part, TRAITS[part]))]
    lines.append(Line(tr("Tray"), group_name(TRAITS[part].group)))
    return Entry(f"part {part}", part_name(part), tuple(lines), part.value)


def _facts(part: Part, traits: Traits) -> Iterator[str]:
    """What the catalogue says, in sentences."""
    yield tr(SUPPORT[traits.support])
    if traits.carries:
        yield tr("Rails and other parts can stand on it; a cart cannot run into it.")
    if traits.solid:
        yield tr("It is solid: it can be powered, and cuts dust beside it.")
    if traits.signals:
        yield tr("When it changes, rails beside it take notice.")
    if traits.slots:
        yield tr("It has {count} slots.", count=traits.slots)
    if part in FACED:
        yield tr("It faces {ways}.", ways=_ways(traits.facings))


def _ways(facings: tuple[Facing, ...]) -> str:
    upright = {Facing.UP: tr("up"), Facing.DOWN: tr("down")}
    *first, last = [tr("any of the four sides"), *(upright[way] for way in facings if way in upright)]
    return tr("{ways} or {last}", ways=", ".join(first), last=last) if first else last
