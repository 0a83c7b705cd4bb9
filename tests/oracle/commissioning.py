"""Faults of a finished junction in plain words, what a cart does with them, and diagnoses by trying all.

A fault is (kind, arm, cell, shape) with ``None`` for what does not belong to its kind, in the words of files.
"""

from __future__ import annotations

from itertools import chain, combinations, product
from typing import NamedTuple

from tests.oracle.carts import trace
from tests.oracle.choice import Drawn, Set
from tests.oracle.settings import state
from tests.oracle.shapes import CURVES, ENDS, Place, Track

FLAT = ("north-south", "east-west", *CURVES)
Fault = tuple[str, str | None, Place | None, str | None]
Sent = tuple[str, bool]
"""The arm of a cart, and whether its reader holds."""


class Designed(NamedTuple):
    """A plan, and the signals as designed."""

    drawn: Drawn
    idle: Set
    thrown: dict[str, Set]

    @property
    def wired(self) -> Set:
        return self.idle.union(*self.thrown.values())


class Tried:
    """Sends carts through the whole plan, worked out anew for each set of faults."""

    def __init__(self, designed: Designed) -> None:
        self.drawn, self.idle, self.thrown = designed
        self.wired = designed.wired
        self._tracks: dict[tuple[Set, frozenset], Track] = {}

    def sent(self) -> list[Sent]:
        """The runs: for each wanted route of an arm that lets a cart in."""
        runs = []
        for start, _, called in self.drawn.routes:
            if self.drawn.trip(start, self.wired, self.idle) is not None:
                runs += [(start, False)] if called is None else [(start, False), (start, True)]
        return runs

    def faults(self) -> set[Fault]:
        """Every single fault."""
        found: set[Fault] = set()
        for at in self.wired:
            found.add(("inverter-missing" if at in self.idle else "inverter-extra", None, at, None))
        for arm, cells in self.thrown.items():
            if cells:
                found |= {("line-dead", arm, None, None), ("line-stuck", arm, None, None)}
                found |= {("line-missing", arm, at, None) for at in cells}
        built = self.drawn.as_built
        for at, shape in product(self._passed(), FLAT):
            ends_find = all(built.found_by_end(at, *end) is not None for end in ENDS[shape])
            if ends_find and shape != built.shape[at]:
                found.add(("rail-turned", None, at, shape))
        return found

    def _passed(self) -> set[Place]:
        """Plain rails that a wanted route passes and nobody wired."""
        cells = set()
        for start, holds in self.sent():
            powered = self.idle ^ self.thrown[start] if holds else self.idle
            trip = self.drawn.trip(start, self.wired, powered)
            assert trip is not None
            cells |= {at for at in trip.path if self.drawn.as_built.part[at] == "rail"}
        return cells - self.wired

    def outcome(self, sent: Sent, faults: tuple[Fault, ...]) -> str:
        """The arm by which the cart leaves, or ``stays``."""
        start, holds = sent
        lines = {arm: set(cells) for arm, cells in self.thrown.items()}
        held = {start} if holds else set()
        turned_round = set()
        lain = set()
        for kind, arm, at, shape in faults:
            if kind in ("inverter-missing", "inverter-extra"):
                turned_round.add(at)
            elif kind == "line-dead":
                lines[arm] = set()
            elif kind == "line-stuck":
                held.add(arm)
            elif kind == "line-missing":
                lines[arm] -= {at}
            else:
                lain.add((at, shape))
        thrown = set(chain.from_iterable(lines[arm] for arm in held))
        powered = frozenset(
            at for at in self.wired if ((at in self.idle) + (at in turned_round) + (at in thrown)) % 2
        )
        track = self._track(powered, frozenset(lain))
        way_in = next(arm.way_in for arm in self.drawn.arms if arm.name == start)
        trip = trace(track, self.drawn.others, self.drawn.arms, *way_in)
        return "stays" if trip.arm is None else trip.arm

    def _track(self, powered: Set, lain: frozenset) -> Track:
        if (powered, lain) not in self._tracks:
            built = self.drawn.as_built.copy()
            built.shape.update(lain)
            self._tracks[powered, lain] = state(built, self.wired, powered)
        return self._tracks[powered, lain]

    def diagnoses(self, faults: list[Fault], seen: list[tuple[Sent, str]]) -> set[frozenset[Fault]]:
        """All sets of up to two faults that explain what was seen, those without a smaller one in them."""
        found: set[frozenset[Fault]] = set()
        for chosen in chain.from_iterable(combinations(faults, size) for size in range(3)):
            if any(smaller <= frozenset(chosen) for smaller in found) or not sensible(chosen):
                continue
            if all(self.outcome(sent, chosen) == saw for sent, saw in seen):
                found.add(frozenset(chosen))
        return found


def sensible(chosen: tuple[Fault, ...]) -> bool:
    """Not one rail in two shapes, and nothing else wrong with a line that is dead."""
    for (kind, arm, at, _), (other_kind, other_arm, other_at, _) in combinations(chosen, 2):
        if kind == other_kind == "rail-turned" and at == other_at:
            return False
        if arm is not None and arm == other_arm and "line-dead" in (kind, other_kind):
            return False
    return True
