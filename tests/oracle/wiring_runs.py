"""What carts must do on a wired junction: every wanted route, trains of all sizes, one reader after another.

A runner takes a script as its file has it, and for how many ticks to run (``None``: until all is at rest),
and gives what is printed of the run.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from itertools import product
from typing import NamedTuple

Runner = Callable[[dict, int | None], dict]

SIZES = (1, 2, 3, 4, 5)
GAPS = (0, 1, 2, 3)
TRAINS = tuple((size, gap) for size, gap in product(SIZES, GAPS) if size > 1 or gap == 0)
"""Carts and free cells between two of them; a single cart once."""
FEW_TRAINS = ((1, 0), (3, 1), (5, 3))
CARRIED = 2
"""Waybills in each cart: one for the reader, one that must stay."""
STRANGE = "Nowhere"
"""A waybill that no reader takes."""


class Wanted(NamedTuple):
    """A wanted route and what a cart carries on it."""

    start: str
    goal: str
    waybill: str | None


class Train(NamedTuple):
    """So many carts on a wanted route."""

    wanted: Wanted
    carts: int = 1
    gap: int = 0
    waybills: dict[str, int] | None = None
    """In each cart; ``None``: what the route asks for."""

    @property
    def load(self) -> dict[str, int]:
        """What is in each cart."""
        if self.waybills is not None:
            return self.waybills
        return {} if self.wanted.waybill is None else {self.wanted.waybill: CARRIED}

    def sent(self, tick: int) -> dict:
        """The event of the script."""
        words = {"tick": tick, "do": "send", "arm": self.wanted.start, "carts": self.carts}
        return words | {"gap": self.gap, "waybills": self.load}


def wanted_in(document: dict) -> list[Wanted]:
    """The wanted routes of a plan file, idle ones with no waybill."""
    found = []
    for route in document["routes"]:
        found.append(Wanted(route["from"], route["idle"], None))
        if route.get("called") is not None:
            found.append(Wanted(route["from"], route["called"], route.get("waybill") or route["from"]))
    return found


def faults_of_runs(document: dict, run: Runner, trains: Iterable[tuple[int, int]] = TRAINS) -> list[str]:
    """What goes wrong with carts, in words; each script begins with a fresh junction."""
    wanted = wanted_in(document)
    ticks = run({"events": []}, None)["ticks"]
    if ticks > 1:
        return [f"it comes to rest in tick {ticks - 1} only, before any cart"]
    words: list[str] = []
    for route, (carts, gap) in product(wanted, trains):
        words += faults_of(run, [Train(route, carts, gap)])
    for train in misleading(document):
        words += faults_of(run, [train])
    for first, second in product(wanted, wanted):
        if first.waybill or second.waybill:
            words += faults_of(run, [Train(first, 3, 1), Train(second)])
    return words


def misleading(document: dict) -> Iterator[Train]:
    """Single carts with waybills for other readers, and for none; not for one that lies on their way out.

    Where carts go in and out on one track, the reader of an arm takes its waybill from those that leave, too.
    """
    wanted = wanted_in(document)
    one_track = {
        arm["name"]
        for arm in document["arms"]
        if "in" in arm and arm["in"]["at"] == arm.get("out", {}).get("at")
    }
    for route in wanted:
        passed = {route.start} | ({route.goal} & one_track)
        own = {other.waybill for other in wanted if other.start in passed}
        foreign = dict.fromkeys(sorted({other.waybill or STRANGE for other in wanted} - own), 1)
        if route.waybill is not None:
            foreign[route.waybill] = CARRIED
        yield Train(route, 1, 0, foreign)


def faults_of(run: Runner, trains: list[Train]) -> list[str]:
    """What goes wrong with trains that are sent one after another, each when all is at rest again."""
    events: list[dict] = []
    shown: dict = {"ticks": 0, "unsure": []}
    for train in trains:
        events.append(train.sent(shown["ticks"]))
        shown = run({"events": events}, None)
    words = [f"{name(trains)}: cart {lost['cart']} {lost['why']} at {lost['at']}" for lost in shown["lost"]]
    arrived = {arrival["cart"]: arrival for arrival in shown["arrivals"]}
    number = 0
    for train in trains:
        own = [arrived.get(number + cart) for cart in range(1, train.carts + 1)]
        number += train.carts
        words += [
            f"{name(trains)}: {fault}" for fault in cart_faults(train, [a for a in own if a is not None])
        ]
    return words


def cart_faults(train: Train, arrivals: list[dict]) -> Iterator[str]:
    """Where carts came out, and what they lost: the first called one a waybill, the others one at most."""
    taken = []
    for arrival in arrivals:
        if arrival["arm"] != train.wanted.goal:
            yield f"cart {arrival['cart']} came to {arrival['arm']}"
        for waybill, count in train.load.items():
            lost = count - arrival["carries"].get(waybill, 0)
            if waybill == train.wanted.waybill:
                taken.append(lost)
            elif lost:
                yield f"cart {arrival['cart']} lost {lost} of {waybill}, which no reader of its arm takes"
    if taken and not (taken[0] == 1 and set(taken) <= {0, 1}):
        yield f"carts lost {taken} of {train.wanted.waybill}"


def name(trains: list[Train]) -> str:
    """The trains in words."""
    return ", then ".join(
        f"{'called' if train.wanted.waybill else 'idle'} from {train.wanted.start} to {train.wanted.goal}, "
        f"{train.carts} carts {train.gap} apart"
        for train in trains
    )
