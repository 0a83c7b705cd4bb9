"""Smallest sets that meet every demand, found by a tree that is grown from the demands not met yet.

After Reiter, *A theory of diagnosis from first principles*, Artificial Intelligence 32 (1987), from memory.
His tree also closes branches by comparing labels, which Greiner, Smith and Wilkerson (1989) showed to lose
sets; here nothing is compared but the chosen sets themselves, so that no order of the demands matters.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable
from typing import Any, Protocol, TypeVar


class Sortable(Hashable, Protocol):
    """An element: sets of them are put in order by it."""

    def __lt__(self, other: Any, /) -> bool:
        """Whether it comes first."""


Element = TypeVar("Element", bound=Sortable)
Label = Callable[[frozenset[Element]], Iterable[Element] | None]
"""``None`` for a set that meets all demands; else elements not in it of which every larger set that does
meet them has at least one."""


def hitting_tree(label: Label[Element], most: int | None = None) -> list[tuple[Element, ...]]:
    """The sets that ``label`` finds fine while it finds none of their subsets fine; smallest first.

    Sets of more than ``most`` elements are not looked at. Every set asked about is one element larger than
    one that was not fine, and no subset of it was.
    """
    found: list[frozenset[Element]] = []
    level: set[frozenset[Element]] = {frozenset()}
    size = 0
    while level:
        larger: set[frozenset[Element]] = set()
        for chosen in level:
            if any(smaller <= chosen for smaller in found):
                continue
            missing = label(chosen)
            if missing is None:
                found.append(chosen)
            elif most is None or size < most:
                larger.update(chosen | {element} for element in missing)
        level = larger
        size += 1
    return sorted((tuple(sorted(chosen)) for chosen in found), key=lambda chosen: (len(chosen), chosen))


def minimal_hitting_sets(sets: Iterable[frozenset[Element]]) -> list[tuple[Element, ...]]:
    """The smallest sets that have an element in common with each of ``sets``; none where one is empty."""
    demands = list(sets)

    def first_missed(chosen: frozenset[Element]) -> Iterable[Element] | None:
        return next((demand for demand in demands if demand.isdisjoint(chosen)), None)

    return hitting_tree(first_missed)
