"""A whole line: branch after branch, each to the nearest target that is not reached yet."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence

from model.wiring.laying_site import Site
from model.wiring.laying_tree import Tree
from model.wiring.line_search import Branches, Tables


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
        site.field.rest_ok,
        site.field.clear,
        _priced(others.dust, present, history),
        _priced(others.parts, present, history),
        _priced(others.blocks, present, history),
    )


def hard_tables(site: Site, others: Others) -> Tables:
    """Tables in which nothing can be had that others bar."""
    dust_ok = _without(site.dust_ok, others.dust)
    rest_ok = _without(site.field.rest_ok, others.parts)
    return Tables(dust_ok, rest_ok, _without(site.field.clear, others.blocks), {}, {}, {})


class Grower:
    """Grows trees of one line."""

    def __init__(self, site: Site, headings: tuple[int, ...]) -> None:
        self._site = site
        self._headings = headings

    def grow(
        self, tables: Tables, tree: Tree | None = None, order: Sequence[int] = ()
    ) -> tuple[Tree, int | None]:
        """A tree to all targets, or as far as it came with the target that it could not reach.

        The targets in ``order`` come first, one by one; then always the one that is nearest.
        """
        site, field = self._site, self._site.field
        if tree is None:
            tree = Tree(field, field.pack(site.line.start))
        branches = Branches(field, tables, self._headings)
        left = [place for place in range(len(site.blocks)) if place not in reached(site, tree)]
        while left:
            first = next((place for place in order if place in left), None)
            wanted = left if first is None else [first]
            goals = self._goals(wanted)
            steps = branches.find(tree, goals, self._apart(wanted))
            if steps is None:
                return tree, wanted[0]
            tree.add(steps)
            left = [place for place in left if place not in reached(site, tree)]
        return tree, None

    def _goals(self, wanted: Sequence[int]) -> dict[int, int | None]:
        """The cells beside the wanted blocks, with the latest delay of those that they lie beside."""
        goals: dict[int, int | None] = {}
        for cell, places in self._site.goals.items():
            latest = [self._site.limits[place] for place in places if place in wanted]
            if latest:
                goals[cell] = None if None in latest else max(each or 0 for each in latest)
        return goals

    def _apart(self, wanted: Sequence[int]) -> Callable[[int], int]:
        field = self._site.field
        blocks = [block for place in wanted for block in self._site.blocks[place]]
        known: dict[int, int] = {}

        def apart(cell: int) -> int:
            """Steps at least: each goes one cell across, and at most one up or down."""
            found = known.get(cell)
            if found is None:
                x, y, z = field.unpack(cell)
                found = known[cell] = min(
                    max(abs(x - block.x) + abs(z - block.z) - 1, abs(y - block.y)) for block in blocks
                )
            return found

        return apart


def reached(site: Site, tree: Tree) -> dict[int, int]:
    """The targets that a tree reaches in time, each with the dust beside it that is on first."""
    found: dict[int, int] = {}
    for cell, places in site.goals.items():
        step = tree.steps.get(cell)
        for place in places if step is not None else ():
            assert step is not None
            latest = site.limits[place]
            earlier = tree.steps.get(found.get(place, 0))
            if (latest is None or step.delay <= latest) and (earlier is None or step.delay < earlier.delay):
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
