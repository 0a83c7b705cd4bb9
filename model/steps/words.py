"""The words of the steps: what to place where, why then, and what to see."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Final

from model.edits.words import part_word
from model.grid import Cell
from model.parts import FACED, Mode, Part
from model.pieces import Piece
from model.steps.areas import Area
from model.track.shapes import Shape

NAMED: Final = 3
"""Cells that a sentence names, at most; of more it gives the number."""
_UNCOUNTED: Final = frozenset({Part.DUST, Part.GLASS})
"""Parts of which one has pieces."""


def parts(number: int, part: Part, *, wooden: bool = False) -> str:
    """``1 rail``, ``3 torches``, ``7 pieces of dust``."""
    word = f"wooden {part_word(part)}" if wooden else part_word(part)
    if part in _UNCOUNTED:
        return f"{number:,} piece{'' if number == 1 else 's'} of {word}"
    ending = "" if number == 1 else "es" if word.endswith("ch") else "s"
    return f"{number:,} {word}{ending}"


def title_of_run(pieces: Sequence[Piece], *, faced: bool) -> str:
    """``5 rails from −3 64 1 to 1 64 1``, and the facing where it matters."""
    first, last = pieces[0], pieces[-1]
    where = f"at {first.at}" if first is last else f"from {first.at} to {last.at}"
    facing = f", facing {first.facing}" if faced else ""
    return f"{parts(len(pieces), first.part)} {where}{facing}"


def title_of_area(area: Area) -> str:
    """``18 solid blocks from −3 63 −1 to 2 63 1, 6 × 3``, ``2 torches at 0 64 1 and 3 64 1, facing up``."""
    first, last = area.pieces[0], area.pieces[-1]
    if not area.across:
        where = f"at {listed(str(piece.at) for piece in area.pieces)}"
    else:
        where = f"from {first.at} to {last.at}"
        if area.across > 1 and area.deep > 1:
            where += f", {area.across:,} × {area.deep:,}"
    return f"{parts(len(area.pieces), first.part, wooden=first.wooden)} {where}{_set_as(first)}"


def _set_as(piece: Piece) -> str:
    """What else a builder must do to a piece: its facing, delay, mode and content."""
    said = [f"facing {piece.facing}"] if piece.part in FACED else []
    if piece.part is Part.REPEATER:
        said.append(f"delay {piece.delay} ticks")
    if piece.mode is not Mode.COMPARE:
        said.append(f"set to {piece.mode}")
    if piece.holds:
        said.append("holding " + listed(f"{held.count:,} {held.item}" for held in piece.holds))
    return "".join(f", {words}" for words in said)


def sight_of_area(area: Area) -> str:
    """``A floor of 6 × 3 solid blocks at level 63.``"""
    first = area.pieces[0]
    level = f"{first.at.y}".replace("-", "\N{MINUS SIGN}")
    counted = parts(len(area.pieces), first.part)
    if not area.across:
        return f"{counted} at level {level}."
    number, words = counted.split(" ", 1)
    if area.across > 1 and area.deep > 1:
        return f"A floor of {area.across:,} × {area.deep:,} {words} at level {level}."
    way = "east-west" if area.across > 1 else "north-south"
    return f"A line of {number} {words} at level {level}, {way}."


def lies(shape: Shape) -> str:
    """``lies south-east``, ``rises to the north``."""
    return f"rises to the {shape.rises_to.word}" if shape.rises_to is not None else f"lies {shape.word}"


def _lie(shape: Shape) -> str:
    return f"rise to the {shape.rises_to.word}" if shape.rises_to is not None else f"lie {shape.word}"


def sight_of_run(
    laid: Mapping[Cell, Shape], bent: Mapping[Cell, tuple[Shape, Shape]], later: set[Cell]
) -> str:
    """How the rails lie that were placed, and those that they bent, with the shape before and after.

    ``later`` has the rails of both that will be bent again.
    """
    said = [*_laid_words(laid, later)]
    for cell, (before, after) in bent.items():
        for_now = " for now" if cell in later else ""
        said.append(f"{cell} has turned from {before.word} to {after.word}{for_now}.")
    return " ".join(said)


def _laid_words(laid: Mapping[Cell, Shape], later: set[Cell]) -> Iterable[str]:
    alike: dict[tuple[Shape, bool], list[Cell]] = {}
    for cell, shape in laid.items():
        alike.setdefault((shape, cell in later), []).append(cell)
    (most, for_now), cells = max(alike.items(), key=lambda entry: len(entry[1]))
    others = {key: cells for key, cells in alike.items() if key != (most, for_now)}
    now = " for now" if for_now else ""
    if len(laid) == 1:
        yield f"{cells[0]} {lies(most)}{now}."
    else:
        yield f"All {'others ' if others else ''}{_lie(most)}{now}."
    for (shape, for_now), cells in others.items():
        verb = lies(shape) if len(cells) == 1 else _lie(shape)
        yield f"{places(cells)} {verb}{' for now' if for_now else ''}."


def listed(words: Iterable[str]) -> str:
    """``a``, ``a and b``, ``a, b and c``."""
    *first, last = words
    return f"{', '.join(first)} and {last}" if first else last


def places(cells: Sequence[Cell]) -> str:
    """The cells, or the first of them and how many more there are."""
    shown = [str(cell) for cell in cells[:NAMED]]
    more = len(cells) - len(shown)
    return listed([*shown, f"{more:,} more"] if more else shown)
