"""How each piece of a plan is drawn on the sheet: shapes, switches, numbers, facing marks."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping

import msgspec

from model.grid import VECTORS, Cell, Heading
from model.pieces import Piece
from model.plan import Plan
from model.routing.junction import Junction, Switch
from model.steps.bound import order_numbers
from model.steps.facing import facing_marks
from model.track.carts import Way
from model.track.shapes import Shape


class RailMarks(msgspec.Struct, frozen=True):
    """How a rail is drawn."""

    shape: Shape
    """At rest where the rail is drawn as a switch, else as built."""
    powered: Shape | None = None
    """The other shape, for a rail that is drawn as a switch."""
    name: str | None = None
    """Of the switch, also of one that is not wired."""
    inverter: bool = False
    number: int | None = None
    """In the order of placing; only where it matters."""
    faces: bool = False
    """Whether it must be placed facing as the plan has it."""
    run_through: frozenset[Heading] = frozenset()
    """The axes along which wanted routes run straight across the curve, as north or east."""

    @property
    def is_switch(self) -> bool:
        """Whether it is drawn as a switch, with its drive."""
        return self.powered is not None


class DrawnPiece(msgspec.Struct, frozen=True):
    """A piece, and for a rail how it is drawn."""

    piece: Piece
    rail: RailMarks | None = None


def drawn_pieces(plan: Plan, marks: Mapping[Cell, RailMarks]) -> tuple[DrawnPiece, ...]:
    """All pieces in the order of placing, the rails with their marks."""
    return tuple(DrawnPiece(piece, marks.get(piece.at)) for piece in plan.pieces)


def rail_marks(junction: Junction, laid: Collection[Piece]) -> dict[Cell, RailMarks]:
    """How each rail of the finished plan is drawn; ``laid`` are the pieces in the order of the steps."""
    plan = junction.plan
    switches = {switch.at: switch for switch in junction.switches}
    numbers = order_numbers(plan, laid)
    faces = facing_marks(plan, laid, numbers.keys())
    through = run_throughs(junction)
    marks: dict[Cell, RailMarks] = {}
    for cell, shape in junction.layout.shapes.items():
        switch = switches.get(cell)
        drive = switch if switch is not None and has_drive(junction, switch) else None
        marks[cell] = RailMarks(
            shape if drive is None else drive.resting,
            None if drive is None else drive.powered,
            None if switch is None else switch.name,
            switch is not None and switch.inverter,
            numbers.get(cell),
            cell in faces,
            through.get(cell, frozenset()),
        )
    return marks


def has_drive(junction: Junction, switch: Switch) -> bool:
    """Whether a switch gets a line: it is wired, or nothing is wanted yet that would say which are.

    One that is left without stays as built, and is drawn so.
    """
    return switch.at in junction.choice.wired or not junction.wanted


def run_throughs(junction: Junction) -> dict[Cell, frozenset[Heading]]:
    """Where wanted routes run straight across a curve, and along which axis, as north or east."""
    found: dict[Cell, set[Heading]] = {}
    for route, way in junction.ways.items():
        arm = junction.plan.details.arm(route.start)
        assert arm is not None
        assert arm.enter is not None
        shapes = junction.shapes(junction.settings[route.start if route.called else None])
        for cell, before, after in _headings(way, arm.enter.heading):
            shape = shapes.get(cell)
            if before is after and shape is not None and shape.is_curve:
                axis = Heading.NORTH if before.lies_north_south else Heading.EAST
                found.setdefault(cell, set()).add(axis)
    return {cell: frozenset(axes) for cell, axes in found.items()}


def _headings(way: Way, heading: Heading) -> Iterator[tuple[Cell, Heading, Heading]]:
    """Each cell of a way with the heading into it and out of it."""
    for cell, beyond in zip(way.path, (*way.path[1:], None), strict=True):
        after = way.heading if beyond is None else _heading(cell, beyond)
        yield cell, heading, after
        heading = after


def _heading(cell: Cell, beyond: Cell) -> Heading:
    return Heading(VECTORS.index((beyond.x - cell.x, beyond.z - cell.z)))
