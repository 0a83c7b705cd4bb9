"""What of a plan does not depend on the order of placing: who stands beside whom, and which rails matter.

A rail is *free* when it always ends up linked to all its neighbours, in whatever order they come: no more
than two directions hold one, and a booster or detector rail has both on one axis. It always has room for a
neighbour, so whichever of the two comes later joins the other. All other rails are *bound*: with more
neighbours than ends, which of them came first decides. Only bound rails and those beside them matter to the
order; the plain runs between them come out alike in every order.

Where the next column holds several rails within reach, which of them is found depends on the order too: such
rails are *crowded*.
"""

from __future__ import annotations

from functools import cached_property
from typing import Final

from model.grid import Heading
from model.parts import RAILS
from model.plan import Plan
from model.track.layout import Layout
from model.track.rails import STEP, UP, pack

OPPOSITE: Final = tuple(Heading((heading + 2) % 4) for heading in range(4))


class Ground:
    """The rails of a plan, each by its packed cell, with their neighbours once all are placed."""

    def __init__(self, plan: Plan, layout: Layout) -> None:
        self.plan = plan
        self.layout = layout
        self.rails = tuple(pack(piece.at) for piece in plan.pieces if piece.part in RAILS)
        """In the order of placing."""
        self.straight_only = layout.straight_only
        self.beside = {key: self._beside(key) for key in self.rails}
        """The neighbours by heading."""

    @cached_property
    def bound(self) -> frozenset[int]:
        """The rails whose shape may depend on which neighbour came first."""
        return frozenset(key for key in self.rails if self._is_bound(key))

    @cached_property
    def relevant(self) -> tuple[int, ...]:
        """Bound rails, those beside them, and rails that stand alone and lie as they are faced."""
        near = {other for key in self.bound for other in self.beside[key].values()}
        alone = {key for key in self.rails if not self.beside[key]}
        wanted = self.bound | near | alone
        return tuple(key for key in self.rails if key in wanted)

    @cached_property
    def three_way(self) -> tuple[int, ...]:
        """The plain rails with neighbours in exactly three directions: only these can be switches."""
        return tuple(k for k in self.rails if len(self.beside[k]) == 3 and k not in self.straight_only)

    @cached_property
    def turning(self) -> frozenset[int]:
        """Booster and detector rails with neighbours on both axes: these may turn and lose a link."""
        return frozenset(key for key in self.bound if key in self.straight_only)

    @cached_property
    def crowded(self) -> frozenset[int]:
        """The rails that may find another rail in a column than the one found in the end."""
        return frozenset(key for key in self.rails if self._is_crowded(key))

    def above(self, key: int) -> dict[Heading, int]:
        """The neighbours one level up."""
        return {h: other for h, other in self.beside[key].items() if other == key + STEP[h] + UP}

    def _beside(self, key: int) -> dict[Heading, int]:
        rails = self.layout.rails
        found: dict[Heading, int] = {}
        for heading in Heading:
            column = key + STEP[heading]
            for other in (column, column + UP, column - UP):
                if other in rails:
                    found[heading] = other
                    break
        return found

    def _is_bound(self, key: int) -> bool:
        headings = self.beside[key]
        if len(headings) > 2:
            return True
        axes = {heading.lies_north_south for heading in headings}
        return len(axes) > 1 and key in self.straight_only

    def _is_crowded(self, key: int) -> bool:
        rails = self.layout.rails
        for step in STEP:
            column = key + step
            here = [column + rise in rails for rise in (-1, 0, 1, 2)]
            if sum(here[:3]) > 1 or (here[2] and here[3]):
                return True
        return any(self.beside[other].get(OPPOSITE[h]) != key for h, other in self.beside[key].items())
