"""Which switches to wire, how each lies at idle and what each reader throws: all choices are tried."""

from __future__ import annotations

from itertools import chain, combinations, product
from typing import NamedTuple

from tests.oracle.carts import ArmSpec, Trip, trace
from tests.oracle.settings import state, switches
from tests.oracle.shapes import RAIL_PARTS, Place, Rail, Track, build

Set = frozenset[Place]


class RouteSpec(NamedTuple):
    """What is wanted of the carts from one arm."""

    start: str
    idle: str
    called: str | None


class Chosen(NamedTuple):
    """A choice: the cells powered at idle, and the cells that each reader throws."""

    idle: Set
    thrown: dict[str, Set]
    serves: bool
    reached: frozenset[tuple[str, bool]]
    """The wanted routes that arrive, as (arm, whether called)."""

    @property
    def wired(self) -> Set:
        """The switches that are thrown by some reader or powered at idle."""
        return self.idle.union(*self.thrown.values())


class Drawn:
    """A plan in plain words, with what is asked of it again and again kept."""

    def __init__(self, pieces: list[Rail], arms: list[ArmSpec], routes: list[RouteSpec]) -> None:
        self.arms = arms
        self.routes = routes
        self.others = {at: part for part, at, _ in pieces if part not in RAIL_PARTS}
        self.as_built = build(pieces)
        self.switches = switches(self.as_built)
        self._states: dict[tuple[Set, Set], Track] = {}
        self._stable: dict[tuple[Set, Set], bool] = {}

    def state(self, wired: Set, powered: Set) -> Track:
        """The rails in that setting."""
        if (wired, powered) not in self._states:
            self._states[wired, powered] = state(self.as_built, wired, powered)
        return self._states[wired, powered]

    def stable(self, wired: Set, powered: Set) -> bool:
        """Whether the reverse order of power changes gives the same rails."""
        if (wired, powered) not in self._stable:
            backward = state(self.as_built, wired, powered, backward=True)
            self._stable[wired, powered] = self.state(wired, powered).shape == backward.shape
        return self._stable[wired, powered]

    def trip(self, start: str, wired: Set, powered: Set) -> Trip | None:
        """The way of a cart that enters by an arm; ``None`` where it cannot."""
        arm = next((arm for arm in self.arms if arm.name == start), None)
        if arm is None or arm.way_in is None or arm.way_in[0] not in self.as_built.part:
            return None
        return trace(self.state(wired, powered), self.others, self.arms, *arm.way_in)

    def arrives(self, start: str, goal: str, wired: Set, powered: Set) -> bool:
        """Whether a cart from one arm leaves by another."""
        trip = self.trip(start, wired, powered)
        return trip is not None and trip.arm == goal

    def readers(self) -> list[str]:
        """The arms with a called route, sorted by name."""
        return sorted(route.start for route in self.routes if route.called is not None)


def subsets(cells: list[Place]) -> list[Set]:
    """All subsets."""
    sizes = range(len(cells) + 1)
    return [frozenset(taken) for taken in chain.from_iterable(combinations(cells, n) for n in sizes)]


def best_choice(drawn: Drawn) -> Chosen:
    """The best of all choices: one that serves; where none does, the one that reaches most."""
    chosen = list(all_choices(drawn))
    serving = [choice for choice in chosen if choice.serves]
    if serving:
        return min(serving, key=lambda choice: cost(drawn, choice))
    return min(chosen, key=lambda choice: (-len(choice.reached), cost(drawn, choice)))


def number_of_choices(drawn: Drawn) -> int:
    """How many choices there are to try."""
    return 2 ** (len(drawn.switches) * (1 + len(drawn.readers())))


def all_choices(drawn: Drawn):
    """Every idle set with every set of thrown switches for each reader."""
    readers = drawn.readers()
    arrivals: dict[tuple[Set, Set, str, bool], bool] = {}
    every = subsets(drawn.switches)
    for idle, *sets in product(every, repeat=1 + len(readers)):
        yield judge(drawn, idle, dict(zip(readers, sets, strict=True)), arrivals)


def judge(drawn: Drawn, idle: Set, thrown: dict[str, Set], arrivals: dict) -> Chosen:
    """What a choice reaches and whether it serves; ``arrivals`` keeps what was traced before."""
    wired = idle.union(*thrown.values())
    reached = set()
    wanted = 0
    stable = True
    for route in drawn.routes:
        goals = [(False, route.idle, idle)]
        if route.called is not None:
            goals.append((True, route.called, idle ^ thrown[route.start]))
        for called, goal, powered in goals:
            wanted += 1
            key = (wired, powered, route.start, called)
            if key not in arrivals:
                arrivals[key] = drawn.arrives(route.start, goal, wired, powered)
            if arrivals[key]:
                reached.add((route.start, called))
            stable = stable and drawn.stable(wired, powered)
    return Chosen(idle, thrown, stable and len(reached) == wanted, frozenset(reached))


def cost(drawn: Drawn, choice: Chosen) -> tuple[object, ...]:
    """What is to be as small as can be, the first thing first."""
    throws = sum(len(cells) for cells in choice.thrown.values())
    reading = [
        (at in choice.idle, *(at in choice.thrown[reader] for reader in drawn.readers()))
        for at in drawn.switches
    ]
    return len(choice.idle), throws, len(choice.wired), reading
