"""The control table, ways and orientations of random small junctions against all choices tried one by one."""

from __future__ import annotations

from itertools import combinations, islice

import pytest

from model.grid import Cell
from model.plan import Plan
from model.routing.junction import Junction
from model.routing.orientations import orientations
from tests.oracle.adapter import WORD_OF, drawing, plan_from, trip_from
from tests.oracle.choice import Chosen, Drawn, best_choice
from tests.oracle.random_junctions import Junction as Specified
from tests.oracle.random_junctions import junctions
from tests.oracle.settings import power_cycle
from tests.oracle.turning import orientations as oracle_orientations

MOST_TURNED_CHOICES = 2**12
"""A turned junction may have more switches; with more choices than these the plain search takes too long."""


class Pair:
    """One junction, worked out by the model and by the second implementation."""

    def __init__(self, seed: int, specified: Specified) -> None:
        self.plan: Plan = plan_from(*specified)
        self.junction = Junction(self.plan)
        self.drawn = Drawn(*specified)
        self.best: Chosen = best_choice(self.drawn)
        self.told = f"seed {seed}\n{drawing(specified[0])}\n{specified[1]}\n{specified[2]}"

    def compare_switches(self) -> None:
        """Which rails are switches, their shapes, and what the control table says of each."""
        idle_rails = self.drawn.state(self.best.wired, self.best.idle)
        wanted = []
        for number, at in enumerate(self.drawn.switches, start=1):
            wired = at in self.best.wired
            callers = sorted(arm for arm, cells in self.best.thrown.items() if at in cells)
            row = (
                f"S{number}",
                at,
                *power_cycle(self.drawn.as_built, at),
                tuple(callers),
                at in self.best.idle,
            )
            wanted.append((*row, idle_rails.shape[at] if wired else None))
        found = [
            (
                switch.name,
                tuple(switch.at),
                WORD_OF[switch.resting],
                WORD_OF[switch.powered],
                switch.called_by,
                switch.inverter,
                None if switch.idle is None else WORD_OF[switch.idle],
            )
            for switch in self.junction.switches
        ]
        assert found == wanted, self.told

    def compare_choice(self) -> None:
        """The very same choice, and what it reaches."""
        choice = self.junction.control.choice
        found = {arm: set(map(tuple, cells)) for arm, cells in choice.thrown.items() if cells}
        assert self.junction.control.serves == self.best.serves, self.told
        assert set(map(tuple, choice.idle)) == self.best.idle, self.told
        assert found == {arm: cells for arm, cells in self.best.thrown.items() if cells}, self.told
        assert set(map(tuple, choice.wired)) == self.best.wired, self.told

    def compare_routes(self) -> None:
        """Which wanted routes arrive."""
        reached = {
            (route.start, called)
            for route in self.junction.routes
            for called, arrives in ((False, route.idle_reached), (True, route.called_reached))
            if arrives
        }
        assert reached == self.best.reached, self.told
        for route in self.junction.routes:
            assert (route.called_reached is None) == (route.called is None), self.told

    def compare_ways(self) -> None:
        """Where a cart goes from every arm while none, one, or two readers hold; and its shapes."""
        readers = self.drawn.readers()
        for held in [(), *combinations(readers, 1), *combinations(readers, 2)]:
            thrown = frozenset().union(*(self.best.thrown[reader] for reader in held))
            powered = self.best.idle ^ thrown
            assert set(map(tuple, self.junction.choice.setting(held))) == powered, self.told
            track = self.drawn.state(self.best.wired, powered)
            shapes = self.junction.shapes(frozenset(Cell(*at) for at in powered))
            assert {at: WORD_OF[shapes.get(Cell(*at))] for at in track.part} == track.shape, self.told
            for arm in self.drawn.arms:
                wanted = self.drawn.trip(arm.name, self.best.wired, powered)
                if wanted is not None:
                    assert trip_from(self.junction.way(arm.name, held)) == wanted, self.told

    def compare_thrown(self) -> None:
        """Where a cart goes from every arm with just one or two switches wired, and those powered."""
        for taken in [*combinations(self.drawn.switches, 1), *combinations(self.drawn.switches, 2)]:
            cells = frozenset(Cell(*at) for at in taken)
            for arm in self.plan.arms:
                wanted = self.drawn.trip(arm.name, frozenset(taken), frozenset(taken))
                if wanted is not None:
                    assert trip_from(self.junction.way_of(arm, cells, cells)) == wanted, self.told

    def compare_order(self) -> None:
        """The rails whose shape in a setting that the control table uses depends on the order."""
        settings = [self.best.idle, *(self.best.idle ^ cells for cells in self.best.thrown.values())]
        stable = all(self.drawn.stable(self.best.wired, powered) for powered in settings)
        assert (not self.junction.order_dependent) == stable, self.told

    def compare_all(self) -> None:
        """Everything but the orientations."""
        self.compare_switches()
        self.compare_choice()
        self.compare_routes()
        self.compare_ways()
        self.compare_thrown()
        self.compare_order()


def compare_orientations(seed: int, specified: Specified) -> int:
    """Which of the eight can be built, and with how many inverters; returns how many could be tried whole."""
    found = {
        (each.turn.quarter, each.turn.mirror): (each.inverters, each.buildable)
        for each in orientations(Junction(plan_from(*specified)))
    }
    tried = oracle_orientations(*specified, MOST_TURNED_CHOICES)
    assert len(found) == 8
    for quarter, mirror, inverters in tried:
        told = f"seed {seed}\n{drawing(specified[0])}\n{specified[1]}\n{specified[2]}\n{quarter} {mirror}"
        assert found[quarter, mirror] == (inverters, inverters is not None), told
    return len(tried)


@pytest.mark.timeout(300)
def test_random_junctions() -> None:
    seen = set()
    for seed, specified in islice(junctions(0), 300):
        pair = Pair(seed, specified)
        pair.compare_all()
        seen.add((pair.best.serves, len(pair.best.wired)))
    assert {(True, 0), (True, 1), (True, 2), (True, 3), (False, 0), (False, 1), (False, 2)} <= seen


@pytest.mark.timeout(300)
def test_orientations_of_random_junctions() -> None:
    tried = sum(compare_orientations(seed, specified) for seed, specified in islice(junctions(0), 36))
    assert tried > 240


@pytest.mark.slow
@pytest.mark.timeout(7200)
def test_many_random_junctions() -> None:
    for seed, specified in islice(junctions(10_000), 3_000):
        Pair(seed, specified).compare_all()
        compare_orientations(seed, specified)
