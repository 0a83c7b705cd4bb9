"""The search for an order that lays a few rails level by level and gives the shapes wanted."""

from __future__ import annotations

from collections.abc import Container, Iterator, Mapping, Sequence

from model.steps.runs import Rail
from model.track.settling import place
from model.track.shapes import Shape

Shapes = dict[int, Shape]


def order_from_below(
    rails: Sequence[Rail], straight_only: Container[int], wanted: Mapping[int, Shape], placings: int
) -> list[Rail] | None:
    """An order in which no rail comes after a higher one; ``None`` where that many placings find none.

    Goes through what can stand after each placing, in the order of the plan as far as it goes, and through
    nothing twice.
    """
    seen: set[frozenset[tuple[int, Shape]]] = set()
    branches = [_Branch([], {}, _lowest(rails))]
    while branches:
        branch = branches[-1]
        rail = next(branch.choices, None)
        if rail is None:
            branches.pop()
            continue
        if placings == 0:
            return None
        placings -= 1
        shapes = dict(branch.shapes)
        place(shapes, straight_only, rail.key, rail.heading)
        state = frozenset(shapes.items())
        if state in seen:
            continue
        seen.add(state)
        order = [*branch.order, rail]
        if len(order) < len(rails):
            branches.append(_Branch(order, shapes, _lowest([r for r in rails if r.key not in shapes])))
        elif all(wanted[key] is shape for key, shape in shapes.items()):
            return order
    return None


class _Branch:
    """What stands after some placings, and what may come next."""

    def __init__(self, order: list[Rail], shapes: Shapes, choices: Iterator[Rail]) -> None:
        self.order = order
        self.shapes = shapes
        self.choices = choices


def _lowest(rails: Sequence[Rail]) -> Iterator[Rail]:
    level = min(rail.level for rail in rails)
    return (rail for rail in rails if rail.level == level)
