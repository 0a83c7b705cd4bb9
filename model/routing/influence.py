"""Which rails can lie in several shapes when signals come and go, and which switches bear on which.

A notice at a switch looks at rails up to two columns away. What it really depends on is found by trying all
shapes in which those rails can lie; most switches turn out to depend on nothing but their own signal.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import product
from typing import NamedTuple

from model.pauses import pause
from model.track.layout import Layout
from model.track.settling import noticed
from model.track.shapes import Shape

Shapes = dict[int, Shape]
"""Shape by packed cell."""
Possible = dict[int, set[Shape]]
"""The shapes in which a rail can lie, by packed cell; rails that always lie as built are left out."""


class Reaction(NamedTuple):
    """What a notice at one switch does with one signal: what it writes, by the shapes it depends on."""

    reads: tuple[int, ...]
    writes: dict[tuple[Shape, ...], Shapes]


class Influence(NamedTuple):
    """What every switch does, by its packed cell."""

    possible: Possible
    reactions: dict[int, tuple[Reaction, Reaction]]
    """Released, powered."""

    def reads(self, switch: int) -> set[int]:
        """The rails on whose shape a notice at the switch depends."""
        return {key for reaction in self.reactions[switch] for key in reaction.reads}

    def writes(self, switch: int) -> set[int]:
        """The rails of several shapes that a notice at the switch may bend; itself among them."""
        results = (shapes for reaction in self.reactions[switch] for shapes in reaction.writes.values())
        return {key for shapes in results for key in shapes if key in self.possible}


def influence(layout: Layout, switches: Iterable[int]) -> Influence:
    """Tries every notice on every combination of shapes, until no new shape comes up."""
    possible: Possible = {}
    reactions: dict[int, tuple[Reaction, Reaction]] = {}
    looking_at: dict[int, set[int]] = {}
    waiting = dict.fromkeys(switches)
    while waiting:
        pause()
        switch = next(iter(waiting))
        del waiting[switch]
        trial = _Trial(layout, possible, switch)
        reactions[switch] = (trial.reaction(powered=False), trial.reaction(powered=True))
        for key in trial.looked_at:
            looking_at.setdefault(key, set()).add(switch)
        for key in sorted(_take_over(layout, possible, reactions[switch])):
            waiting.update(dict.fromkeys(sorted(looking_at.get(key, ()))))
    return Influence(possible, {switch: _reduced(pair) for switch, pair in reactions.items()})


def _take_over(layout: Layout, possible: Possible, reactions: Sequence[Reaction]) -> set[int]:
    """Adds the shapes that came up; returns the rails with a new one."""
    news: set[int] = set()
    for reaction in reactions:
        for shapes in reaction.writes.values():
            for key, shape in shapes.items():
                built = layout.rails[key]
                known = possible.get(key, {built})
                if shape not in known:
                    possible[key] = known | {shape}
                    news.add(key)
    return news


class _Trial:
    """Tries notices at one switch."""

    def __init__(self, layout: Layout, possible: Possible, switch: int) -> None:
        self.layout = layout
        self.possible = possible
        self.switch = switch
        self.looked_at: set[int] = set()

    def reaction(self, *, powered: bool) -> Reaction:
        """What the notice does for each combination of shapes that it looks at."""
        while True:
            reads = tuple(sorted(self.looked_at & self.possible.keys()))
            writes = {
                shapes: self._written(dict(zip(reads, shapes, strict=True)), powered=powered)
                for shapes in product(*(sorted(self.possible[key]) for key in reads))
            }
            if self.looked_at & self.possible.keys() == set(reads):
                return Reaction(reads, writes)

    def _written(self, assumed: Shapes, *, powered: bool) -> Shapes:
        built = self.layout.rails

        def get(key: int) -> Shape | None:
            shape = assumed.get(key)
            return built.get(key) if shape is None else shape

        leaf = noticed(get, self.layout.straight_only, self.switch, powered=powered)
        self.looked_at.update(self.switch + offset for offset in leaf.seen)
        present = get(self.switch)
        assert present is not None
        return {self.switch: present} | {self.switch + offset: shape for offset, shape in leaf.writes}


def _reduced(pair: tuple[Reaction, Reaction]) -> tuple[Reaction, Reaction]:
    released, powered = pair
    return _without_idle_reads(released), _without_idle_reads(powered)


def _without_idle_reads(reaction: Reaction) -> Reaction:
    """Leaves out the rails that were looked at but make no difference."""
    index = 0
    while index < len(reaction.reads):
        writes: dict[tuple[Shape, ...], Shapes] = {}
        matters = False
        for shapes, written in reaction.writes.items():
            rest = shapes[:index] + shapes[index + 1 :]
            matters = matters or writes.setdefault(rest, written) != written
        if matters:
            index += 1
        else:
            reaction = Reaction(reaction.reads[:index] + reaction.reads[index + 1 :], writes)
    return reaction
