"""Lines that cannot all be laid, as is seen from where they start and end: nothing is searched then."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import permutations

from model.wiring.laying.growth import Others
from model.wiring.laying.laid import Failure
from model.wiring.laying.site import Site
from model.wording import tr


def crowded(sites: Sequence[Site]) -> Iterator[Failure]:
    """Keeps each line off the starts of the others, and tells which ends have too little room then."""
    for site, other in permutations(sites, 2):
        site.keep_off(other.start())
    yield from _too_close(sites)
    yield from _too_many(sites)


def _too_close(sites: Sequence[Site]) -> Iterator[Failure]:
    """Lines that are in each other's way where they must start, or where they can only end."""
    needed = [site.needed() for site in sites]
    for site, tree in zip(sites, needed, strict=True):
        if Others(other for other in needed if other is not tree).conflicts(tree):
            yield site.failure(0, tr("Two lines are in each other's way at their starts or ends."))


def _too_many(sites: Sequence[Site]) -> Iterator[Failure]:
    """Lines that want to end in fewer cells than they are (after Hall 1935, from memory)."""
    for site in sites:
        for place, sides in enumerate(site.sides):
            same = [other for other in sites if any(set(each) <= set(sides) for each in other.sides)]
            if len(same) > len(sides):
                block = site.line.targets[place][0]
                yield site.failure(
                    place, tr("The lines have too little room at the target block at {block}.", block=block)
                )
