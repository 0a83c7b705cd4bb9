"""What a whole series of notices makes of the rails, in an order that is not fixed yet.

Every switch gets its notices once in a series, when its turn comes. A rail is changed only by those at itself
and beside it; how it lies when a turn comes is how the last of these that came before has left it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import NamedTuple

from model.clauses import Clauses, Statement
from model.grid import Heading
from model.ordering.ground import Ground
from model.ordering.lying import Ends
from model.ordering.powering import Lie, Powering

Before = Callable[[int, int], Statement]
"""Whether the first switch has its turn before the second."""


class Notice(NamedTuple):
    """A notice at a switch."""

    happens: Statement
    powered: bool


class Series:
    """Says how rails lie after a series of notices."""

    def __init__(self, clauses: Clauses, ground: Ground, switches: Sequence[int], before: Before) -> None:
        self._clauses = clauses
        self._ground = ground
        self._powering = Powering(clauses, ground)
        self._switches = switches
        self._before = before
        self._changers: dict[int, list[int]] = {}
        """By rail: the switches whose notices may change it."""
        for switch in switches:
            for key in self._near(switch):
                self._changers.setdefault(key, []).append(switch)
        self._last: dict[tuple[int, int | None], dict[int | None, Statement]] = {
            (key, None): self._last_before(key, None) for key in self._changers
        }
        for switch in switches:
            self._last |= {(key, switch): self._last_before(key, switch) for key in self._seen_from(switch)}

    def run(self, lie: Lie, notices: Mapping[int, Sequence[Notice]]) -> Lie:
        """How the rails lie afterwards; ``lie`` tells how they lay before, and of which to speak."""
        left = {
            (key, switch): self._new_ends() for key, changers in self._changers.items() for switch in changers
        }
        for switch in self._switches:
            seen = {key: self._at_turn(lie, left, key, switch) for key in self._seen_from(switch)}
            *first, last = notices[switch]
            for notice in first:
                after = {key: self._new_ends() for key in self._near(switch)}
                self._powering.notice(seen, switch, notice.happens, after, powered=notice.powered)
                seen |= after
            after = {key: left[key, switch] for key in self._near(switch)}
            self._powering.notice(seen, switch, last.happens, after, powered=last.powered)
        return {key: self._at_turn(lie, left, key, None) for key in lie}

    def _near(self, switch: int) -> list[int]:
        return [switch, *self._ground.beside[switch].values()]

    def _seen_from(self, switch: int) -> Iterable[int]:
        beside = self._ground.beside
        return dict.fromkeys(key for near in self._near(switch) for key in (near, *beside[near].values()))

    def _new_ends(self) -> dict[Heading, Statement]:
        return {heading: self._clauses.new() for heading in Heading}

    def _last_before(self, key: int, switch: int | None) -> dict[int | None, Statement]:
        """Which switch changed the rail last when the turn of another comes (or at the end); or none did."""
        clauses = self._clauses
        earlier = {
            changer: clauses.true if switch is None else self._before(changer, switch)
            for changer in self._changers.get(key, ())
            if changer != switch
        }
        last: dict[int | None, Statement] = {None: -clauses.any_of(list(earlier.values()))}
        for changer, came in earlier.items():
            later = [
                clauses.all_of([other_came, self._before(changer, other)])
                for other, other_came in earlier.items()
                if other != changer
            ]
            last[changer] = clauses.all_of([came, -clauses.any_of(later)])
        return last

    def _at_turn(self, lie: Lie, left: Mapping[tuple[int, int], Ends], key: int, switch: int | None) -> Ends:
        """How a rail lies when the turn of a switch comes, or at the end."""
        last = self._last.get((key, switch), {None: self._clauses.true})
        choices = {changer: holds for changer, holds in last.items() if holds != self._clauses.false}
        if list(choices) == [None]:
            return lie[key]
        if len(choices) == 1:
            return left[key, next(changer for changer in choices if changer is not None)]
        ends = self._new_ends()
        for changer, holds in choices.items():
            self._clauses.same_if([holds], lie[key] if changer is None else left[key, changer], ends)
        return ends
