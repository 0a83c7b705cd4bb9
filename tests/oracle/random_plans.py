"""Random plans in plain words, from small dense blobs of rails to plans with heights, boosters and blocks."""

from __future__ import annotations

from random import Random

from tests.oracle.carts import ArmSpec
from tests.oracle.shapes import STEP, Place, Rail

WAYS = tuple(STEP)
BESIDE_TRACK = (
    "solid-block",
    "glass",
    "slab",
    "target-block",
    "barrel",
    "auto-crafter",
    "lamp",
    "hopper",
    "dust",
    "torch",
    "lever",
    "repeater",
)


def random_pieces(random: Random) -> list[Rail]:
    """A dense blob in a small box: mostly plain rails, on one to three levels."""
    width, height, depth = random.choice(((4, 1, 4), (3, 2, 3), (4, 2, 4), (4, 3, 4), (6, 3, 3), (5, 1, 5)))
    cells = [(x, y, z) for x in range(width) for y in range(height) for z in range(depth)]
    count = min(random.randint(5, 28), len(cells))
    plain = random.choice((1.0, 0.9, 0.7))
    return [(random_part(random, plain), at, random.choice(WAYS)) for at in random.sample(cells, count)]


def random_part(random: Random, plain: float) -> str:
    """A plain rail with the chance given, else another rail or a piece that is none."""
    if random.random() < plain:
        return "rail"
    if random.random() < 0.6:
        return random.choice(("booster-rail", "detector-rail"))
    return random.choice(BESIDE_TRACK)


def random_arms(random: Random, cells: list[Place]) -> list[ArmSpec]:
    """A few arms anywhere on the track, with ways in and out in any heading."""
    names = ("Quay", "Saltern", "Mill", "Fen")
    return [
        ArmSpec(
            name, (random.choice(cells), random.choice(WAYS)), (random.choice(cells), random.choice(WAYS))
        )
        for name in names
    ]
