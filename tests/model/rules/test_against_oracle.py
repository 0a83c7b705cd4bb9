"""Rules about signals and ways against the second implementation, on random junctions and on the drawn plans.

What each rule must say is worked out here anew from all choices tried one by one.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property
from itertools import combinations, islice, pairwise

import pytest

from model.plan import Plan
from model.routing.junction import Junction
from model.rules import RULES, Finding
from model.text_drawing import draw, plan_from_drawing
from tests.model.rules.cases import cases_of
from tests.oracle.adapter import drawn_from, plan_from
from tests.oracle.carts import Trip
from tests.oracle.choice import Drawn, all_choices, best_choice, number_of_choices
from tests.oracle.random_junctions import junctions
from tests.oracle.settings import power_cycle, state
from tests.oracle.shapes import BACK, STEP, Place

MOST_CHOICES = 2**9
Arrival = tuple[str, bool, str]
"""A wanted route: the start, whether called, the goal."""


class Judge:
    """What the rules must say of one plan."""

    def __init__(self, drawn: Drawn) -> None:
        self.drawn = drawn
        self.best = best_choice(drawn)
        self.wanted: list[Arrival] = []
        for route in drawn.routes:
            self.wanted.append((route.start, False, route.idle))
            if route.called is not None:
                self.wanted.append((route.start, True, route.called))

    @cached_property
    def settings(self) -> dict[str | None, frozenset[Place]]:
        """The powered switches by the reader that holds."""
        return {
            None: self.best.idle,
            **{r: self.best.idle ^ self.best.thrown[r] for r in self.drawn.readers()},
        }

    @cached_property
    def trips(self) -> dict[Arrival, Trip]:
        """The way of each wanted route in its own setting."""
        found = {route: self.trip(route[0], route[0] if route[1] else None) for route in self.wanted}
        return {route: trip for route, trip in found.items() if trip is not None}

    def trip(self, start: str, holder: str | None) -> Trip | None:
        return self.drawn.trip(start, self.best.wired, self.settings[holder])

    def reached(self, route: Arrival) -> bool:
        return route in self.trips and self.trips[route].arm == route[2]

    def missed(self) -> list[tuple[str, str]]:
        return [
            (start, goal) for start, called, goal in self.wanted if not self.reached((start, called, goal))
        ]

    def order_dependent(self) -> set[Place]:
        built, wired = self.drawn.as_built, self.best.wired
        pairs = [
            (state(built, wired, powered), state(built, wired, powered, backward=True))
            for powered in self.settings.values()
        ]
        return {at for one, other in pairs for at in built.part if one.shape[at] != other.shape[at]}

    def not_resting(self) -> set[Place]:
        built = self.drawn.as_built
        return {at for at in self.best.wired if built.shape[at] != power_cycle(built, at)[0]}

    def bent(self) -> set[Place]:
        built, wired = self.drawn.as_built, self.best.wired
        passed = {at for trip in self.trips.values() for at in trip.path}
        bent = set()
        for powered in self.settings.values():
            shape = self.drawn.state(wired, powered).shape
            bent |= {at for at in passed - wired if shape[at] != built.shape[at]}
            bent |= {at for at in wired if shape[at] != power_cycle(built, at)[at in powered]}
        return bent

    def misled(self) -> set[tuple[str, str]]:
        return {
            (start, holder)
            for start, called, goal in self.wanted
            for holder in self.drawn.readers()
            if not called and start != holder and self.reached((start, called, goal))
            if (trip := self.trip(start, holder)) is None or trip.arm != goal
        }

    def unreached(self) -> set[Place]:
        return set(self.drawn.as_built.part) - {at for trip in self.trips.values() for at in trip.path}

    def head_on(self) -> set[Place]:
        arms = {arm.name: arm for arm in reversed(self.drawn.arms)}
        moves = {route: list(steps(arms[route[0]].way_in[1], self.trips[route])) for route in self.trips}
        return {
            at
            for one, other in combinations([route for route in self.trips if self.reached(route)], 2)
            for at, came, went in moves[one]
            for there, came_too, went_too in moves[other]
            if at == there and (BACK[came] in (came_too, went_too) or BACK[went] == came_too)
        }


def steps(heading: str, trip: Trip) -> Iterator[tuple[Place, str, str]]:
    """Each cell of a trip with the headings in which the cart came in and went out."""
    ways = {step: way for way, step in STEP.items()}
    between = [ways[b[0] - a[0], b[2] - a[2]] for a, b in pairwise(trip.path)]
    headings = [heading, *between, trip.heading]
    return ((at, came, went) for at, (came, went) in zip(trip.path, pairwise(headings), strict=True))


def plans() -> Iterator[tuple[str, Plan]]:
    """Random junctions, and the plans drawn for rules about signals."""
    for seed, specified in islice(junctions(1_000), 75):
        yield f"seed {seed}", plan_from(*specified)
    for rule in (
        "order-dependent",
        "throw-bends-rail",
        "misled-while-held",
        "constant-signal",
        "built-not-resting",
    ):
        for case in cases_of(rule):
            yield f"{rule}: {case.shows}", plan_from_drawing(case.drawing)


@pytest.fixture(scope="module")
def judged() -> list[tuple[Junction, Judge, str]]:
    found = []
    for name, plan in plans():
        drawn = drawn_from(plan)
        if number_of_choices(drawn) <= MOST_CHOICES:
            junction = Junction(plan)
            found.append((junction, Judge(drawn), f"{name}\n{draw(junction.layout)}"))
    assert len(found) > 100
    return found


def found_by(rule: str, junction: Junction) -> list[Finding]:
    return list(RULES[rule].findings(junction))


def cells_of(findings: list[Finding]) -> set[Place]:
    return {tuple(cell) for finding in findings for cell in finding.cells}


def test_each_wanted_route_that_is_not_reached_is_named(judged) -> None:
    for junction, judge, told in judged:
        found = [finding.arms for finding in found_by("route-not-reached", junction)]
        assert sorted(found) == sorted(tuple(dict.fromkeys(arms)) for arms in judge.missed()), told


@pytest.mark.parametrize(
    ("rule", "expected"),
    [
        ("order-dependent", Judge.order_dependent),
        ("built-not-resting", Judge.not_resting),
        ("throw-bends-rail", Judge.bent),
        ("inverter-needed", lambda judge: set(judge.best.idle)),
        ("constant-signal", lambda judge: judge.best.idle - frozenset().union(*judge.best.thrown.values())),
        ("unreached", Judge.unreached),
        ("head-on", Judge.head_on),
    ],
)
def test_just_those_cells_are_named(rule, expected, judged) -> None:
    flagged = 0
    for junction, judge, told in judged:
        found = cells_of(found_by(rule, junction))
        assert found == expected(judge), told
        flagged += bool(found)
    assert flagged >= 5


def test_each_misled_cart_is_named(judged) -> None:
    flagged = 0
    for junction, judge, told in judged:
        found = {finding.arms for finding in found_by("misled-while-held", junction)}
        assert found == judge.misled(), told
        flagged += bool(found)
    assert flagged >= 5


def test_conflicting_routes_can_be_served_without_any_one_of_them_but_not_together(judged) -> None:
    flagged = 0
    for junction, judge, told in judged:
        conflicts = [
            {(route.start, route.called) for route in conflict.routes}
            for conflict in junction.control.conflicts
        ]
        reached = {choice.reached for choice in all_choices(judge.drawn)}
        alone = frozenset().union(*reached)
        assert bool(conflicts) == (alone not in reached), told
        for routes in conflicts:
            assert not any(routes <= served for served in reached), told
            assert all(any(routes - {left} <= served for served in reached) for left in routes), told
        assert len(found_by("conflict", junction)) == len(conflicts)
        flagged += bool(conflicts)
    assert flagged >= 5
