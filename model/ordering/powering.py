"""What one notice does to the rails near it, as sentences.

Common practice of the trade, written from memory, no published source; the rule is that of
``model.track.settling.notice``: a switch settles with the signal that it has among the neighbours that have
room for it, and where its shape changes, those at its ends that have room join it.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import combinations

from model.clauses import Clauses, Statement
from model.grid import Heading
from model.ordering.ground import OPPOSITE, Ground
from model.ordering.lying import Ends, ends_of_links, say_ends
from model.track.rails import BIT, EAST_WEST, MASK, NORTH_SOUTH
from model.track.settling import biased_curve

Lie = Mapping[int, Ends]
"""The ends of rails at some moment."""


class Powering:
    """Says what a notice makes of how the rails lie."""

    def __init__(self, clauses: Clauses, ground: Ground) -> None:
        self._clauses = clauses
        self._ground = ground

    def notice(self, lie: Lie, switch: int, happens: Statement, after: Lie, *, powered: bool) -> None:
        """Says how the switch and its neighbours lie after a notice at it, if it happens.

        ``lie`` tells of the rails within two columns how they lay before.
        """
        near = self._ground.beside[switch]
        rooms = {heading: self._room(lie, other, OPPOSITE[heading]) for heading, other in near.items()}
        before = lie[switch]
        self._settle(before, rooms, happens, after[switch], powered=powered)
        changed = self._clauses.any_of(
            [self._clauses.all_of([after[switch][heading], -before[heading]]) for heading in Heading]
        )
        for heading, other in near.items():
            joins = self._clauses.all_of([changed, after[switch][heading], rooms[heading]])
            self._join(lie, other, OPPOSITE[heading], joins, after[other])

    def _settle(
        self,
        before: Ends,
        rooms: Mapping[Heading, Statement],
        happens: Statement,
        after: Ends,
        *,
        powered: bool,
    ) -> None:
        clauses = self._clauses
        clauses.same_if([-happens], before, after)
        for values, row in clauses.rows(list(rooms.values())):
            mask = sum(BIT[heading] for heading, is_open in zip(rooms, values, strict=True) if is_open)
            if not mask:
                clauses.same_if([happens, *row], before, after)
            elif mask & NORTH_SOUTH and mask & EAST_WEST:
                say_ends(clauses, [happens, *row], after, MASK[biased_curve(mask, powered=powered)])
            else:
                axis = NORTH_SOUTH if mask & NORTH_SOUTH else EAST_WEST
                say_ends(clauses, [happens, *row], after, axis)

    def _join(self, lie: Lie, key: int, toward: Heading, joins: Statement, after: Ends) -> None:
        """A neighbour after the switch has turned to it: its live links and the new one make its ends."""
        clauses = self._clauses
        clauses.same_if([-joins], lie[key], after)
        live = self._live(lie, key, toward)
        alone = [joins, *(-linked for linked in live.values())]
        say_ends(clauses, alone, after, ends_of_links(BIT[toward]))
        for heading, linked in live.items():
            mask = BIT[toward] | BIT[heading]
            is_curve = bool(mask & NORTH_SOUTH and mask & EAST_WEST)
            ends = EAST_WEST if is_curve and key in self._ground.straight_only else mask
            say_ends(clauses, [joins, linked], after, ends)

    def _room(self, lie: Lie, key: int, toward: Heading) -> Statement:
        """No two live links lead elsewhere than into the column of the switch."""
        live = list(self._live(lie, key, toward).values())
        pairs = [self._clauses.all_of(pair) for pair in combinations(live, 2)]
        return -self._clauses.any_of(pairs)

    def _live(self, lie: Lie, key: int, toward: Heading) -> dict[Heading, Statement]:
        """The links of a rail that are live, apart from one into the column of the switch."""
        near = self._ground.beside[key].items()
        return {
            heading: self._clauses.all_of([lie[key][heading], lie[other][OPPOSITE[heading]]])
            for heading, other in near
            if heading is not toward
        }
