"""Survey: a click or a drag draws a rail in the shape in which it stands in the world."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise
from math import hypot
from typing import Final

from app.tools.events import Modifiers, PointerEvent
from app.tools.host import Ghost
from app.tools.paths import Path, extended, heading_between
from app.tools.tool import Tool
from app.translation import tr
from model.grid import Cell, Heading
from model.track.possible import possible_shapes
from model.track.shapes import Shape

NEAR_EDGE: Final = 0.3
"""How far from an edge a point still means that edge, in cells."""
DRAGGED: Final = 0.3
"""How far the pointer must go for a drag within one cell, in cells."""


@dataclass(frozen=True)
class Drawing:
    """The button is down; the drag went along this path."""

    path: Path
    grip: tuple[float, float]
    """Where the pointer went down, in cells."""
    point: tuple[float, float]
    """Where the pointer is."""
    backward: bool
    """Whether a click steps to the shape before."""

    @property
    def is_click(self) -> bool:
        """Whether the pointer has stayed where it went down."""
        way = hypot(self.point[0] - self.grip[0], self.point[1] - self.grip[1])
        return len(self.path) == 1 and way < DRAGGED


class SurveyTool(Tool):
    """Idle (state ``None``) or drawing. It changes no plan: what stands in the world is kept beside it.

    A click steps through the shapes that the rail can have. A drag draws every rail that it crosses
    from edge to edge in the shape between the two.
    """

    name = "survey"
    state: Drawing | None = None

    @property
    def is_busy(self) -> bool:
        """While the button is down."""
        return self.state is not None

    def enter(self) -> None:
        """Says what to do."""
        self.host.say(tr("Click a rail to step through its shapes, or drag across it as it stands there."))

    def leave(self) -> None:
        """What was taken down is kept."""
        super().leave()
        if self.host.surveyed:
            self.host.say(tr("The survey is kept as it is; take up Survey again to go on."))

    def press(self, event: PointerEvent) -> None:
        """Begins on a cell."""
        point = _point(event)
        self.state = Drawing((event.cell,), point, point, Modifiers.SHIFT in event.modifiers)
        self.host.clear_preview()

    def drag(self, event: PointerEvent) -> None:
        """Goes on through every cell passed. A change of level drops the drag."""
        if self.state is None:
            return
        if event.cell.y != self.state.path[0].y:
            self.interrupt()
            return
        path = extended(self.state.path, event.cell)
        self.state = replace(self.state, path=path, point=_point(event))
        drawn = {cell: shape for cell, shape in self._drawn(self.state).items() if shape is not None}
        self.host.show_ghost(Ghost(surveyed=drawn) if drawn else None)

    def release(self, event: PointerEvent) -> None:
        """Ends where the pointer is."""
        self.drag(event)
        self.complete()

    def complete(self) -> bool:
        """Takes down what was drawn, or steps the rail that was clicked."""
        state = self.state
        if state is None:
            return False
        self.cancel()
        if state.is_click:
            self._step(state.path[0], -1 if state.backward else 1)
        else:
            self._take_down(state)
        return True

    def cancel(self) -> bool:
        """Takes down nothing."""
        if self.state is None:
            return False
        self.state = None
        self.host.show_ghost(None)
        return True

    def _step(self, cell: Cell, by: int) -> None:
        present = self._present(cell)
        if present is None:
            self.host.say(tr("No rail at {cell}.", cell=cell))
            return
        shapes = possible_shapes(self.host.layout, cell)
        at = shapes.index(present) if present in shapes else -by
        self.host.survey({cell: shapes[(at + by) % len(shapes)]})

    def _take_down(self, state: Drawing) -> None:
        drawn = self._drawn(state)
        shapes = {cell: shape for cell, shape in drawn.items() if shape is not None}
        refused = [cell for cell, shape in drawn.items() if shape is None]
        if shapes:
            self.host.survey(shapes)
        if refused:
            self.host.say(tr("No order of placing makes the rail at {cell} lie like that.", cell=refused[0]))
        elif not drawn:
            self.host.say(tr("Drag across a rail, from the middle of one edge to another."))

    def _drawn(self, state: Drawing) -> dict[Cell, Shape | None]:
        """The rails that the drag crosses from edge to edge; ``None`` where no shape lies so."""
        return {
            cell: self._between(cell, enter, leave)
            for cell, enter, leave in _crossed(state)
            if self._present(cell) is not None
        }

    def _between(self, cell: Cell, enter: Heading, leave: Heading) -> Shape | None:
        """The shape between two edges: rather the present one, rather a slope than a flat one."""
        ends = {enter, leave}
        shapes = [shape for shape in possible_shapes(self.host.layout, cell) if shape.headings == ends]
        present = self._present(cell)
        return present if present in shapes else shapes[-1] if shapes else None

    def _present(self, cell: Cell) -> Shape | None:
        """As surveyed, else as drawn; ``None`` where no rail stands."""
        shape = self.host.layout.shape(cell)
        return None if shape is None else self.host.surveyed.get(cell, shape)


def _crossed(state: Drawing) -> Iterator[tuple[Cell, Heading, Heading]]:
    """The cells that the path crosses, each with the two edges; those that it only touches left out."""
    between = [heading_between(a, b) for a, b in pairwise(state.path)]
    enters = [_edge_at(state.grip), *(None if heading is None else heading.opposite for heading in between)]
    leaves = [*between, _edge_at(state.point)]
    for cell, enter, leave in zip(state.path, enters, leaves, strict=True):
        if enter is not None and leave is not None and enter is not leave:
            yield cell, enter, leave


def _edge_at(point: tuple[float, float]) -> Heading | None:
    """The edge that a point is near; ``None`` in the middle of a cell."""
    x, z = point[0] % 1, point[1] % 1
    far = {Heading.NORTH: z, Heading.EAST: 1 - x, Heading.SOUTH: 1 - z, Heading.WEST: x}
    nearest = min(far, key=far.__getitem__)
    return nearest if far[nearest] < NEAR_EDGE else None


def _point(event: PointerEvent) -> tuple[float, float]:
    return event.cell.x + event.fraction[0], event.cell.z + event.fraction[1]
