"""What is said of a route that the shapes as built spoil, and the shapes at rest would not."""

from __future__ import annotations

from model.grid import Cell, Facing, Heading
from model.parts import Part
from model.pieces import Piece
from model.plan import Arm, ArmEnd, Details, Route, plan_of
from model.routing.junction import Junction
from model.rules import find_all

NEITHER = "It would get there if the switches lay as they rest, not as built."


def messages(goal: str) -> list[str]:
    """What is said of a cart from Mill at a switch that is built straight on and rests to the east."""
    laid = ((0, 0, "north"), (0, 1, "north"), (0, -1, "north"), (1, 0, "east"))
    rails = [Piece(Part.RAIL, Cell(x, 64, z), Facing(facing)) for x, z, facing in laid]
    arms = (
        Arm("Mill", ArmEnd(Cell(0, 64, 1), Heading.NORTH)),
        Arm("Fen", None, ArmEnd(Cell(1, 64, 0), Heading.EAST)),
        Arm("Quay", None, ArmEnd(Cell(1, 64, 0), Heading.WEST)),
    )
    plan = plan_of(rails, Details(arms=arms, routes=(Route("Mill", goal),)))
    found = find_all(Junction(plan))
    return [finding.message for finding in found if finding.rule == "route-not-reached"]


def test_a_route_that_the_resting_shape_would_serve_is_said_to_be_so() -> None:
    (told,) = messages("Fen")
    assert told.endswith(NEITHER)


def test_nothing_is_promised_where_the_resting_shape_does_not_help() -> None:
    (told,) = messages("Quay")
    assert NEITHER not in told
