"""A whole line: branch after branch, each to the nearest target that is not reached yet."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence

from model.wiring.laying.goals import NEVER_LATE, Goals
from model.wiring.laying.search import DEAREST, Budget, Search, Tables
from model.wiring.laying.site import Site
from model.wiring.laying.tree import Tree


class Others:
    """What the other lines bar, each cell as often as there are lines that bar it."""

    def __init__(self, trees: Iterable[Tree]) -> None:
        self.dust: Counter[int] = Counter()
        self.parts: Counter[int] = Counter()
        self.blocks: Counter[int] = Counter()
        for tree in trees:
            self.dust.update(tree.bars_dust())
            self.parts.update(tree.bars_parts())
            self.blocks.update(tree.blocks)

    def conflicts(self, tree: Tree) -> set[int]:
        """The cells of a tree that another line bars."""
        dust = self.dust.keys() & tree.steps.keys()
        return dust | self.parts.keys() & tree.repeaters | self.blocks.keys() & tree.heads


def soft_tables(site: Site, others: Others, present: int, history: Mapping[int, int]) -> Tables:
    """Tables in which what others bar can be had for a price."""
    return Tables(
        site.dust_ok,
        site.rest_ok,
        site.field.clear,
        _priced(others.dust, present, history),
        _priced(others.parts, present, history),
        _priced(others.blocks, present, history),
    )


def hard_tables(site: Site, others: Others) -> Tables:
    """Tables in which nothing can be had that others bar."""
    dust_ok = _without(site.dust_ok, others.dust)
    rest_ok = _without(site.rest_ok, others.parts)
    return Tables(dust_ok, rest_ok, _without(site.field.clear, others.blocks), {}, {}, {})


class Grower:
    """Grows trees of one line."""

    def __init__(self, site: Site, headings: tuple[int, ...], budget: Budget) -> None:
        self._site = site
        self._headings = headings
        self._budget = budget

    def grow_whole(self, tables: Tables) -> tuple[Tree, int | None]:
        """As ``grow``; where the line itself bars the way to a target, once more with that one first."""
        tree, missed = self.grow(tables)
        return (tree, None) if missed is None else self.grow(tables, order=[missed])

    def grow(
        self,
        tables: Tables,
        tree: Tree | None = None,
        order: Sequence[int] = (),
        below: int = DEAREST,
    ) -> tuple[Tree, int | None]:
        """A tree to all targets, or as far as it came with a target that it could not reach.

        The targets in ``order`` come first, one by one; then always the one that is nearest. The price must
        stay below ``below``.
        """
        site = self._site
        tree = site.start() if tree is None else tree
        while left := [place for place in site.places if place not in reached(site, tree)]:
            wanted = next(([place] for place in order if place in left), left)
            steps = Search(tables, tree, Goals(site, wanted), self._headings).run(
                self._budget, below - tree.price
            )
            if steps is None:
                return tree, wanted[0]
            tree.add(steps)
        return tree, None


def reached(site: Site, tree: Tree) -> dict[int, int]:
    """The targets that a tree reaches in time, each with the dust beside it that is on first."""
    found: dict[int, int] = {}
    for cell in site.goals.keys() & tree.steps.keys():
        delay = tree.steps[cell].delay
        for place in site.goals[cell]:
            in_time = delay <= site.limits.get(place, NEVER_LATE)
            if in_time and (
                place not in found or (delay, cell) < (tree.steps[found[place]].delay, found[place])
            ):
                found[place] = cell
    return found


def _priced(barred: Mapping[int, int], present: int, history: Mapping[int, int]) -> dict[int, int]:
    extra = {cell: times * present for cell, times in barred.items()}
    for cell, price in history.items():
        extra[cell] = extra.get(cell, 0) + price
    return extra


def _without(ok: bytearray, barred: Iterable[int]) -> bytearray:
    left = bytearray(ok)
    for cell in barred:
        left[cell] = 0
    return left
