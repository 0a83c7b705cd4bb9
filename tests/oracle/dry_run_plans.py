"""Random pieces of every part, and dense boxes of them."""

from __future__ import annotations

from itertools import product
from random import Random

from tests.oracle.dry_run_items import in_stacks
from tests.oracle.dry_run_pieces import (
    CARRIES,
    HUNG,
    SLOTS,
    WAYS,
    Piece,
    step,
    support,
)
from tests.oracle.shapes import STEP, Place

FACINGS = {
    "torch": ("up", "up", *STEP),
    "lever": tuple(WAYS),
    "button": tuple(WAYS),
    "hopper": ("down", "down", *STEP),
    "auto-crafter": tuple(WAYS),
}
ITEMS = ("waybill:Salt", "waybill:Peat", "ingot", "nugget")

WIRING = {"solid-block": 8, "dust": 9, "torch": 4, "repeater": 4, "comparator": 3, "lever": 2, "button": 1}
WIRING |= {"glass": 1, "slab": 1, "target-block": 1, "lamp": 2, "hopper": 1, "barrel": 1, "auto-crafter": 1}
LOCKS = {"solid-block": 3, "repeater": 8, "comparator": 3, "dust": 3, "torch": 2, "lever": 3, "button": 2}
ITEM_PARTS = {"hopper": 9, "barrel": 2, "auto-crafter": 4, "comparator": 3, "dust": 2, "solid-block": 2}
ITEM_PARTS |= {"torch": 1, "lever": 2, "button": 2, "repeater": 1, "rail": 1, "detector-rail": 1}
TRACK = {
    "rail": 12,
    "booster-rail": 3,
    "detector-rail": 3,
    "solid-block": 4,
    "dust": 3,
    "torch": 1,
    "lever": 2,
}
TRACK |= {
    "repeater": 1,
    "button": 1,
    "glass": 1,
    "hopper": 2,
    "target-block": 1,
    "barrel": 1,
    "comparator": 1,
}
MIXED = dict.fromkeys((*WIRING, *TRACK), 2) | {"solid-block": 8, "dust": 6, "rail": 8}
THEMES = (WIRING, WIRING, LOCKS, ITEM_PARTS, TRACK, TRACK, MIXED)


def random_piece(random: Random, part: str, at: Place) -> Piece:
    """A piece of that part in any of its states."""
    facing = random.choice(FACINGS.get(part, tuple(STEP)))
    delay = random.choice((2, 2, 4, 6, 8)) if part == "repeater" else 2
    mode = random.choice(("compare", "subtract")) if part == "comparator" else "compare"
    wooden = part == "button" and random.random() < 0.5
    return Piece(part, at, facing, delay, mode, wooden, random_content(random, part))


def random_content(random: Random, part: str) -> tuple[tuple[str, int], ...]:
    """Nothing, little, a single entry, much."""
    size = SLOTS.get(part, 0)
    if not size or random.random() < 0.3:
        return ()
    if part == "auto-crafter" and random.random() < 0.6:
        count = random.choice((1, 1, 2, 3))
        return random.choice(((("ingot", count),), (("nugget", count),) * 9))
    if random.random() < 0.3:
        return ((random.choice(ITEMS), random.choice((1, 4, 5, 22, 23, 64, 68, 69, 70))),)
    few = random.sample(ITEMS, random.randint(1, 4))
    holds = tuple(
        (random.choice(few), random.choice((1, 1, 2, 63, 64))) for _ in range(random.randint(1, size))
    )
    return holds if len(in_stacks(holds)) <= size else ()


def random_box(random: Random) -> list[Piece]:
    """A dense box of anything, in any order; most of what needs a support has one."""
    sizes = ((3, 3, 3), (3, 2, 4), (4, 2, 4), (4, 3, 4), (5, 2, 5), (6, 4, 6), (4, 1, 4))
    width, height, depth = random.choice(sizes)
    theme = random.choice(THEMES)
    filled = random.choice((0.3, 0.5, 0.7, 0.9))
    pieces: dict[Place, Piece] = {}
    for y, x, z in product(range(64, 64 + height), range(width), range(depth)):
        if random.random() > filled:
            continue
        part = random.choices(tuple(theme), tuple(theme.values()))[0]
        piece = random_piece(random, part, (x, y, z))
        if part not in CARRIES and support(piece) not in pieces and random.random() < 0.8:
            if part in HUNG or y > 64:
                continue
            below = step(piece.at, "down")
            pieces[below] = random_piece(
                random, random.choice(("solid-block", "solid-block", "glass")), below
            )
        pieces[piece.at] = piece
    return shuffled(random, list(pieces.values()))


def shuffled(random: Random, pieces: list[Piece]) -> list[Piece]:
    """In another order half of the time."""
    return random.sample(pieces, len(pieces)) if random.random() < 0.5 else pieces
