"""The steps, and what the picture of each shows: what is new, what it bends, what stands by then."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

import msgspec
from immutables import Map

from model.grid import Cell
from model.pieces import Piece, Pieces, Placed
from model.sheet.drawn import DrawnPiece, RailMarks
from model.sheet.footprint import Bounds, bounds_of
from model.steps import Step
from model.track.shapes import Shape


class StepPicture(msgspec.Struct, frozen=True):
    """A step, and the plan as it stands when the step is done."""

    step: Step
    new: tuple[DrawnPiece, ...]
    """What is placed, in the order of placing."""
    bent: tuple[DrawnPiece, ...]
    """The rails that stood already and now lie in another shape."""
    standing: Pieces
    """All that stands, the new pieces too."""
    shapes: Map[Cell, Shape]
    """Of all rails that stand."""

    @property
    def bounds(self) -> Bounds:
        """Around what is new and what it bends."""
        bounds = bounds_of(one.piece.at for one in (*self.new, *self.bent))
        assert bounds is not None, "a step places something"
        return bounds

    def at(self, cell: Cell) -> DrawnPiece | None:
        """What stands in a cell, as it lies now."""
        piece = self.standing.get(cell)
        return None if piece is None else _drawn(piece, self.shapes.get(cell))


def step_pictures(steps: Iterable[Step], marks: Mapping[Cell, RailMarks]) -> Iterator[StepPicture]:
    """A picture for each step, with the number and the facing mark that each new rail has on its level."""
    standing, shapes = Pieces.of(()), Map[Cell, Shape]()
    for step in steps:
        before = shapes
        first = standing.next_rank
        standing = standing.replaced((), map(Placed, range(first, first + len(step.place)), step.place))
        shapes = shapes.update(step.shapes)
        changed = (cell for cell, shape in step.shapes.items() if before.get(cell, shape) is not shape)
        yield StepPicture(
            step,
            tuple(_new(piece, step.shapes.get(piece.at), marks.get(piece.at)) for piece in step.place),
            tuple(_drawn(piece, shapes[piece.at]) for piece in map(standing.get, changed) if piece),
            standing,
            shapes,
        )


def _new(piece: Piece, shape: Shape | None, marks: RailMarks | None) -> DrawnPiece:
    if shape is None or marks is None:
        return _drawn(piece, shape)
    return DrawnPiece(piece, RailMarks(shape, number=marks.number, faces=marks.faces))


def _drawn(piece: Piece, shape: Shape | None) -> DrawnPiece:
    return DrawnPiece(piece, None if shape is None else RailMarks(shape))
