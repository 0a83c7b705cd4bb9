"""Circuits as builders lay them, to be changed at random: lines, gates, latches, clocks, readers."""

from __future__ import annotations

from random import Random

from tests.oracle.carts import ArmSpec
from tests.oracle.dry_run_pieces import CARRIES, Piece, step, support
from tests.oracle.dry_run_plans import MIXED, random_piece, shuffled
from tests.oracle.shapes import Place

Drawn = tuple[list[Piece], list[ArmSpec]]


def floored(pieces: list[Piece]) -> list[Piece]:
    """With a solid block under whatever needs one and has none."""
    filled = {piece.at for piece in pieces}
    under = {
        support(piece): None for piece in pieces if piece.part not in CARRIES and support(piece) not in filled
    }
    return [Piece("solid-block", at, "north") for at in under] + pieces


def line(random: Random) -> Drawn:
    """A lever, dust with repeaters and steps, a lamp."""
    pieces = [Piece("lever", (0, 64, 0), "up")]
    y = 64
    for x in range(1, random.randint(4, 18)):
        if random.random() < 0.2:
            pieces.append(Piece("repeater", (x, y, 0), "east", random.choice((2, 4, 6, 8))))
            continue
        y += random.choice((0, 0, 0, 1, -1))
        if random.random() < 0.3:
            pieces.append(Piece(random.choice(("glass", "slab", "target-block")), (x, y - 1, 0), "north"))
        pieces.append(Piece("dust", (x, y, 0), "north"))
    return [*pieces, Piece("lamp", (pieces[-1].at[0] + 1, y, 0), "north")], []


def gate(random: Random) -> Drawn:
    """Levers that lead into blocks with torches on their far side, the torches into one line of dust."""
    pieces: list[Piece] = []
    for z in range(0, 2 * random.randint(1, 4), 2):
        pieces += [Piece("lever", (0, 64, z), "up"), Piece("dust", (1, 64, z), "north")]
        pieces += [Piece("solid-block", (2, 64, z), "north"), Piece("torch", (3, 64, z), "east")]
        pieces += [Piece("dust", (4, 64, z), "north"), Piece("dust", (4, 64, z + 1), "north")]
    last = pieces[-1].at
    return [
        *pieces,
        Piece("repeater", step(last, "east"), "east"),
        Piece("lamp", (6, 64, last[2]), "north"),
    ], []


def latch(random: Random) -> Drawn:
    """Two torches, each of which puts the other out; a button at each block."""
    pieces = [Piece("solid-block", (0, 64, 0), "north"), Piece("torch", (1, 64, 0), "east")]
    pieces += [Piece("dust", (2, 64, 0), "north"), Piece("dust", (2, 64, 1), "north")]
    pieces += [Piece("solid-block", (2, 64, 2), "north"), Piece("torch", (1, 64, 2), "west")]
    pieces += [Piece("dust", (0, 64, 2), "north"), Piece("dust", (0, 64, 1), "north")]
    pieces += [
        Piece("button", (0, 65, 0), "up"),
        Piece("button", (2, 65, 2), "up", wooden=random.random() < 0.5),
    ]
    return pieces, []


def clock(random: Random) -> Drawn:
    """A torch whose light comes back to its own block through repeaters."""
    delays = [random.choice((2, 4, 6, 8)) for _ in range(random.randint(1, 3))]
    pieces = [Piece("solid-block", (0, 64, 0), "north"), Piece("torch", (1, 64, 0), "east")]
    x = 2
    pieces += [Piece("dust", (x, 64, 0), "north"), Piece("dust", (x, 64, 1), "north")]
    for number, delay in enumerate(delays):
        pieces.append(Piece("repeater", (x - 1 - number, 64, 1), "west", delay))
    end = x - 1 - len(delays)
    pieces += [Piece("dust", (east, 64, 1), "north") for east in range(min(end, 0), end + 1)]
    pieces += [Piece("dust", (east, 64, 0), "north") for east in range(min(end, -1), 0)]
    once = {piece.at: piece for piece in pieces}
    return list(once.values()), []


def hopper_clock(random: Random) -> Drawn:
    """Two hoppers that face each other, a comparator at each, and a latch of dust that stops one of them."""
    items = ((random.choice(("ingot", "waybill:Salt")), random.randint(1, 12)),)
    pieces = [Piece("hopper", (0, 64, 0), "east", holds=items), Piece("hopper", (1, 64, 0), "west")]
    pieces += [Piece("comparator", (0, 64, 1), "south"), Piece("comparator", (1, 64, 1), "south")]
    pieces += [
        Piece("dust", (0, 64, 2), "north"),
        Piece("repeater", (1, 64, 2), "south", random.choice((2, 8))),
    ]
    if random.random() < 0.5:
        pieces += [Piece("dust", (-1, 64, z), "north") for z in range(3)]
    return pieces, []


def crafters(random: Random) -> Drawn:
    """Two crafters that face each other, with buttons and a comparator."""
    pieces = [Piece("auto-crafter", (0, 64, 0), "east", holds=(("ingot", random.randint(1, 2)),))]
    pieces += [Piece("auto-crafter", (1, 64, 0), "west"), Piece("comparator", (2, 64, 0), "east")]
    pieces += [
        Piece("button", (0, 65, 0), "up"),
        Piece("button", (1, 65, 0), "up"),
        Piece("dust", (3, 64, 0), "north"),
    ]
    pieces += [
        Piece("hopper", (0, 63, 0), random.choice(("down", "south"))),
        Piece("barrel", (0, 62, 0), "north"),
    ]
    return pieces, []


def reader(random: Random) -> Drawn:
    """A line of track over a hopper that reads a waybill and throws a switch further on."""
    waybills = (("waybill:Salt", random.choice((21, 22, 22, 23))),)
    pieces = [Piece("solid-block", (x, 63, 0), "north") for x in range(9) if x != 2]
    pieces += [Piece("hopper", (2, 63, 0), "down", holds=waybills), Piece("hopper", (2, 62, 0), "south")]
    pieces += [Piece("solid-block", (8, 63, z), "north") for z in (-1, 1)]
    wired = {4: "detector-rail", random.choice((1, 5)): "booster-rail"}
    pieces += [Piece(wired.get(x, "rail"), (x, 64, 0), "east") for x in range(8)]
    pieces += [
        Piece("rail", (8, 64, -1), "north"),
        Piece("rail", (8, 64, 1), "north"),
        Piece("rail", (8, 64, 0), "north"),
    ]
    pieces += [Piece("comparator", (2, 63, 1), "south", mode=random.choice(("compare", "subtract")))]
    pieces += [Piece("dust", (x, 63, 2), "north") for x in range(2, 9)]
    if random.random() < 0.5:
        pieces += [Piece("repeater", (9, 63, 2), "east"), Piece("dust", (9, 63, 1), "north")]
    arms = [
        ArmSpec("Quay", ((0, 64, 0), "east"), ((0, 64, 0), "west")),
        ArmSpec("Mill", ((8, 64, -1), "south"), ((8, 64, -1), "north")),
        ArmSpec("Fen", ((8, 64, 1), "north"), ((8, 64, 1), "south")),
    ]
    return pieces, arms


def ring(random: Random) -> Drawn:
    """A small ring of track with a spur, detectors and boosters on it, levers beside it."""
    square = [(x, 64, z) for x in range(3) for z in range(3) if (x, z) != (1, 1)]
    parts = ("rail", "rail", "rail", "rail", "booster-rail", "detector-rail")
    pieces = [Piece(random.choice(parts), at, random.choice(("north", "east"))) for at in square]
    pieces += [Piece("rail", (3, 64, z), "east") for z in random.sample(range(3), random.randint(1, 2))]
    pieces += [
        Piece("lever", (1, 64, 1), "up"),
        Piece("dust", (1, 62, 1), "north"),
        Piece("lever", (3, 62, 1), "west"),
    ]
    ends = [piece.at for piece in pieces if piece.at[0] == 3 and piece.part == "rail"]
    arms = [
        ArmSpec(name, (at, "west"), (at, "east")) for name, at in zip(("Quay", "Mill"), ends, strict=False)
    ]
    return pieces, arms


CIRCUITS = (line, gate, latch, clock, hopper_clock, crafters, reader, reader, ring, ring)


def random_circuit(random: Random) -> Drawn:
    """One of the circuits, most of them with a few pieces changed, added or taken away."""
    drawn, arms = random.choice(CIRCUITS)(random)
    pieces = {piece.at: piece for piece in floored(drawn)}
    for _ in range(random.choice((0, 1, 2, 4))):
        change(random, pieces)
    arms = [arm for arm in arms if arm.way_in[0] in pieces and "rail" in pieces[arm.way_in[0]].part]
    return shuffled(random, list(pieces.values())), arms


def change(random: Random, pieces: dict[Place, Piece]) -> None:
    """Another piece in a cell of the circuit or beside it, or none."""
    at = random.choice(list(pieces))
    if random.random() < 0.25 and len(pieces) > 1:
        del pieces[at]
        return
    if random.random() < 0.6:
        at = step(at, random.choice(("north", "east", "south", "west", "up", "down")))
    part = random.choices(tuple(MIXED), tuple(MIXED.values()))[0]
    pieces[at] = random_piece(random, part, at)
