"""From a tree to the pieces of a line."""

from __future__ import annotations

from collections.abc import Iterator

from model.grid import FACING_OF, Heading
from model.parts import Part
from model.pieces import Piece, new_piece
from model.wiring.laying.growth import reached
from model.wiring.laying.laid import Laid
from model.wiring.laying.site import Site
from model.wiring.laying.tree import Tree


def laid_of(site: Site, tree: Tree) -> Laid:
    """A tree that reaches all targets of its line, as pieces."""
    field, line = site.field, site.line
    blocks = [new_piece(Part.SOLID_BLOCK, field.unpack(cell)) for cell in sorted(tree.blocks)]
    ends = reached(site, tree)
    at = [field.unpack(ends[place]) for place in site.places]
    beside = [
        next(block for block in group if block in [end.step(heading) for heading in Heading])
        for group, end in zip(line.targets, at, strict=True)
    ]
    delays = [tree.steps[ends[place]].delay for place in site.places]
    return Laid(line, (*blocks, *_parts(site, tree)), tuple(beside), tuple(delays))


def _parts(site: Site, tree: Tree) -> Iterator[Piece]:
    field = site.field
    for step in tree.steps.values():
        if step.repeater:
            heading = Heading(field.headings.index(step.cell - step.repeater))
            yield new_piece(Part.REPEATER, field.unpack(step.repeater), FACING_OF[heading])
        yield new_piece(Part.DUST, field.unpack(step.cell))
