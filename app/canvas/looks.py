"""What each piece looks like now: its shape, its links, and the state of switches in what is previewed."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Final, NamedTuple

from app.canvas.preview import NO_PREVIEW, Preview, Run, headings_of
from app.canvas.symbols import Look, look_of
from app.canvas.symbols.rails import free_side
from model.grid import Cell, Heading
from model.parts import RAILS, Part
from model.pauses import with_pauses
from model.pieces import Piece
from model.routing.junction import Junction
from model.signals.dust import links
from model.track.layout import Layout
from model.track.shapes import Shape
from model.track.switches import power_states, three_way


@dataclass(frozen=True)
class SwitchMark:
    """What the control table says of a switch, as far as the plan view shows it."""

    name: str
    inverter: bool


class Marks(NamedTuple):
    """All that the plan view shows of a junction."""

    switches: dict[Cell, SwitchMark]
    run_throughs: dict[Cell, tuple[Shape, ...]]
    name_sides: dict[Cell, Heading]
    """The switches that carry a name, with the side on which their drive stands."""


NO_MARKS: Final = Marks({}, {}, {})


def marks_of(junction: Junction) -> Marks:
    """What the control table says of the plan, as far as the plan view shows it."""
    return Marks(switch_marks(junction), run_throughs(junction), name_sides(junction))


def switch_marks(junction: Junction) -> dict[Cell, SwitchMark]:
    """The names of all switches, and which need an inverter."""
    switches = with_pauses(junction.switches)
    return {switch.at: SwitchMark(switch.name, switch.inverter) for switch in switches}


def name_sides(junction: Junction) -> dict[Cell, Heading]:
    """The side on which the drive of each switch stands; its name is beside it."""
    switches = with_pauses(junction.switches)
    return {switch.at: free_side(switch.resting, switch.powered) for switch in switches}


def run_throughs(junction: Junction) -> dict[Cell, tuple[Shape, ...]]:
    """The curves that wanted routes run straight through, and along which line."""
    found: dict[Cell, tuple[Shape, ...]] = {}
    for route, way in junction.ways.items():
        arm = junction.plan.details.arm(route.start)
        assert arm is not None
        assert arm.enter is not None
        powered = junction.choice.setting((route.start,) if route.called else ())
        shapes = junction.shapes(powered)
        for cell, enter, leave in headings_of(Run(way, arm.enter.heading, route.called, route.start)):
            shape = shapes.get(cell)
            if enter is leave and shape is not None and shape.is_curve:
                line = Shape.NORTH_SOUTH if enter.lies_north_south else Shape.EAST_WEST
                found[cell] = tuple(sorted({*found.get(cell, ()), line}))
    return found


@dataclass
class Looks:
    """Gives the look of a piece from the layout, the marks of the switches and the preview."""

    layout: Layout
    marks: Mapping[Cell, SwitchMark]
    run_through: Mapping[Cell, tuple[Shape, ...]]
    preview: Preview = NO_PREVIEW
    shape_now: Callable[[Cell], Shape | None] | None = None
    """How rails lie in the dry run; ``None`` while none is on."""

    def look(self, piece: Piece) -> Look:
        """The look of a piece of the plan."""
        if piece.part is Part.DUST:
            return replace(look_of(piece), links=links(self.layout.plan.pieces, piece.at))
        if piece.part not in RAILS:
            return look_of(piece)
        shape = self._shape(piece.at)
        if piece.part is not Part.RAIL or not three_way(self.layout, piece.at):
            run_through = self.run_through.get(piece.at, ())
            return Look(piece.part, piece.facing, shape, run_through=run_through)
        return self._switch(piece, shape)

    def bare(self, piece: Piece) -> Look:
        """The look of a piece of a neighbour level: rails in their shape, no marks."""
        if piece.part is Part.DUST:
            return replace(look_of(piece), links=links(self.layout.plan.pieces, piece.at))
        if piece.part not in RAILS:
            return look_of(piece)
        shape = self._shape(piece.at) if self.shape_now is None else self.shape_now(piece.at)
        return Look(piece.part, shape=shape)

    def _shape(self, cell: Cell) -> Shape | None:
        shown = self.preview.shapes.get(cell) if self.preview.shapes is not None else None
        return self.layout.shape(cell) if shown is None else shown

    def _switch(self, piece: Piece, shape: Shape | None) -> Look:
        cell = piece.at
        states = power_states(self.layout, cell)
        run_through = self.run_through.get(cell, ())
        if not states.is_switch:
            return Look(piece.part, piece.facing, shape, run_through=run_through)
        mark = self.marks.get(cell)
        return Look(
            piece.part,
            piece.facing,
            shape,
            other_shape=states.resting if shape == states.powered else states.powered,
            powered=cell in self.preview.powered,
            inverter=mark is not None and mark.inverter,
            name=mark.name if mark is not None else None,
            run_through=run_through,
        )
