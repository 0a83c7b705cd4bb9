"""A trial of what the solver found: the plan is built in that order and its signals are worked out.

Where rails come to lie otherwise than was said, the solver learns what they do under those circumstances.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import pairwise

from model.clauses import Clauses, Statement
from model.edits import set_build_order
from model.grid import FACING_OF, Facing, Heading
from model.ordering.as_built import AsBuilt
from model.ordering.ground import Ground
from model.ordering.linking import Linking
from model.ordering.lying import Shapes
from model.ordering.result import BuiltRails
from model.ordering.wiring import Wiring
from model.track.layout import Layout
from model.track.rails import Rails, unpack
from model.track.shapes import Shape
from model.track.switches import rails_in_setting


class Trial:
    """What the solver found last, built."""

    def __init__(self, clauses: Clauses, ground: Ground, linking: Linking) -> None:
        self._clauses = clauses
        self._ground = ground
        self._linking = linking
        order = in_order(ground.rails, linking.orders_known())
        self._time = {key: index for index, key in enumerate(order)}
        self.rails: BuiltRails = tuple((unpack(key), self._facing(key)) for key in order)
        plan = ground.plan
        self.layout = Layout(set_build_order(plan, self.rails).applied(plan))

    def learn_as_built(self, as_built: AsBuilt) -> bool:
        """Tells the solver which rails were built otherwise than it said; whether any was."""
        news = False
        for key, shapes in as_built.shapes.items():
            shape = self.layout.rails[key]
            if not (shape in shapes and self._clauses.holds(shapes[shape])):
                self._say(list(self._circumstances(key, ())), shapes, shape)
                news = True
        return news

    def learn(self, wiring: Wiring) -> bool:
        """Tells the solver which rails lie otherwise in some setting than it said; whether any does."""
        wired = [key for key in self._time if self._clauses.holds(wiring.wired.get(key, self._clauses.false))]
        news = False
        for setting in wiring.settings:
            powered = [unpack(key) for key in wired if self._clauses.holds(wiring.power(key, setting))]
            cells = [unpack(key) for key in wired]
            one = rails_in_setting(self.layout, cells, powered)
            other = rails_in_setting(self.layout, cells[::-1], powered)
            for key in self._ground.relevant:
                news = self._learn_of(wiring, setting, key, one, other) or news
        return news

    def _learn_of(self, wiring: Wiring, setting: int, key: int, one: Rails, other: Rails) -> bool:
        shape = one.get(key)
        assert shape is not None
        shapes = wiring.shapes(key, setting)
        agrees = shape == other.get(key)
        if agrees and shape in shapes and self._clauses.holds(shapes[shape]):
            return False
        region = wiring.region(key)
        wired = [switch for switch in region if self._clauses.holds(wiring.wired[switch])]
        given = [
            *self._clauses.as_found(wiring.wired[switch] for switch in region),
            *self._clauses.as_found(wiring.power(switch, setting) for switch in wired),
            *self._circumstances(key, wired),
        ]
        self._say(given, shapes, shape if agrees else None)
        return True

    def _say(self, given: list[Statement], shapes: Shapes, shape: Shape | None) -> None:
        """Under these circumstances the rail has this shape; where it can have none, they cannot be."""
        self._clauses.say_if(given, *(holds for known, holds in shapes.items() if known == shape))

    def _circumstances(self, key: int, wired: Sequence[int]) -> Iterator[Statement]:
        """What the shape of a rail hangs on besides signals: the links near it, and what came first."""
        clauses = self._clauses
        yield from self._came_first(pairwise(wired))
        near = dict.fromkeys(
            rail for switch in (key, *wired) for rail in (switch, *self._ground.beside[switch].values())
        )
        faced = self._linking.lies_north_south
        yield from clauses.as_found(faced[rail] for rail in near if rail in faced)
        links = dict.fromkeys(link for rail in near for link in self._linking.links(rail).values())
        yield from clauses.as_found(link for link in links if link != clauses.true)
        for rail in near:
            yield from self._came_first(self._slope_pairs(rail))

    def _slope_pairs(self, key: int) -> Iterator[tuple[int, int]]:
        """Its slope hangs on whether a rail one up was there before it, and before each of its neighbours."""
        near = self._ground.beside[key].values()
        for above in self._ground.above(key).values():
            yield from ((above, other) for other in (key, *near) if other != above)

    def _came_first(self, pairs: Iterable[tuple[int, int]]) -> Iterator[Statement]:
        for one, other in pairs:
            first, second = sorted((one, other), key=self._time.__getitem__)
            yield self._linking.before(first, second)

    def _facing(self, key: int) -> Facing:
        """As the plan has it, where it does not matter to the solver."""
        cell = unpack(key)
        piece = self._ground.plan.pieces.get(cell)
        assert piece is not None
        said = self._linking.lies_north_south.get(key)
        present = piece.facing.heading or Heading.NORTH
        if said is None or self._clauses.holds(said) == present.lies_north_south:
            return piece.facing
        return FACING_OF[present.clockwise]


def in_order(rails: Iterable[int], before: Iterable[tuple[int, int]]) -> list[int]:
    """The rails in an order in which these pairs come so, else as they came. Needs pairs without a ring."""
    rank = {key: index for index, key in enumerate(rails)}
    later: dict[int, list[int]] = {key: [] for key in rank}
    waits: dict[int, int] = dict.fromkeys(rank, 0)
    for one, other in before:
        later[one].append(other)
        waits[other] += 1
    return list(_released(rank, later, waits))


def _released(
    rank: Mapping[int, int], later: Mapping[int, list[int]], waits: dict[int, int]
) -> Iterator[int]:
    ready = [(rank[key], key) for key, count in waits.items() if not count]
    heapq.heapify(ready)
    while ready:
        _, key = heapq.heappop(ready)
        yield key
        for other in later[key]:
            waits[other] -= 1
            if not waits[other]:
                heapq.heappush(ready, (rank[other], other))
