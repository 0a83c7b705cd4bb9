"""A judge of wired junctions: it sees the plan files before and after, and knows nothing but the rules.

It shares no code with ``model``. What carts do is asked of a runner, see ``wiring_runs``.
"""

from __future__ import annotations

from collections import Counter
from itertools import combinations
from typing import NamedTuple

from tests.oracle.dry_run_pieces import (
    CARRIES,
    WAYS,
    Piece,
    Wiring,
    back,
    front,
    sides,
    step,
    support,
)
from tests.oracle.shapes import ENDS, RAIL_PARTS, Place, build

STRAIGHT = ("north-south", "east-west")
NEAR = 2
"""Columns around a rail in which wiring may come up to one level below it, also where others stand lower."""
Document = dict
"""A plan file, as JSON has it."""


class Box(NamedTuple):
    """What the builder allows."""

    grow: int = 1
    depth: int = 6


def faults_of_plan(before: Document, after: Document, box: Box) -> list[str]:
    """What is wrong with the wired plan as it stands, in words."""
    old, new = pieces_in(before), pieces_in(after)
    words = [f"{key} differs" for key in before if key != "pieces" and before[key] != after.get(key)]
    words += touching_faults(lines_in(old, new))
    words += [f"two pieces at {at}" for at, count in Counter(p.at for p in new).items() if count > 1]
    return [*words, *kept_faults(old, new), *box_faults(old, new, box), *support_faults(new)]


def kept_faults(old: list[Piece], new: list[Piece]) -> list[str]:
    """All that stood there still does, but for carriers under rails, and straight rails that detect now."""
    before, after = build(rails_of(old)), build(rails_of(new))
    there = {piece.at: piece for piece in new}
    words = []
    for piece in old:
        other = there.get(piece.at)
        if other is None:
            words.append(f"{piece.part} at {piece.at} is gone")
        elif other != piece and not may_become(piece, other, before.shape, before.part):
            words.append(f"{piece.part} at {piece.at} became {other.part} facing {other.facing}")
    if [piece.at for piece in old if piece.part in RAIL_PARTS] != [at for _, at, _ in rails_of(new)]:
        words.append("other rails, or in another order")
    if before.shape != after.shape:
        words.append("rails lie otherwise as built")
    untouched = [piece for piece in old if there.get(piece.at) == piece]
    if untouched != [piece for piece in new if piece in set(untouched)]:
        words.append("what stood there is placed in another order")
    return words


def may_become(piece: Piece, other: Piece, shapes: dict[Place, str], rails: dict[Place, str]) -> bool:
    """Whether one piece may come in the place of another."""
    if piece.part == "rail":
        is_straight = shapes[piece.at] in STRAIGHT
        return other.part == "detector-rail" and other.facing == piece.facing and is_straight
    return piece.part in CARRIES and other.part in CARRIES and step(piece.at, "up") in rails


def box_faults(old: list[Piece], new: list[Piece], box: Box) -> list[str]:
    """New pieces are no rails and stand inside the box, below the track."""
    rails = [at for _, at, _ in rails_of(old)]
    there = {piece.at for piece in old}
    xs, ys, zs = ([at[axis] for at in rails] for axis in range(3))
    words = []
    for piece in new:
        if piece.at in there:
            continue
        x, y, z = piece.at
        near = [ry for rx, ry, rz in rails if abs(rx - x) <= NEAR and abs(rz - z) <= NEAR]
        inside = (
            min(xs) - box.grow <= x <= max(xs) + box.grow and min(zs) - box.grow <= z <= max(zs) + box.grow
        )
        if piece.part in RAIL_PARTS:
            words.append(f"a new {piece.part} at {piece.at}")
        if not inside or not min(ys) - box.depth <= y < min(near, default=min(ys)):
            words.append(f"{piece.part} at {piece.at} stands outside the box")
    return words


def support_faults(pieces: list[Piece]) -> list[str]:
    """Every piece that needs something to stand on, or to hang on, has it; also the raised ends of rails."""
    parts = {piece.at: piece.part for piece in pieces}
    shapes = build(rails_of(pieces)).shape
    words = []
    for piece in pieces:
        needs = [] if piece.part in CARRIES else [support(piece)]
        needs += [step(piece.at, way) for way, rise in ENDS.get(shapes.get(piece.at), ()) if rise]
        words += [f"{piece.part} at {piece.at} lacks {at}" for at in needs if parts.get(at) not in CARRIES]
    return words


class Line(NamedTuple):
    """The dust and repeaters behind a reader."""

    start: Place
    dust: frozenset[Place]
    repeaters: frozenset[Place]
    targets: frozenset[Place]
    """The target blocks that its dust points into or its repeaters face."""


def faults_of_report(before: Document, after: Document, report: Document) -> list[str]:
    """The numbers that were printed, counted again."""
    old, new = pieces_in(before), pieces_in(after)
    lowest = min(at[1] for _, at, _ in rails_of(old))
    counted = {
        "wired": True,
        "footprint_cells": len({(piece.at[0], piece.at[2]) for piece in new}),
        "depth": lowest - min(piece.at[1] for piece in new),
        "lines": sorted((len(line.dust), len(line.repeaters)) for line in lines_in(old, new)),
        "passed": report["verified"]["runs"],
    }
    printed = {
        **{key: report[key] for key in ("wired", "footprint_cells", "depth")},
        "lines": sorted((line["dust"], line["repeaters"]) for line in report["lines"]),
        "passed": report["verified"]["passed"],
    }
    return [
        f"{key}: {printed[key]} printed, {counted[key]} counted"
        for key in counted
        if printed[key] != counted[key]
    ]


def touching_faults(lines: list[Line]) -> list[str]:
    """Lines that run into each other; their readers could not be told apart."""
    return [
        f"the lines from {first.start} and {second.start} touch"
        for first, second in combinations(lines, 2)
        if first.dust & second.dust
    ]


def lines_in(old: list[Piece], new: list[Piece]) -> list[Line]:
    """The new lines, in file order of the repeaters with which readers drive them.

    Dust at which a comparator looks, or to which it gives, belongs to a reader, as does the repeater that
    such dust drives and with which the line begins. A line ends at target blocks.
    """
    wiring, there = Wiring(new), {piece.at for piece in old}
    nets = nets_of(wiring)
    about = {at for piece in new if piece.part == "comparator" for at in seen_by(piece, wiring)}
    inner = {at for net in nets if net & about for at in net}
    repeaters = [piece for piece in new if piece.part == "repeater" and piece.at not in there]
    starts = [front(piece) for piece in repeaters if back(piece) in inner]
    found = [line_from(start, wiring, nets, repeaters) for start in starts if start in wiring.dust]
    return [line for line in found if line.targets]


def line_from(start: Place, wiring: Wiring, nets: list[set[Place]], repeaters: list[Piece]) -> Line:
    """The net of dust in which a line starts, and those behind its repeaters."""
    dust: set[Place] = set()
    driven: set[Place] = set()
    ends = [start]
    while ends:
        end = ends.pop()
        if end in wiring.dust:
            dust |= next(net for net in nets if end in net)
        elif wiring.parts.get(end) == "repeater":
            driven.add(end)
        behind = [each for each in repeaters if back(each) in dust | driven]
        new = [at for each in behind for at in (each.at, front(each)) if at not in dust | driven]
        ends += [at for at in new if wiring.parts.get(at) in ("dust", "repeater")]
    pointed = {at for each in dust for at in wiring.points_to[each]}
    pointed |= {front(wiring.pieces[each]) for each in driven}
    targets = frozenset(at for at in pointed if wiring.parts.get(at) == "target-block")
    return Line(start, frozenset(dust), frozenset(driven), targets)


def seen_by(comparator: Piece, wiring: Wiring) -> list[Place]:
    """The cells that a comparator looks at and gives to, also through a block."""
    ahead = front(comparator)
    through = [step(ahead, way) for way in WAYS] if ahead in wiring.solids else []
    return [ahead, *through, back(comparator), *sides(comparator)]


def nets_of(wiring: Wiring) -> list[set[Place]]:
    """Dust that hangs together."""
    nets, left = [], set(wiring.dust)
    while left:
        net, ends = set(), [left.pop()]
        while ends:
            at = ends.pop()
            net.add(at)
            ends += [other for other in wiring.takes_from[at] if other not in net]
        nets.append(net)
        left -= net
    return nets


def pieces_in(document: Document) -> list[Piece]:
    """The pieces of a plan file in plain words, what it may leave out filled in."""
    return [piece_in(entry) for entry in document["pieces"]]


def piece_in(entry: dict) -> Piece:
    first = {"torch": "up", "lever": "up", "button": "up", "hopper": "down"}.get(entry["part"], "north")
    return Piece(
        entry["part"],
        tuple(entry["at"]),
        entry.get("facing", first),
        entry.get("delay", 2),
        entry.get("mode", "compare"),
        entry.get("wooden", False),
        tuple((held["item"], held["count"]) for held in entry.get("holds", ())),
    )


def rails_of(pieces: list[Piece]) -> list[tuple[str, Place, str]]:
    """The rails in the order of placing, as ``build`` takes them."""
    return [(piece.part, piece.at, piece.facing) for piece in pieces if piece.part in RAIL_PARTS]
