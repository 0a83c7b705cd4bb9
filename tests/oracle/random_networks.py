"""Random networks: junctions of three and four arms joined at random, stations where an arm was left over."""

from __future__ import annotations

import random

from model.network.network import JunctionSpec, Link, Network, ReaderSpec, Station, Trip, end_of

ARMS = ("North", "East", "South", "West")


def random_network(
    rng: random.Random,
    junctions: int,
    trips: int,
    lengths: tuple[int, ...] = (1, 2, 3),
    given: float = 0.2,
    four_arms: float = 0.3,
    stations: int | None = None,
) -> Network:
    """Track both ways between arms. ``given``: how many of the readers have a default in the file."""
    arms = [
        ARMS if rng.random() < four_arms else ARMS[:first] + ARMS[first + 1 :]
        for first in (rng.randrange(4) for _ in range(junctions))
    ]
    names = [f"J{number}" for number in range(junctions)]
    free = [(name, arm) for name, own in zip(names, arms, strict=True) for arm in own]
    rng.shuffle(free)
    ends: list[tuple[str, str]] = []
    keep = len(free) // 3 if stations is None else stations
    while len(free) > max(keep, 1):
        one, other = free.pop(), free.pop()
        ends.append((end_of(*one), end_of(*other)))
    stops = [f"S{number}" for number in range(len(free))]
    ends += [(stop, end_of(*arm)) for stop, arm in zip(stops, free, strict=True)]
    links = tuple(
        Link(start, end, length)
        for one, other in ends
        for length in (rng.choice(lengths),)
        for start, end in ((one, other), (other, one))
    )
    specs = tuple(
        JunctionSpec(name, readers=tuple(_reader(rng, arm, own, given) for arm in own))
        for name, own in zip(names, arms, strict=True)
    )
    rides = tuple(
        Trip(*rng.sample(stops, 2), rng.choice((0, 1, 1, 2, 3, 5, 2.5))) for _ in range(trips)
    ) if len(stops) > 1 else ()  # fmt: skip
    return Network(stations=tuple(map(Station, stops)), junctions=specs, links=links, trips=rides)


def _reader(rng: random.Random, arm: str, arms: tuple[str, ...], given: float) -> ReaderSpec:
    """Out by any other arm, but by no more than two."""
    others = [other for other in arms if other != arm]
    ways = tuple(sorted(rng.sample(others, min(len(others), 1 if rng.random() < 0.15 else 2))))
    settled = len(ways) == 2 and rng.random() < given
    return ReaderSpec(arm, ways, rng.choice(ways) if settled else None)


def large_network(rng: random.Random, junctions: int, trips: int, lengths: range = range(16, 400)) -> Network:
    """Two stations a junction; of six arms by which carts enter, two lead to stations, the others on.

    Nearly all stations are reached from all, past some thirty readers.
    """
    leads = {
        "In 1": ("Out 1", "To 1"), "In 2": ("Out 2", "To 2"), "In 3": ("Out 1", "Out 3"),
        "In 4": ("Out 2", "Out 4"), "Of 1": ("Out 1", "Out 3"), "Of 2": ("Out 2", "Out 4"),
    }  # fmt: skip
    specs = tuple(
        JunctionSpec(f"J{number}", readers=tuple(ReaderSpec(arm, ways) for arm, ways in leads.items()))
        for number in range(junctions)
    )
    numbers = range(1, 5)
    outs = [end_of(spec.name, f"Out {number}") for spec in specs for number in numbers]
    ins = [end_of(spec.name, f"In {number}") for spec in specs for number in numbers]
    rng.shuffle(ins)
    stops = [f"S{number}" for number in range(2 * junctions)]
    ends = list(zip(outs, ins, strict=True))
    for number, stop in enumerate(stops):
        junction, place = specs[number // 2].name, number % 2 + 1
        ends += [(stop, end_of(junction, f"Of {place}")), (end_of(junction, f"To {place}"), stop)]
    links = tuple(Link(start, end, rng.choice(lengths)) for start, end in ends)
    rides = tuple(Trip(*rng.sample(stops, 2), rng.randint(1, 200)) for _ in range(trips))
    return Network(stations=tuple(map(Station, stops)), junctions=specs, links=links, trips=rides)
