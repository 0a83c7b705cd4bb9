"""The one place that knows both sides: plain words for the second implementation, a Plan for the model."""

from __future__ import annotations

from collections.abc import Iterable

from model.grid import Cell, Facing, Heading
from model.parts import Part
from model.pieces import Piece
from model.plan import Arm, ArmEnd, Details, Plan, Route, plan_of
from model.track.carts import Way
from model.track.layout import Layout
from model.track.shapes import Shape
from tests.oracle.carts import ArmSpec, Trip
from tests.oracle.choice import Drawn, RouteSpec
from tests.oracle.shapes import Place, Rail

WORD_OF = {shape: shape.word for shape in Shape}
PART_OF = {part.value: part for part in Part}
FACING_OF = {facing.value: facing for facing in Facing}
HEADING_OF = {heading.word: heading for heading in Heading}


def piece_of(part: str, at: Place, facing: str) -> Piece:
    """A piece of the model."""
    return Piece(PART_OF[part], Cell(*at), FACING_OF[facing])


def end_of(way: tuple[Place, str] | None) -> ArmEnd | None:
    """A way in or out, for the model."""
    return None if way is None else ArmEnd(Cell(*way[0]), HEADING_OF[way[1]])


def plan_from(pieces: Iterable[Rail], arms: Iterable[ArmSpec] = (), routes: Iterable[RouteSpec] = ()) -> Plan:
    """A plan of the model from plain words."""
    details = Details(
        arms=tuple(Arm(arm.name, end_of(arm.way_in), end_of(arm.way_out)) for arm in arms),
        routes=tuple(Route(*route) for route in routes),
    )
    return plan_of([piece_of(*piece) for piece in pieces], details)


def pieces_from(plan: Plan) -> list[Rail]:
    """The pieces of a plan in plain words, in the order of placing."""
    return [(str(piece.part), tuple(piece.at), str(piece.facing)) for piece in plan.pieces]


def drawn_from(plan: Plan) -> Drawn:
    """A whole plan in plain words."""

    def way(end: ArmEnd | None) -> tuple[Place, str] | None:
        return None if end is None else (tuple(end.at), end.heading.word)

    arms = [ArmSpec(arm.name, way(arm.enter), way(arm.leave)) for arm in plan.arms]
    routes = [RouteSpec(route.start, route.idle, route.called) for route in plan.routes]
    return Drawn(pieces_from(plan), arms, routes)


def shapes_in(layout: Layout) -> dict[Place, str]:
    """The model's shapes in plain words."""
    return {cell: WORD_OF[shape] for cell, shape in layout.shapes.items()}


def trip_from(way: Way) -> Trip:
    """The model's way of a cart in plain words."""
    path = tuple(tuple(cell) for cell in way.path)
    return Trip(path, str(way.outcome), way.arm, way.heading.word)


def drawing(pieces: Iterable[Rail]) -> str:
    """The pieces as lines to read when a comparison fails."""
    return "\n".join(f"{part} at {at} facing {facing}" for part, at, facing in pieces)
