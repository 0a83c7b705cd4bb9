"""Which rails must be placed in an order for the plan to come out as drawn.

A rail is *free* when it always ends up linked to all its neighbours, in whatever order they come: each of
the four next columns holds at most one rail within a level of its own, no more than two columns hold one,
and a booster or detector rail has both on one axis. Such a rail always has room for a neighbour, so that
whichever of the two comes later joins the other. All other rails are *bound*: what they look like depends
on which neighbours came first.

It also matters when the neighbours of a bound rail come, for it may have no room for them. And in three
cases it matters when the neighbours of such a neighbour come, for each of them makes it look again: below
another rail it may find a slope; beside a booster or detector rail that turns its side it loses that link;
and where rails stand one above the other it may be linked by chance, to an end that found the other one.
All these are numbered; plain runs are not. That nothing else matters is found by search, not proved: the
tests build plans in every order that the numbers allow.
"""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator

from model.grid import Cell, Heading
from model.parts import RAILS, Part
from model.pieces import Piece
from model.plan import Plan


def ordered_rails(plan: Plan) -> frozenset[Cell]:
    """The rails whose time of placing, among one another, can change a shape."""
    rails = [piece.at for piece in plan.pieces if piece.part in RAILS]
    bound = {cell for cell in rails if not _is_free(plan, cell)}
    beside = {near for cell in bound for near in rails_beside(plan, cell)}
    look_again = {cell for cell in beside if _looks_again(plan, cell, bound)}
    return frozenset(bound | beside | {near for cell in look_again for near in rails_beside(plan, cell)})


def _looks_again(plan: Plan, cell: Cell, bound: Container[Cell]) -> bool:
    return any(
        near.y > cell.y
        or (near in bound and (plan.pieces.part_at(near) is not Part.RAIL or _is_crowded(plan, near)))
        for near in rails_beside(plan, cell)
    )


def _is_crowded(plan: Plan, cell: Cell) -> bool:
    """Whether a next column holds several rails, so that an end may point at one and find another."""
    return any(len([*_rails_in_column(plan, cell, heading)]) > 1 for heading in Heading)


def _is_free(plan: Plan, cell: Cell) -> bool:
    by_heading = [[*_rails_in_column(plan, cell, heading)] for heading in Heading]
    taken = [heading for heading in Heading if by_heading[heading]]
    if any(len(rails) > 1 for rails in by_heading) or len(taken) > 2:
        return False
    on_one_axis = len({heading.lies_north_south for heading in taken}) < 2
    return on_one_axis or plan.pieces.part_at(cell) is Part.RAIL


def rails_beside(plan: Plan, cell: Cell) -> Iterator[Cell]:
    """The rails in the four next columns, at the own level, one up and one down."""
    for heading in Heading:
        yield from _rails_in_column(plan, cell, heading)


def _rails_in_column(plan: Plan, cell: Cell, heading: Heading) -> Iterator[Cell]:
    for rise in (0, 1, -1):
        beside = cell.step(heading, rise)
        if plan.pieces.part_at(beside) in RAILS:
            yield beside


def order_numbers(plan: Plan, laid: Iterable[Piece]) -> dict[Cell, int]:
    """Numbers from 1 for the rails whose order of placing matters, as they follow one another in ``laid``.

    ``laid`` is an order of placing that gives the plan as drawn, that of the builder's steps. Placed in the
    order of their numbers, with all other rails at any time, they come out so too.
    """
    ordered = ordered_rails(plan)
    return {cell: number for number, cell in enumerate((p.at for p in laid if p.at in ordered), start=1)}
