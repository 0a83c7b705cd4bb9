"""Circuits as builders lay them, to be changed at random: lines, gates, latches, clocks, readers."""

from __future__ import annotations

from random import Random

from tests.oracle.carts import ArmSpec
from tests.oracle.dry_run_pieces import CARRIES, HUNG, OPPOSITE, SOLID, Piece, step, support
from tests.oracle.dry_run_plans import MIXED, random_piece, shuffled
from tests.oracle.shapes import STEP, Place

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


def locks(random: Random) -> Drawn:
    """Repeaters in a row, each driven from behind and locked from the side, a locker locked in its turn."""
    pieces = []
    for x in range(0, 3 * random.randint(1, 3), 3):
        source = Piece(random.choice(("lever", "lever", "button")), (x, 64, 0), "up")
        pieces += [source, random_piece(random, "repeater", (x + 1, 64, 0))._replace(facing="east")]
        locker = random_piece(random, random.choice(("repeater", "repeater", "comparator")), (x + 1, 64, 1))
        pieces += [locker._replace(facing="north"), source._replace(at=(x + 1, 64, 2))]
        if random.random() < 0.5:
            second = random_piece(random, "repeater", (x + 2, 64, 1))._replace(facing="west")
            pieces += [
                second,
                Piece("lever", (x + 2, 65, 2), "up"),
                Piece("solid-block", (x + 2, 64, 2), "north"),
            ]
            pieces += [Piece("dust", (x + 3, 64, 1), "north"), Piece("lever", (x + 3, 64, 2), "up")]
    return pieces, []


def blinker(random: Random) -> Drawn:
    """Torches that a lever or a loop of their own puts out again and again."""
    pieces = [Piece("lever", (0, 64, 0), "west"), Piece("solid-block", (1, 64, 0), "north")]
    pieces += [
        Piece("torch", (2, 64, 0), "east"),
        Piece("dust", (3, 64, 0), "north"),
        Piece("lamp", (4, 64, 0), "north"),
    ]
    if random.random() < 0.5:
        pieces += [Piece("solid-block", (2, 65, 0), "north"), Piece("dust", (1, 65, 0), "north")]
    if random.random() < 0.3:
        pieces += [Piece("solid-block", (2, 64, 1), "north"), Piece("torch", (1, 64, 1), "west")]
    return pieces, []


def delays(random: Random) -> Drawn:
    """A lever that drives repeaters and a torch at once, for pulses and gaps that are shorter than their
    delays.
    """
    pieces = [Piece("lever", (0, 64, 0), "up")]
    for row, z in enumerate(random.sample((-1, 0, 1), random.randint(1, 3))):
        pieces.append(Piece("dust", (0, 64, z), "north") if z else Piece("dust", (1, 64, 0), "north"))
        start = 1 if z else 2
        cells = [(x, 64, z) for x in range(start, start + 1 + row)]
        pieces += [Piece("repeater", at, "east", random.choice((4, 6, 8))) for at in cells]
    return [*pieces, Piece("lamp", (5, 64, 0), "north")], []


def comparing(random: Random) -> Drawn:
    """A comparator with a container or dust behind it, also through a block, and dust of some strength
    beside it.
    """
    mode = random.choice(("compare", "subtract"))
    pieces = [Piece("comparator", (0, 64, 0), "east", mode=mode), Piece("dust", (1, 64, 0), "north")]
    holder = random_piece(random, random.choice(("hopper", "barrel", "auto-crafter")), (-1, 64, 0))
    behind = random.choice(("container", "block", "block", "dust"))
    if behind == "container":
        pieces.append(holder)
    elif behind == "block":
        pieces += [holder._replace(at=(-2, 64, 0)), Piece(random.choice(SOLID), (-1, 64, 0), "north")]
        pieces += ramp(random, (-1, 64, 1), (0, 1))
    else:
        pieces += ramp(random, (-1, 64, 0), (-1, 0))
    for z in random.sample((-1, 1), random.randint(0, 2)):
        pieces += ramp(random, (0, 64, z), (0, z))
    return list({piece.at: piece for piece in reversed(pieces)}.values()), []


def ramp(random: Random, at: Place, away: tuple[int, int]) -> list[Piece]:
    """Dust that leads to a cell from a lever some way off."""
    length = random.randint(1, 6)
    cells = [(at[0] + away[0] * n, at[1], at[2] + away[1] * n) for n in range(length + 1)]
    return [*(Piece("dust", cell, "north") for cell in cells[:-1]), Piece("lever", cells[-1], "up")]


def boosters(random: Random) -> Drawn:
    """A long run of boosters over hills, with levers, buttons and detector rails at it."""
    y = 64
    pieces = []
    length = random.randint(10, 20)
    for x in range(length):
        part = random.choices(("booster-rail", "rail", "detector-rail"), (20, 1, 1))[0]
        pieces.append(Piece(part, (x, y, 0), "east"))
        y += random.choice((0, 0, 0, 0, 1, -1))
        if random.random() < 0.15:
            pieces.append(Piece(random.choice(("lever", "button")), (x, pieces[-1].at[1], 1), "up"))
    first, last = pieces[0].at, next(piece.at for piece in reversed(pieces) if piece.at[2] == 0)
    return pieces, [
        ArmSpec("Quay", (first, "east"), (first, "west")),
        ArmSpec("Mill", (last, "west"), (last, "east")),
    ]


def switches(random: Random) -> Drawn:
    """Rails close together with levers, dust, torches and detectors among them and under them."""
    square = [(x, 64, z) for x in range(4) for z in range(random.randint(3, 4))]
    rails = ("rail",) * 8 + ("booster-rail", "detector-rail")
    wiring = ("lever", "lever", "button", "dust", "torch", "repeater", "solid-block")
    pieces = []
    for at in square:
        part = random.choice(rails) if random.random() < 0.7 else random.choice(wiring)
        pieces.append(random_piece(random, part, at))
        if random.random() < 0.25:
            under = random.choice(
                (Piece("torch", (at[0], 62, at[2]), "up"), Piece("lever", (at[0], 62, at[2]), "down"))
            )
            pieces.append(under)
    pieces += [Piece("dust", (-1, 63, z), "north") for z in range(random.randint(0, 4))]
    pieces.append(Piece("lever", (-1, 63, -1), "up"))
    ends = [
        (piece.at, way)
        for piece in pieces
        if "rail" in piece.part
        for way, at in around(piece.at)
        if at not in square
    ]
    ways = random.sample(ends, min(3, len(ends)))
    names = zip(("Quay", "Mill", "Fen"), ways, strict=False)
    return pieces, [ArmSpec(name, (at, OPPOSITE[way]), (at, way)) for name, (at, way) in names]


def around(at: Place) -> list[tuple[str, Place]]:
    """The four cells beside one at its level, with the way to each."""
    return [(way, step(at, way)) for way in STEP]


def stairs(random: Random) -> Drawn:
    """Dust on blocks of all kinds and of several heights, with something over it here and there."""
    pieces = []
    kinds = ("solid-block", "solid-block", "solid-block", "glass", "slab", "target-block", "hopper", "lamp")
    for x in range(4):
        for z in range(random.randint(2, 4)):
            y = random.choice((63, 63, 64, 65))
            pieces.append(Piece(random.choice(kinds), (x, y, z), "north"))
            on_it = random.choices(("dust", "lever", "torch", "repeater"), (12, 2, 1, 1))[0]
            pieces.append(random_piece(random, on_it, (x, y + 1, z))._replace(facing="north"))
            if on_it in HUNG:
                pieces[-1] = pieces[-1]._replace(facing="up")
            if random.random() < 0.2:
                pieces.append(Piece(random.choice(kinds), (x, y + 2, z), "north"))
    return pieces, []


PLAIN = (line, gate, latch, clock, hopper_clock, crafters, crafters, stairs, stairs)
HARD = (
    locks,
    locks,
    blinker,
    blinker,
    comparing,
    comparing,
    boosters,
    switches,
    switches,
    switches,
    reader,
    ring,
)
CIRCUITS = (*PLAIN, *HARD)


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
