"""Two plans compared, in words for people: by part, then cell by cell from the lowest level up."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby
from typing import Final

from app.compare_words import ORDER, beside_words, counts_words, difference_words, name_words, verb
from app.subcommands.streams import columns, plain
from model.comparing import (
    Difference,
    compare_as_built,
    differences_beside,
    placed_elsewhere,
)
from model.edits.words import counted, part_word
from model.parts import RAILS, Part
from model.plan import Plan
from model.track.layout import Layout

BY_HAND: Final = (
    "Shapes are those of each plan built anew in its own order; beside track that stands already, rails "
    "placed by hand may come to lie otherwise."
)


def compare_text(before: tuple[str, Plan], after: tuple[str, Plan]) -> str:
    """The report; each plan comes with the name of its file. The counts come last."""
    (from_file, earlier), (to_file, later) = before, after
    found = compare_as_built(Layout(earlier), Layout(later))
    lines = [plain(f"From {from_file} to {to_file}") + "\n"]
    lines += _section("By part", _by_part(found))
    for level, each in _levels(found):
        lines += _section(f"Level {level}".replace("-", "\N{MINUS SIGN}"), map(_row, each))
    lines += _section("Beside the pieces", _beside(earlier, later))
    if any(each.after is not None and each.after.part in RAILS for each in found):
        lines.append(BY_HAND + "\n")
    return "".join(lines) + _counts(found) + "\n"


def _section(heading: str, rows: Iterable[Sequence[str]]) -> Iterator[str]:
    table = columns(rows)
    if table:
        yield f"{heading}\n{table}"


def _by_part(found: Sequence[Difference]) -> Iterator[list[str]]:
    """How many of each part, as the catalogue has them; what becomes another part has a line of its own."""
    by_parts: dict[tuple[Part, ...], list[Difference]] = {}
    for each in found:
        by_parts.setdefault(_parts(each), []).append(each)
    catalogue = list(Part)
    for parts in sorted(by_parts, key=lambda parts: [*map(catalogue.index, parts)]):
        yield [" → ".join(map(part_word, parts)), _counts(by_parts[parts])]


def _counts(found: Iterable[Difference]) -> str:
    return counts_words(Counter(each.kind for each in found))


def _parts(found: Difference) -> tuple[Part, ...]:
    """The part, or the one before and the one after."""
    return tuple(dict.fromkeys(piece.part for piece in (found.before, found.after) if piece is not None))


def _levels(found: Sequence[Difference]) -> Iterator[tuple[int, Iterator[Difference]]]:
    """What is taken away in a level comes first, and what is placed comes last."""
    ordered = sorted(found, key=lambda each: (each.at.y, ORDER[each.kind]))
    return groupby(ordered, key=lambda each: each.at.y)


def _row(found: Difference) -> list[str]:
    return [verb(found.kind), str(found.at), difference_words(found)]


def _beside(before: Plan, after: Plan) -> Iterator[list[str]]:
    for each in differences_beside(before.details, after.details):
        yield [name_words(each), beside_words(each)]
    moved = placed_elsewhere(before.pieces, after.pieces)
    if moved:
        yield ["order of placing", f"{counted(len(moved), 'piece')} earlier or later"]
