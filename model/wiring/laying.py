"""Laying lines: all at once, each giving way where that costs less, until none is in the way of another.

After McMurchie and Ebeling 1995 (negotiated congestion, from memory): lines may first run through one
another for a price, which grows round by round, and for good in the cells that were fought over.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from random import Random
from typing import Final

from model.wiring.ground import Ground
from model.wiring.laid import Failure, Limits, Line, Routed
from model.wiring.laying_field import Field
from model.wiring.laying_growth import Grower, Others, hard_tables, soft_tables
from model.wiring.laying_pieces import laid_of
from model.wiring.laying_shortening import shorten
from model.wiring.laying_site import Site
from model.wiring.laying_tree import Tree
from model.wiring.progress import Progress

ROUNDS: Final = 30
_FIRST_PRICE: Final = 6
_RISE: Final = 1.4
_FOUGHT_OVER: Final = 5
"""Added for good to the price of a cell in each round in which two lines want it."""


def lay_lines(
    ground: Ground, lines: Sequence[Line], seed: int = 0, limits: Limits | None = None
) -> Iterator[Progress | Routed]:
    """Lays lines on a ground, from which all targets get their signal and nothing else does.

    The last that comes is the result. The same seed gives the same lines; another seed may give others.
    """
    yield Progress("lines", 0, ROUNDS)
    field = Field(ground)
    sites = [Site(field, line, limits or {}) for line in lines]
    failed = [failure for site in sites for failure in site.failures]
    open_sites = [site for site in sites if not site.failures]
    laying = _Laying(open_sites, Random(seed))
    yield from laying.rounds()
    if laying.has_conflicts:
        yield from laying.give_way()
    failed += laying.failed
    yield from laying.shorten()
    yield Routed(tuple(laid_of(site, tree) for site, tree in laying.whole()), tuple(failed))


class _Laying:
    """The trees of all lines, as they are changed."""

    def __init__(self, sites: Sequence[Site], random: Random) -> None:
        self._random = random
        self._sites = list(sites)
        random.shuffle(self._sites)
        self._trees: dict[int, Tree] = {}
        self._growers = [Grower(site, self._any_headings(site.field)) for site in self._sites]
        self.failed: list[Failure] = []

    def _any_headings(self, field: Field) -> tuple[int, ...]:
        headings = list(field.headings)
        self._random.shuffle(headings)
        return tuple(headings)

    @property
    def has_conflicts(self) -> bool:
        """Whether two lines are in the way of each other."""
        return any(self._conflicts(place) for place in self._trees)

    def whole(self) -> Iterator[tuple[Site, Tree]]:
        """The lines that reach all of their targets."""
        for place in sorted(self._trees, key=lambda place: self._sites[place].line.name):
            yield self._sites[place], self._trees[place]

    def rounds(self) -> Iterator[Progress]:
        """Until no line is in the way of another, or for so many rounds."""
        history: dict[int, int] = {}
        present = float(_FIRST_PRICE)
        wanting = list(range(len(self._sites)))
        for done in range(ROUNDS):
            for place in wanting:
                others = self._others(place)
                tables = soft_tables(self._sites[place], others, int(present), history)
                self._keep(place, *self._growers[place].grow(tables))
                yield Progress("lines", done, ROUNDS)
            fought = {place: self._conflicts(place) for place in self._trees}
            for cells in fought.values():
                for cell in cells:
                    history[cell] = history.get(cell, 0) + _FOUGHT_OVER
            wanting = [place for place, cells in fought.items() if cells]
            if not wanting:
                return
            self._random.shuffle(wanting)
            present *= _RISE

    def give_way(self) -> Iterator[Progress]:
        """Lines still in the way of others are laid where they are in nobody's way, or not at all."""
        for place in sorted(self._trees, key=lambda place: len(self._conflicts(place))):
            if not self._conflicts(place):
                continue
            tables = hard_tables(self._sites[place], self._others(place))
            self._keep(place, *self._growers[place].grow(tables))
            yield Progress("lines", ROUNDS, ROUNDS)

    def shorten(self) -> Iterator[Progress]:
        """Lays each line again in some other ways, and keeps what is shorter."""
        places = sorted(self._trees)
        for done, place in enumerate(places):
            yield Progress("shortening", done, len(places))
            tables = hard_tables(self._sites[place], self._others(place))
            self._trees[place] = shorten(
                self._trees[place], self._sites[place], self._growers[place], tables, self._random
            )

    def _keep(self, place: int, tree: Tree, missed: int | None) -> None:
        if missed is None:
            self._trees[place] = tree
            return
        self._trees.pop(place, None)
        site = self._sites[place]
        block = site.blocks[missed][0]
        self.failed.append(Failure(site.line, block, f"No way is free to the target block at {block}."))

    def _others(self, place: int) -> Others:
        return Others(tree for other, tree in self._trees.items() if other != place)

    def _conflicts(self, place: int) -> set[int]:
        return self._others(place).conflicts(self._trees[place])
