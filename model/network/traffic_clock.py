"""When carts set out."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import count
from random import Random

from model.network.times import WEEK
from model.network.traffic_values import TrafficSettings


def moments(per_week: float, place: int, settings: TrafficSettings) -> Iterator[float]:
    """The seconds at which the carts of a trip set out, without end; none where nobody rides.

    ``place``: of the trip in its file. Each trip has chance of its own, so that one more at the end of the
    file leaves the carts of all others as they were.
    """
    if per_week <= 0:
        return
    chance = Random(f"{settings.seed} {place}")
    pause = WEEK / per_week
    if settings.evenly:
        first = chance.random() * pause
        yield from (first + number * pause for number in count())
    now = 0.0
    while True:
        now += chance.expovariate(1 / pause)
        yield now
