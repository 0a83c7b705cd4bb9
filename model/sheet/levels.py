"""The pages of the levels, the lowest first: what stands there, and the key to it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from enum import StrEnum
from typing import Final

import msgspec

from model.grid import Facing
from model.parts import TRAITS, Mode, Part
from model.pieces import Piece, is_seen_from_above
from model.plan import Arm
from model.sheet.drawn import DrawnPiece
from model.sheet.footprint import Bounds, bounds_of
from model.wording import tr


class Sign(StrEnum):
    """What a row of the key explains."""

    PIECE = "piece"
    RISING = "rising"
    SWITCH = "switch"
    INVERTER = "inverter"
    FACING = "facing"
    NUMBER = "number"


class KeyRow(msgspec.Struct, frozen=True):
    """A row of *On this page*."""

    sign: Sign
    pieces: int
    of_these: bool = False
    """Counted in a row above already: the count stands in brackets."""
    sample: Piece | None = None
    """A piece of the kind, for the symbol; for signs on rails ``None``."""


class LevelPage(msgspec.Struct, frozen=True):
    """One level of a plan."""

    level: int
    title: str
    """``Level 64 — track and signals``."""
    pieces: tuple[DrawnPiece, ...]
    below: tuple[DrawnPiece, ...]
    """What is seen of the level one below, to be drawn in grey: what carries this level is hidden by it."""
    arms: tuple[Arm, ...]
    """Those with an end on this level."""
    bounds: Bounds
    """Around the pieces and arms of this level."""
    key: tuple[KeyRow, ...]
    notes: tuple[str, ...]
    """Sentences on how to read the page."""


GROUP_WORDS: Final = {"track": "track", "carries": "blocks", "signals": "signals", "items": "items"}


def level_pages(drawn: Iterable[DrawnPiece], arms: tuple[Arm, ...]) -> tuple[LevelPage, ...]:
    """A page for each level on which something stands, the lowest first."""
    levels: dict[int, list[DrawnPiece]] = {}
    for one in drawn:
        levels.setdefault(one.piece.at.y, []).append(one)
    return tuple(_page(level, levels, arms) for level in sorted(levels))


def _page(level: int, levels: dict[int, list[DrawnPiece]], arms: tuple[Arm, ...]) -> LevelPage:
    pieces = tuple(levels[level])
    filled = frozenset(one.piece.at for one in pieces)
    below = tuple(one for one in levels.get(level - 1, ()) if is_seen_from_above(one.piece, filled))
    here = {arm: [end.at for end in (arm.enter, arm.leave) if end and end.at.y == level] for arm in arms}
    ends = [cell for cells in here.values() for cell in cells]
    bounds = bounds_of([*(one.piece.at for one in pieces), *ends])
    assert bounds is not None
    key = (*_piece_rows(pieces), *_mark_rows(pieces))
    return LevelPage(
        level,
        tr("Level {level} — {names}", level=level, names=_listed(_groups(pieces))).replace("-", "−"),
        pieces,
        below,
        tuple(arm for arm, cells in here.items() if cells),
        bounds,
        key,
        tuple(_notes(pieces, level - 1 if below else None)),
    )


def _groups(pieces: Iterable[DrawnPiece]) -> list[str]:
    groups = {TRAITS[one.piece.part].group for one in pieces}
    return [word for group, word in GROUP_WORDS.items() if group in groups]


def _listed(words: list[str]) -> str:
    *most, last = words
    return tr("{most} and {last}", most=", ".join(most), last=last) if most else last


def _piece_rows(pieces: Iterable[DrawnPiece]) -> Iterator[KeyRow]:
    """A row for each kind, in the order of the catalogue; after plain rails what they are besides."""
    kinds: dict[tuple[Part, Mode, bool], list[DrawnPiece]] = {}
    for one in pieces:
        kinds.setdefault(_kind(one.piece), []).append(one)
    catalogue = list(Part)
    for kind in sorted(kinds, key=lambda kind: (catalogue.index(kind[0]), kind[1:])):
        alike = kinds[kind]
        yield KeyRow(Sign.PIECE, len(alike), sample=alike[0].piece)
        yield from _of_these(alike)


def _kind(piece: Piece) -> tuple[Part, Mode, bool]:
    """Comparators of the two modes, and torches on top and on a side, have symbols of their own."""
    on_top = piece.part is Part.TORCH and piece.facing is Facing.UP
    return piece.part, piece.mode, not on_top


def _of_these(alike: list[DrawnPiece]) -> Iterator[KeyRow]:
    rails = [one.rail for one in alike if one.rail is not None]
    counts = {
        Sign.RISING: sum(rail.shape.is_rising for rail in rails),
        Sign.SWITCH: sum(rail.is_switch for rail in rails),
        Sign.INVERTER: sum(rail.is_switch and rail.inverter for rail in rails),
    }
    for sign, count in counts.items():
        if count:
            yield KeyRow(sign, count, of_these=True)


def _mark_rows(pieces: Iterable[DrawnPiece]) -> Iterator[KeyRow]:
    rails = [one.rail for one in pieces if one.rail is not None]
    counts = {
        Sign.FACING: sum(rail.faces for rail in rails),
        Sign.NUMBER: sum(rail.number is not None for rail in rails),
    }
    for sign, count in counts.items():
        if count:
            yield KeyRow(sign, count, of_these=True)


def _notes(pieces: tuple[DrawnPiece, ...], below: int | None) -> Iterator[str]:
    rails = [one.rail for one in pieces if one.rail is not None]
    yield tr("1 piece.") if len(pieces) == 1 else tr("{count:,} pieces.", count=len(pieces))
    if any(rail.is_switch for rail in rails):
        yield tr("Unbroken curve: the switch at rest. Dashed curve: powered.")
    if any(rail.run_through for rail in rails):
        yield tr("Narrow line across a curve: carts run straight through.")
    if any(rail.number for rail in rails):
        yield tr("Place the numbered rails in the order of their numbers, the others at any time.")
    if below is not None:
        yield tr("Grey lines: level {below}, one below.", below=below).replace("-", "−")
