"""How short a line could be: the shortest tree over the places where it could lie without the other lines."""

from __future__ import annotations

from collections.abc import Iterator

import networkx as nx

from model.grid import Cell, Facing, Heading
from model.parts import TRAITS, Part
from model.pieces import Pieces
from model.plan import Plan
from model.wiring.laying.ground import Ground
from tests.oracle.steiner import Bounds, steiner_bounds
from tests.oracle.wiring import Line

FAR = 10_000
"""Dearer than any line: the tree comes to a target by one way only, and not through it."""


def line_bounds(before: Plan, wired: Plan, line: Line, lines: list[Line]) -> Bounds:
    """Bounds of the number of dust and repeaters that lead from the line's start to its targets.

    The targets are those that the line reaches as it was laid; any side of theirs will do. Wherever dust or a
    repeater may lie for the router, or lies in this line, the tree may run.
    """
    ground = Ground(Plan(without_lines(before, wired, lines), before.details))
    own = {Cell(*at) for at in line.dust | line.repeaters}
    targets = [Cell(*at) for at in line.targets]
    places = {cell for cell in ground.box.cells() if takes_wire(ground, cell, targets)} | own
    graph = nx.Graph()
    graph.add_nodes_from(places)
    graph.add_edges_from(links(ground, places))
    for target in targets:
        sides = (target.step(heading) for heading in Heading)
        graph.add_edges_from((side, target, {"weight": FAR}) for side in sides if side in places)
    bounds = steiner_bounds(graph, [Cell(*line.start), *targets])
    first = 1 - FAR * len(targets)
    return Bounds(bounds.lower + first, bounds.upper + first)


def without_lines(before: Plan, wired: Plan, lines: list[Line]) -> Pieces:
    """The wired plan without all lines and the blocks that were put under them alone."""
    laid = {Cell(*at) for line in lines for at in line.dust | line.repeaters}
    left = [piece for piece in wired.pieces if piece.at not in laid]
    needed = {cell for piece in left for cell in piece.at.six_beside() if not TRAITS[piece.part].carries}
    under = {cell.moved(dy=-1) for cell in laid} - needed
    return Pieces.of(
        piece
        for piece in left
        if piece.at in before.pieces or piece.at not in under or piece.part is not Part.SOLID_BLOCK
    )


def takes_wire(ground: Ground, cell: Cell, targets: list[Cell]) -> bool:
    """Whether dust or a repeater may lie in a cell; dust beside the line's own targets, too."""
    if not ground.allows(cell):
        return False
    below = cell.beside(Facing.DOWN)
    new = ground.takes_block(below)
    repeater = cell not in ground.rest_barred and (new or ground.carries_repeater(below))
    is_free = cell not in ground.dust_barred and cell not in ground.fronts
    is_free = is_free and ground.target_sides.get(cell, set()) <= set(targets)
    return repeater or (is_free and (new or ground.carries_dust(below)))


def links(ground: Ground, places: set[Cell]) -> Iterator[tuple[Cell, Cell]]:
    """Places between which a signal can run: side by side, or over a step that no block cuts."""
    for cell in places:
        above = ground.pieces.part_at(cell.moved(dy=1))
        for heading in Heading:
            yield from ((cell, other) for other in [cell.step(heading)] if other in places)
            if above is None or not TRAITS[above].solid:
                yield from ((cell, other) for other in [cell.step(heading, 1)] if other in places)
