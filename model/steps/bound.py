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

from collections.abc import Container, Iterable, Iterator, Mapping

from model.grid import Cell, Heading
from model.parts import RAILS, Part
from model.pieces import Piece
from model.plan import Plan
from model.track.rails import STEP, UP, pack, unpack

Parts = Mapping[int, Part]
"""Which rail stands where, by packed cell."""


def ordered_rails(plan: Plan) -> frozenset[Cell]:
    """The rails whose time of placing, among one another, can change a shape."""
    parts = rail_parts(plan)
    bound = {key for key in parts if not _is_free(parts, key)}
    beside = {near for key in bound for near in rails_beside(parts, key)}
    look_again = {key for key in beside if _looks_again(parts, key, bound)}
    ordered = bound | beside | {near for key in look_again for near in rails_beside(parts, key)}
    return frozenset(map(unpack, ordered))


def rail_parts(plan: Plan) -> Parts:
    """The rails of a plan."""
    return {pack(piece.at): piece.part for piece in plan.pieces if piece.part in RAILS}


def _looks_again(parts: Parts, key: int, bound: Container[int]) -> bool:
    above = (key + step + UP in parts for step in STEP)
    tight = (
        near in bound and (parts[near] is not Part.RAIL or _is_crowded(parts, near))
        for near in rails_beside(parts, key)
    )
    return any(above) or any(tight)


def _is_crowded(parts: Parts, key: int) -> bool:
    """Whether a next column holds several rails, so that an end may point at one and find another."""
    return any(number > 1 for number in _rails_by_heading(parts, key))


def _is_free(parts: Parts, key: int) -> bool:
    by_heading = _rails_by_heading(parts, key)
    taken = [heading for heading in Heading if by_heading[heading]]
    if max(by_heading) > 1 or len(taken) > 2:
        return False
    on_one_axis = len({heading.lies_north_south for heading in taken}) < 2
    return on_one_axis or parts[key] is Part.RAIL


def _rails_by_heading(parts: Parts, key: int) -> list[int]:
    """How many rails each of the four next columns holds within a level."""
    return [(key + s in parts) + (key + s + UP in parts) + (key + s - UP in parts) for s in STEP]


def rails_beside(rails: Container[int], key: int) -> Iterator[int]:
    """The rails in the four next columns, at the own level, one up and one down."""
    return (near for step in STEP for rise in (0, UP, -UP) if (near := key + step + rise) in rails)


def order_numbers(plan: Plan, laid: Iterable[Piece]) -> dict[Cell, int]:
    """Numbers from 1 for the rails whose order of placing matters, as they follow one another in ``laid``.

    ``laid`` is an order of placing that gives the plan as drawn, that of the builder's steps. Placed in the
    order of their numbers, with all other rails at any time, they come out so too.
    """
    ordered = ordered_rails(plan)
    return {cell: number for number, cell in enumerate((p.at for p in laid if p.at in ordered), start=1)}
