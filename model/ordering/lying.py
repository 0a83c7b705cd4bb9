"""How rails lie, told by what they are linked to: first their two ends, then the shape with its slope.

Common practice of the trade, written from memory, no published source. With two links a rail has its ends
there; with one it is straight on that axis; with none it lies as it was faced. A straight rail rises to a
neighbour one up that was there when it last took its shape; where that hangs on the moment, both are left
possible, and a trial of the order decides.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from model.clauses import Clauses, Statement
from model.grid import Heading
from model.ordering.ground import Ground
from model.track.rails import BIT, EAST_WEST, NORTH_SOUTH
from model.track.settling import CURVE_OF_LINKS
from model.track.shapes import ENDS, RISING, Shape

Ends = Mapping[Heading, Statement]
"""By heading: the rail has an end there. Two of the four hold."""
Shapes = dict[Shape, Statement]
"""The shapes that a rail may have, each with the statement that it has it."""
WINNING: Final = (Heading.SOUTH, Heading.WEST)
"""The headings to which a rail rises where both neighbours on an axis are one up."""


def ends_as_built(
    clauses: Clauses, links: Mapping[Heading, Statement], lies_north_south: Statement
) -> dict[Heading, Statement]:
    """The ends of a rail with these links, of which no more than two hold."""
    ends = {heading: clauses.new() for heading in Heading}
    for values, row in clauses.rows([lies_north_south, *links.values()]):
        mask = sum(BIT[heading] for heading, holds in zip(links, values[1:], strict=True) if holds)
        if mask.bit_count() <= 2:
            say_ends(clauses, row, ends, ends_of_links(mask, north_south_else=values[0]))
    return ends


def ends_of_links(mask: int, *, north_south_else: bool = True) -> int:
    """The ends, as a mask, of a plain rail that is linked in no more than two directions."""
    if mask.bit_count() == 2:
        return mask
    if not mask:
        return NORTH_SOUTH if north_south_else else EAST_WEST
    return NORTH_SOUTH if mask & NORTH_SOUTH else EAST_WEST


def say_ends(clauses: Clauses, given: list[Statement], ends: Ends, mask: int) -> None:
    """Under these circumstances the ends are those of the mask."""
    for heading, end in ends.items():
        clauses.say_if(given, end if mask & BIT[heading] else -end)


def shapes_of_ends(
    clauses: Clauses, ground: Ground, key: int, ends: Ends, links: Mapping[Heading, Statement]
) -> Shapes:
    """The shapes that a rail may have, given its ends and its links as built."""
    shapes: Shapes = {}
    for curve in CURVE_OF_LINKS.values():
        if key not in ground.straight_only and curve.headings <= ground.beside[key].keys():
            shapes[curve] = clauses.all_of([ends[heading] for heading in curve.headings])
    for flat in (Shape.NORTH_SOUTH, Shape.EAST_WEST):
        on_axis = clauses.all_of([ends[end.heading] for end in ENDS[flat]])
        shapes |= _sloped(clauses, flat, on_axis, links, ground.above(key))
    return shapes


def _sloped(
    clauses: Clauses,
    flat: Shape,
    on_axis: Statement,
    links: Mapping[Heading, Statement],
    above: Mapping[Heading, int],
) -> Shapes:
    """A linked neighbour one up was there when the rail took its shape; another one up may have been."""
    up = [end.heading for end in ENDS[flat] if end.heading in above]
    if not up:
        return {flat: on_axis}
    shapes = {shape: clauses.new() for shape in (flat, *(RISING[heading] for heading in up))}
    clauses.exactly_one_of([-on_axis, *shapes.values()])
    for heading in up:
        if heading in WINNING or len(up) == 1:
            clauses.say_if([on_axis, links[heading]], shapes[RISING[heading]])
        else:
            clauses.say_if([on_axis, links[heading]], -shapes[flat])
    return shapes
