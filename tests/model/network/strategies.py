"""Networks of any kind that a file can hold, for Hypothesis; ends and names need not be there."""

from __future__ import annotations

from typing import Final

from hypothesis import strategies as st

from model.network.network import (
    JunctionSpec,
    Link,
    Network,
    NetworkWaiver,
    ReaderPin,
    ReaderSpec,
    Station,
    Trip,
    WayPin,
    end_of,
)
from model.plan import Kept, Side

NAMES: Final = st.one_of(
    st.sampled_from(["Quay", "Mill", "Fen", "East", "West", "South"]),
    st.text(st.characters(exclude_categories=("Cs", "Cc"), exclude_characters=",/"), min_size=1, max_size=80),
)
KEPT: Final = st.sampled_from([(), (("colour", '"red"'),), (("x", "1.50"), ("y", "[null]"))])
SPOTS: Final = st.none() | st.tuples(*2 * [st.integers(-1_000_000, 1_000_000) | st.floats(-1e6, 1e6)])
READER_KEYS: Final = st.builds(end_of, NAMES, NAMES)
ENDS: Final = NAMES | READER_KEYS


@st.composite
def reader_specs(draw: st.DrawFn, start: str) -> ReaderSpec:
    """What becomes of carts that enter by an arm."""
    ways = tuple(draw(st.lists(NAMES, min_size=1, max_size=2, unique=True)))
    return ReaderSpec(start, ways, draw(st.none() | st.sampled_from(ways)), kept=draw(KEPT))


@st.composite
def junctions(draw: st.DrawFn) -> JunctionSpec:
    """A junction as its readers only, or with the path of a plan, which nobody reads."""
    name, at = draw(NAMES), draw(SPOTS)
    kept: Kept = draw(KEPT)
    if draw(st.booleans()):
        return JunctionSpec(name, draw(NAMES), at=at, kept=kept)
    starts = draw(st.lists(NAMES, max_size=3, unique=True))
    side = draw(st.none() | st.sampled_from(Side))
    readers = tuple(draw(reader_specs(start)) for start in starts)
    return JunctionSpec(name, None, readers, (), side, at, kept)


def _up_to(number: int, things: st.SearchStrategy, unique_by=None) -> st.SearchStrategy:
    return st.lists(things, max_size=number, unique_by=unique_by).map(tuple)


WAIVERS: Final = st.builds(
    NetworkWaiver, st.sampled_from(["empty-loop", "arm-without-link"]), _up_to(2, ENDS), NAMES, KEPT
)
PER_WEEK: Final = st.integers(0, 10**9) | st.floats(0, 1e9).filter(lambda number: not number.is_integer())
NETWORKS: Final = st.builds(
    Network,
    st.text(st.characters(exclude_categories=("Cs",)), max_size=20),
    _up_to(4, st.builds(Station, NAMES, SPOTS, KEPT)),
    _up_to(4, junctions()),
    _up_to(4, st.builds(Link, ENDS, ENDS, st.integers(1, 100_000_000), KEPT)),
    _up_to(4, st.builds(Trip, NAMES, NAMES, PER_WEEK, KEPT)),
    _up_to(
        4,
        st.builds(ReaderPin, READER_KEYS, st.none() | NAMES, st.none() | NAMES, KEPT),
        unique_by=lambda pin: pin.reader,
    ),
    _up_to(
        4,
        st.builds(WayPin, NAMES, NAMES, _up_to(4, READER_KEYS), KEPT),
        unique_by=lambda way: (way.start, way.end),
    ),
    _up_to(3, WAIVERS),
    KEPT,
)


_STATION: Final = st.sampled_from(["Quay", "Fen", "Mill", "Beacon"])
_ARM: Final = st.sampled_from(["East", "West", "South"])
_AT: Final = st.builds(end_of, st.sampled_from(["Mill", "Beacon"]), _ARM)


@st.composite
def _joined_junctions(draw: st.DrawFn) -> JunctionSpec:
    readers = []
    for start in draw(st.lists(_ARM, unique=True, max_size=3)):
        ways = tuple(draw(st.lists(_ARM, unique=True, min_size=1, max_size=2)))
        readers.append(ReaderSpec(start, ways, draw(st.none() | st.sampled_from(ways))))
    return JunctionSpec(draw(st.sampled_from(["Mill", "Beacon"])), None, tuple(readers))


JOINED_NETWORKS: Final = st.builds(
    Network,
    st.just(""),
    _up_to(4, st.builds(Station, _STATION)),
    _up_to(3, _joined_junctions()),
    _up_to(14, st.builds(Link, _STATION | _AT, _STATION | _AT, st.integers(1, 9))),
    _up_to(6, st.builds(Trip, _STATION, _STATION, st.integers(0, 5) | st.just(0.5))),
    _up_to(
        3,
        st.builds(ReaderPin, _AT, st.none() | _ARM, st.none() | st.sampled_from(["Salt", "Reed"])),
        unique_by=lambda pin: pin.reader,
    ),
    _up_to(
        2,
        st.builds(WayPin, _STATION, _STATION, _up_to(2, _AT)),
        unique_by=lambda way: (way.start, way.end),
    ),
)
"""So few names that most links lead somewhere; much is doubled, missing or contradicts itself, too."""
