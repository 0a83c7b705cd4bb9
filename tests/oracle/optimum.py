"""The best order of placing: over all ways in which the rails can come out, the cheapest choice.

**What is searched.** A way in which the rails can lie (a state of ``Orders``), a set of wired switches, the
order in which these came among each other, and what is powered at idle and thrown by each reader. The order
of placing bears on a setting in two ways only: through the shapes as built, and through the order of the
power changes, which is that of the wired switches. So all orders of the wired switches are tried for each
state, one of every two that mirror each other (a choice serves in one if it does in the other, with the same
rails). Whether some order of placing gives the state *and* that order of the switches is asked at the end,
the cheapest first: ``Orders`` with that sequence tells.

**How.** What a change of power does takes a state to a state. All states that can be come to are worked out
first, with the rails' own rules; then a setting is a walk from number to number, for all states as built at
once, and for each number it is known which wanted routes arrive.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations, permutations
from typing import NamedTuple

import numpy as np

from tests.oracle.carts import ArmSpec, trace
from tests.oracle.choice import Drawn, RouteSpec
from tests.oracle.orders import Orders
from tests.oracle.packed import PackedRails, States, apart
from tests.oracle.shapes import Place, Rail, Track

Numbers = np.ndarray
"""Of states of ``Powered``."""
Cost = tuple[int, int, int]
"""Switches powered at idle, thrown switches summed over the readers, wired switches: the less the better."""

MOST_WIRED = 6
"""With more wired switches there are too many orders of them to try."""


class Optimum(NamedTuple):
    """The least cost with an order that has it; both ``None`` where no order serves.

    ``exact`` is false where more switches may be wired than can be tried: then a cheaper one may be there.
    """

    cost: Cost | None
    order: list[Rail] | None
    exact: bool


class Powered:
    """All states that power changes lead to from the ways in which the rails can lie."""

    def __init__(self, packed: PackedRails, states: States) -> None:
        self.packed = packed
        self.three_way = three_way({**{at: part for at, (part, _) in packed.fixed.items()}, **packed.parts})
        self.states = self._closed(states)
        self.as_built = np.searchsorted(self.states, states)
        self.next = {
            (at, power): np.searchsorted(self.states, self._noticed(self.states, at, power))
            for at in self.three_way
            for power in (False, True)
        }

    @classmethod
    def of(cls, orders: Orders) -> Powered:
        """All ways of all orders."""
        left_out = {at: (orders.parts[at], run.in_line) for run in orders.runs for at in run.rails[1:]}
        return cls(PackedRails(orders.packed.parts, left_out), orders.states)

    @classmethod
    def of_one(cls, track: Track) -> Powered:
        """One way only; power bends no rails but three-way ones and those beside them, so these take bits."""
        bends = three_way(track.part)
        near = {at for at in track.part if any(apart(at, other) <= 1 for other in bends)}
        fixed = {at: (part, track.shape[at]) for at, part in track.part.items() if at not in near}
        packed = PackedRails({at: part for at, part in track.part.items() if at in near}, fixed)
        return cls(packed, packed.array([packed.pack(track.shape)]))

    def _noticed(self, states: States, at: Place, power: bool) -> States:
        return self.packed.after(states, at, power, lambda track: track.notice(at, powered=power))

    def _closed(self, states: States) -> States:
        known = fresh = states
        while fresh.size:
            found = [self._noticed(fresh, at, power) for at in self.three_way for power in (False, True)]
            fresh = np.setdiff1d(np.concatenate(found), known) if found else fresh[:0]
            known = np.union1d(known, fresh)
        return known

    def cycled(self, numbers: Numbers, at: Place) -> Numbers:
        """Powered and released."""
        return self.next[at, False][self.next[at, True][numbers]]

    def cycled_in_any_order(self, numbers: Numbers, wired: tuple[Place, ...]) -> Numbers:
        """All that can come of cycling each of the wired switches once."""
        come = {frozenset[Place](): np.unique(numbers)}
        for count in range(1, len(wired) + 1):
            for done in map(frozenset, combinations(wired, count)):
                come[done] = np.unique(np.concatenate([self.cycled(come[done - {at}], at) for at in done]))
        return come[frozenset(wired)]

    def setting(self, cycled: Numbers, order: tuple[Place, ...], powered: frozenset[Place]) -> Numbers:
        """Those of the wired switches powered, in that order, after all have been cycled."""
        for at in order:
            if at in powered:
                cycled = self.next[at, True][cycled]
        return cycled

    def is_switch(self, numbers: Numbers, at: Place) -> np.ndarray:
        """Where one power cycle of the rail, from the state as built, shows two shapes."""
        resting = self.cycled(numbers, at)
        powered = self.next[at, True][resting]
        lies_resting, lies_powered = (self.packed.code(self.states[n], at) for n in (resting, powered))
        return lies_resting != lies_powered


class Wanted:
    """Which wanted routes arrive in each state, as bits: idle routes first, then the called ones."""

    def __init__(self, rails: Powered, drawn: Drawn) -> None:
        routes = drawn.routes
        goals = [(route.start, route.idle) for route in routes]
        goals += [(route.start, route.called) for route in routes if route.called is not None]
        self.readers = [route.start for route in routes if route.called is not None]
        self.idle = (1 << len(routes)) - 1
        self.called = [1 << (len(routes) + number) for number in range(len(self.readers))]
        self.all = (1 << len(goals)) - 1
        self.arrive = np.zeros(len(rails.states), np.int64)
        ways_in = {arm.name: arm.way_in for arm in drawn.arms}
        for number, state in enumerate(rails.states.tolist()):
            track = rails.packed.unpack(state)
            reached: dict[str, str | None] = {}
            for start in {start for start, _ in goals}:
                way_in = ways_in.get(start)
                if way_in is not None and way_in[0] in track.part:
                    reached[start] = trace(track, drawn.others, drawn.arms, *way_in).arm
            arrived = (1 << bit for bit, (start, goal) in enumerate(goals) if reached.get(start) == goal)
            self.arrive[number] = sum(arrived)

    def may_serve(self, rails: Powered) -> Numbers:
        """The states as built from which power changes lead to the arrival of each wanted route."""
        ever = self.arrive
        while True:
            more = ever.copy()
            for following in rails.next.values():
                more |= more[following]
            if (more == ever).all():
                return rails.as_built[ever[rails.as_built] == self.all]
            ever = more


class Candidate(NamedTuple):
    """States as built that serve at a cost when the wired switches came in that order or the reverse one."""

    cost: Cost
    wired: tuple[Place, ...]
    numbers: Numbers


def three_way(parts: dict[Place, str]) -> list[Place]:
    """The plain rails with three neighbours, in the order given: power does nothing at others."""
    track = Track()
    track.part = parts
    return [at for at, part in parts.items() if part == "rail" and track.neighbours(at) == 3]


def cost_of_order(pieces: list[Rail], arms: list[ArmSpec], routes: list[RouteSpec]) -> Cost | None:
    """What the junction costs when it is placed in this order; ``None`` where no choice serves."""
    drawn = Drawn(pieces, arms, routes)
    rails = Powered.of_one(drawn.as_built)
    wanted = Wanted(rails, drawn)
    sequence = [at for at in drawn.as_built.part if at in drawn.switches]
    best: Cost | None = None
    for count in range(len(sequence) + 1 if wanted.may_serve(rails).size else 0):
        for wired in combinations(sequence, count):
            for candidate in of_one_order(rails, wanted, rails.as_built, wired):
                best = candidate.cost if best is None else min(best, candidate.cost)
        if best is not None and wires_no_more_than(count, best):
            break
    return best


def optimum(pieces: list[Rail], arms: list[ArmSpec], routes: list[RouteSpec]) -> Optimum:
    """The least cost of all orders of placing; see the module."""
    orders = Orders(pieces)
    return optimum_of(orders, Powered.of(orders), Drawn(pieces, arms, routes))


def optimum_of(orders: Orders, rails: Powered, drawn: Drawn) -> Optimum:
    """The same, where what does not depend on arms and routes is at hand."""
    wanted = Wanted(rails, drawn)
    hopeful = wanted.may_serve(rails)
    most = most_switches(rails, hopeful)
    best: tuple[Cost, list[Rail]] | None = None
    for count in range(min(most, MOST_WIRED) + 1):
        for candidate in sorted(candidates(rails, wanted, hopeful, count), key=cost_of):
            if best is None or candidate.cost < best[0]:
                order = attained(orders, rails, candidate)
                best = best if order is None else (candidate.cost, order)
        if best is not None and wires_no_more_than(count, best[0]):
            return Optimum(*best, exact=True)
    exact = not any(
        more_may_serve(rails, wanted, hopeful, count, best and best[0])
        for count in range(MOST_WIRED + 1, most + 1)
    )
    return Optimum(*(best or (None, None)), exact)


def more_may_serve(rails: Powered, wanted: Wanted, hopeful: Numbers, count: int, cost: Cost | None) -> bool:
    """Whether so many wired switches could be cheaper; true also where that cannot be ruled out.

    The orders of the switches are not told apart here: a switch is cycled once each, in any order, and
    then some are powered, in any order. Where even that serves nothing, nothing does.
    """
    fewest_inverters = count if cost is None else cost[0] - (count > cost[0] + cost[1])
    for taken in combinations(rails.three_way, count):
        numbers = hopeful
        for at in taken:
            numbers = numbers[rails.is_switch(numbers, at)]
        cycled = rails.cycled_in_any_order(numbers, taken)
        ever = wanted.arrive
        for _ in taken:
            ever = ever | np.bitwise_or.reduce([ever[rails.next[at, True]] for at in taken])
        cycled = idle = cycled[ever[cycled] == wanted.all]
        for _ in range(fewest_inverters + 1):
            if (wanted.arrive[idle] & wanted.idle == wanted.idle).any():
                return True
            idle = np.unique(np.concatenate([idle, *(rails.next[at, True][idle] for at in taken)]))
    return False


def cost_of(candidate: Candidate) -> Cost:
    """What candidates are sorted by."""
    return candidate.cost


def most_switches(rails: Powered, numbers: Numbers) -> int:
    """The most switches that one state has."""
    switches = [rails.is_switch(numbers, at) for at in rails.three_way]
    return int(np.sum(switches, axis=0).max(initial=0)) if switches else 0


def wires_no_more_than(count: int, cost: Cost) -> bool:
    """Whether any cheaper choice does: without an inverter every wired switch is thrown by some reader."""
    return cost[0] == 0 and cost[1] <= count


def candidates(rails: Powered, wanted: Wanted, hopeful: Numbers, count: int) -> Iterator[Candidate]:
    """For each set of so many wired switches and each order of them: the least cost and its states."""
    for taken in combinations(rails.three_way, count):
        numbers = hopeful
        for at in taken:
            numbers = numbers[rails.is_switch(numbers, at)]
        for order in permutations(taken) if numbers.size else ():
            if order <= order[::-1]:
                yield from of_one_order(rails, wanted, numbers, order)


def of_one_order(
    rails: Powered, wanted: Wanted, numbers: Numbers, order: tuple[Place, ...]
) -> Iterator[Candidate]:
    """The candidates with these switches wired in this order."""
    forward = backward = numbers
    for at, from_behind in zip(order, order[::-1], strict=True):
        forward, backward = rails.cycled(forward, at), rails.cycled(backward, from_behind)
    arrive = np.zeros((1 << len(order), len(numbers)), np.int64)
    for setting in range(1 << len(order)):
        powered = frozenset(at for bit, at in enumerate(order) if setting >> bit & 1)
        there = rails.setting(forward, order, powered)
        stable = there == rails.setting(backward, order[::-1], powered)
        arrive[setting] = np.where(stable, wanted.arrive[there], -1)
    patterns, which = np.unique(arrive, axis=1, return_inverse=True)
    for number, pattern in enumerate(patterns.T.tolist()):
        cost = least_cost(pattern, wanted, len(order))
        if cost is not None:
            yield Candidate(cost, order, numbers[which.reshape(-1) == number])


def least_cost(arrive: list[int], wanted: Wanted, wired: int) -> Cost | None:
    """The least cost with just so many switches wired; ``arrive`` by setting, -1 where it is not stable."""
    costs = []
    for idle, arrived in enumerate(arrive):
        if arrived < 0 or arrived & wanted.idle != wanted.idle:
            continue
        covered = {idle: 0}
        for bit in wanted.called:
            throws = [idle ^ setting for setting, there in enumerate(arrive) if there >= 0 and there & bit]
            further: dict[int, int] = {}
            for cover, thrown in covered.items():
                for throw in throws:
                    total = thrown + throw.bit_count()
                    further[cover | throw] = min(total, further.get(cover | throw, total))
            covered = further
        every = (1 << wired) - 1
        if every in covered:
            costs.append((idle.bit_count(), covered[every], wired))
    return min(costs, default=None)


def attained(orders: Orders, rails: Powered, candidate: Candidate) -> list[Rail] | None:
    """An order of placing with a state and the sequence of switches of a candidate, if there is one."""
    for sequence in dict.fromkeys((candidate.wired, candidate.wired[::-1])):
        pieces = [(part, at, "north") for at, part in orders.parts.items()]
        kept = orders if len(sequence) < 2 else Orders(pieces, sequence=sequence)
        both = np.intersect1d(kept.states, rails.states[candidate.numbers])
        if both.size:
            return kept.witness(int(both[0]))
    return None
