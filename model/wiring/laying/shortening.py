"""A line laid again in other ways, as long as it gets shorter."""

from __future__ import annotations

from random import Random
from typing import Final

from model.wiring.laying.growth import Grower, reached
from model.wiring.laying.search import Tables
from model.wiring.laying.site import Site
from model.wiring.laying.tree import Tree

_ORDERS: Final = 6
"""Orders of the targets that are tried."""


def shorten(tree: Tree, site: Site, grower: Grower, tables: Tables, random: Random) -> Tree:
    """The cheapest tree found; the one given where none is cheaper."""
    best = tree
    places = list(site.places)
    for _ in range(_ORDERS if len(places) > 1 else 1):
        random.shuffle(places)
        other, missed = grower.grow(tables, order=places[: len(places) // 2], below=best.price)
        if missed is None:
            best = other
    return _with_other_branches(best, site, grower, tables)


def _with_other_branches(tree: Tree, site: Site, grower: Grower, tables: Tables) -> Tree:
    """Takes one branch away after another and lays it again, until none gets shorter."""
    for place in site.places:
        pruned = _without_end(tree, site, place)
        if pruned is not None:
            other, missed = grower.grow(tables, pruned, below=tree.price)
            if missed is None:
                return _with_other_branches(other, site, grower, tables)
    return tree


def _without_end(tree: Tree, site: Site, place: int) -> Tree | None:
    """The tree without what leads to one target alone; ``None`` where that is nothing."""
    ends = reached(site, tree)
    needed: set[int] = set()
    for other, cell in ends.items():
        while other != place and cell and cell not in needed:
            needed.add(cell)
            cell = tree.steps[cell].before
    left = [step for step in tree.steps.values() if step.before and step.cell in needed]
    if len(left) + 1 == len(tree.steps):
        return None
    pruned = site.start()
    pruned.add(left)
    return pruned
