"""Comparisons of a layout with the second implementation, each with a failure that can be read."""

from __future__ import annotations

from collections.abc import Collection

from model.grid import Cell, Heading
from model.plan import Arm
from model.track.carts import exits_of
from model.track.carts import trace as model_trace
from model.track.layout import Layout
from model.track.rails import unpack
from model.track.switches import power_states, rails_in_setting
from tests.oracle.adapter import WORD_OF, drawing, pieces_from, shapes_in, trip_from
from tests.oracle.carts import ArmSpec, trace
from tests.oracle.settings import power_cycle, state
from tests.oracle.shapes import RAIL_PARTS, Place, Track


def assert_same_shapes(layout: Layout, track: Track) -> None:
    """Every rail has the shape that the second implementation gives it."""
    found = shapes_in(layout)
    assert found == track.shape, f"{drawing(pieces_from(layout.plan))}\n{found}\n{track.shape}"


def assert_same_power_states(layout: Layout, track: Track) -> None:
    """A power cycle of each rail alone shows the same two shapes, and leaves no trace."""
    for at in track.part:
        states = power_states(layout, Cell(*at))
        found = (WORD_OF[states.resting], WORD_OF[states.powered])
        wanted = power_cycle(track, at)
        assert found == wanted, f"{drawing(pieces_from(layout.plan))}\n{at}: {found}, {wanted}"
    assert_same_shapes(layout, track)


def assert_same_setting(layout: Layout, track: Track, wired: list[Place], powered: Collection[Place]) -> None:
    """The power changes of a setting, in both orders, leave every rail in the same shape."""
    for backward in (False, True):
        order = [at for at in track.part if at in wired]
        if backward:
            order.reverse()
        rails = rails_in_setting(layout, [Cell(*at) for at in order], [Cell(*at) for at in powered])
        found = {tuple(unpack(key)): WORD_OF[rails.get(key)] for key in layout.rails}
        wanted = state(track, wired, powered, backward=backward).shape
        assert found == wanted, f"{drawing(pieces_from(layout.plan))}\n{order} {powered}: {found}, {wanted}"


def assert_same_trips(layout: Layout, track: Track, arms: list[ArmSpec], model_arms: tuple[Arm, ...]) -> None:
    """A cart that enters any rail in any heading goes the same way and ends for the same reason."""
    others = {tuple(piece.at): str(piece.part) for piece in layout.plan.pieces}
    others = {at: part for at, part in others.items() if part not in RAIL_PARTS}
    exits = exits_of(model_arms)
    for at in track.part:
        for heading in Heading:
            found = trip_from(model_trace(layout.rails, layout.stoppers, exits, Cell(*at), heading))
            wanted = trace(track, others, arms, at, heading.word)
            assert found == wanted, f"{drawing(pieces_from(layout.plan))}\n{found}\n{wanted}"
