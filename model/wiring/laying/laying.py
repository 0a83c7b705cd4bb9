"""Laying lines: all at once, each giving way where that costs less, until none is in the way of another.

After McMurchie and Ebeling 1995 (negotiated congestion, from memory): lines may first run through one
another for a price, which grows round by round, and for good in the cells that were fought over.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from random import Random
from typing import Final

from model.progress import Progress
from model.wiring.laying.crowds import crowded
from model.wiring.laying.field import Field
from model.wiring.laying.ground import Ground
from model.wiring.laying.growth import Grower, Others, hard_tables, soft_tables
from model.wiring.laying.laid import Failure, Limits, Line, Routed
from model.wiring.laying.pieces import laid_of
from model.wiring.laying.search import Budget
from model.wiring.laying.shortening import shorten
from model.wiring.laying.site import Site
from model.wiring.laying.tree import Tree
from model.wording import QT_TR_NOOP, tr

ROUNDS: Final = 16
BUDGET: Final = 4_000
BUDGET_A_TARGET: Final = 2_000
"""Cells looked at in all rounds, a second for many lines; a quarter of that to shorten them."""
_FIRST_PRICE: Final = 6
_RISE: Final = 1.4
_FOUGHT_OVER: Final = 5
"""Added for good to the price of a cell in each round in which two lines want it."""
_NOT_FOUND: Final = QT_TR_NOOP("No way was found past the other lines")


def lay_lines(
    ground: Ground, lines: Sequence[Line], seed: int = 0, limits: Limits | None = None
) -> Iterator[Progress | Routed]:
    """Lays lines on a ground, from which all targets get their signal and nothing else does.

    The last that comes is the result. Where one line fails the others are left as they are then. The same
    seed gives the same lines; another seed may give others.
    """
    yield Progress("lines", 0, ROUNDS)
    field = Field(ground)
    sites = [Site(field, line, limits or {}) for line in lines]
    failed = [failure for site in sites for failure in site.failures] or list(crowded(sites))
    laying = _Laying([] if failed else sites, Random(seed))
    yield from laying.rounds()
    if not laying.failed:
        yield from laying.shorten()
    laid = [laid_of(site, tree) for site, tree in laying.whole()]
    yield Routed(tuple(laid), (*failed, *laying.failed))


class _Laying:
    """The trees of all lines, as they are changed."""

    def __init__(self, sites: Sequence[Site], random: Random) -> None:
        self.failed: list[Failure] = []
        self._random = random
        self._sites = sites
        self._allowed = BUDGET + BUDGET_A_TARGET * sum(len(site.places) for site in sites)
        self._budget = Budget(self._allowed)
        self._trees: dict[int, Tree] = {}
        """By the place of the site."""
        self._growers = [Grower(site, self._any_headings(site.field), self._budget) for site in sites]

    def rounds(self) -> Iterator[Progress]:
        """Until no line is in the way of another, or for so many rounds."""
        history: dict[int, int] = {}
        present = float(_FIRST_PRICE)
        wanting = list(range(len(self._sites)))
        for done in range(ROUNDS):
            self._random.shuffle(wanting)
            for place in wanting:
                tables = soft_tables(self._sites[place], self._others(place), int(present), history)
                yield Progress("lines", done, ROUNDS)
                if not self._keep(place, *self._growers[place].grow_whole(tables)):
                    return
            fought = {place: self._conflicts(place) for place in self._trees}
            wanting = [place for place, cells in fought.items() if cells]
            if not wanting:
                return
            for cell in (cell for cells in fought.values() for cell in cells):
                history[cell] = history.get(cell, 0) + _FOUGHT_OVER
            present *= _RISE
        self._give_up(wanting)

    def shorten(self) -> Iterator[Progress]:
        """Lays each line again in some other ways, and keeps what is shorter."""
        self._budget.left = self._allowed // 4
        for place, site in enumerate(self._sites):
            yield Progress("shortening", place, len(self._sites))
            tables = hard_tables(site, self._others(place))
            tree = shorten(self._trees[place], site, self._growers[place], tables, self._random)
            self._trees[place] = tree

    def whole(self) -> Iterator[tuple[Site, Tree]]:
        """The lines that reach all of their targets and are in nobody's way."""
        for place, site in enumerate(self._sites):
            if place in self._trees:
                yield site, self._trees[place]

    def _keep(self, place: int, tree: Tree, missed: int | None) -> bool:
        """Takes a tree as the line's; where it misses a target, gives up the line, and all in conflict."""
        if missed is None:
            self._trees[place] = tree
            return True
        self._trees.pop(place, None)
        self._give_up(list(self._trees))
        self._fail(place, missed, self._why_missed(place, missed))
        return False

    def _give_up(self, places: Sequence[int]) -> None:
        """Takes away lines until none is in the way of another."""
        for place in places:
            if self._conflicts(place):
                del self._trees[place]
                self._fail(place, 0, tr(_NOT_FOUND))

    def _why_missed(self, place: int, missed: int) -> str:
        if self._budget.left <= 0:
            return tr(_NOT_FOUND)
        latest = self._sites[place].limits.get(missed)
        return (
            tr("There is no way")
            if latest is None
            else tr("There is no way of {latest} ticks or less", latest=latest)
        )

    def _fail(self, place: int, missed: int, why: str) -> None:
        site = self._sites[place]
        block = site.line.targets[missed][0]
        self.failed.append(
            site.failure(missed, tr("{why} to the target block at {block}.", why=why, block=block))
        )

    def _others(self, place: int) -> Others:
        return Others(tree for other, tree in self._trees.items() if other != place)

    def _conflicts(self, place: int) -> set[int]:
        return self._others(place).conflicts(self._trees[place])

    def _any_headings(self, field: Field) -> tuple[int, ...]:
        headings = list(field.headings)
        self._random.shuffle(headings)
        return tuple(headings)
