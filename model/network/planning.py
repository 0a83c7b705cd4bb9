"""The planner of networks: ways, defaults and names, so that travellers carry as little as can be.

Each trip takes a shortest way. Then the waybills carried in a week are the fewest, then the names. What every
best plan does is settled first (``planning_narrowing``); greed gives a plan at once; integer programmes make
it the cheapest (``planning_cheapest``); a SAT solver looks for fewer names among all that are as cheap
(``planning_naming``). Each of them proves what it cannot better.
"""

from __future__ import annotations

import time
from collections.abc import Generator, Iterator, Sequence

import msgspec

from model.network.network import Network, WayPin
from model.network.planning_solving import Solved, solved
from model.network.planning_task import Pin, Survey
from model.network.planning_written import plain, written
from model.network.result import NetworkPlan, Price
from model.progress import Progress


def plan_network(network: Network, seconds: float = 60) -> Iterator[Progress | NetworkPlan]:
    """Plans, each better or more certain than the one before; the last one is the result, with prices.

    Can be stopped between two. The same network gives the same plans as long as the time is enough; the
    search is given up after that many seconds of work, with the best plan so far. Where there are pins, half
    of the time goes into their prices.
    """
    start = time.monotonic()
    survey = Survey(network)
    yield from survey.run()
    pins: tuple[Pin, ...] = (*network.pins, *network.ways)
    best: Solved | None = None
    for step in solved(survey, pins, start + (seconds / 2 if pins else seconds)):
        if isinstance(step, Solved):
            best = step
            yield written(network, best)
        else:
            yield step
    if pins and best is not None:
        prices = yield from _prices(survey, best, pins, start + seconds)
        yield msgspec.structs.replace(written(network, best), prices=prices)


def planned(network: Network, seconds: float = 60) -> NetworkPlan:
    """The result, for who has nothing to do meanwhile."""
    return [step for step in plan_network(network, seconds) if isinstance(step, NetworkPlan)][-1]


def _prices(
    survey: Survey, best: Solved, pins: Sequence[Pin], deadline: float
) -> Generator[Progress, None, tuple[Price, ...]]:
    """The price of each pin that is kept, as far as time allows: what a plan without it saves."""
    prices: list[Price] = []
    kept = [pin for pin in pins if pin not in best.unkept]
    for number, pin in enumerate(kept):
        yield Progress("prices", number, len(kept))
        now = time.monotonic()
        if now > deadline:
            break
        others = [each for each in kept if each is not pin]
        without = yield from _last(solved(survey, others, now + (deadline - now) / (len(kept) - number)))
        prices.append(
            Price(
                pin,
                plain(best.waybills_per_week - without.waybills_per_week),
                best.named.number - without.named.number,
                survey.longer(pin) if isinstance(pin, WayPin) else 0,
            )
        )
    return tuple(prices)


def _last(steps: Iterator[Progress | Solved]) -> Generator[Progress, None, Solved]:
    """What is solved in the end."""
    last: Solved | None = None
    for step in steps:
        if isinstance(step, Solved):
            last = step
        else:
            yield step
    assert last is not None, "there is always a plan"
    return last
