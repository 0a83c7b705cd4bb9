"""Edits: pure functions from a plan and what is asked to a ``Change``; the plan itself stays as it is.

A newly placed piece comes last in the order of placing; a piece that is moved, turned or set anew keeps
its rank. An edit that a limit of plans forbids raises ``EditRefused`` with a message for the user.
"""

from model.edits.arms import add_arm, remove_arm, set_arm
from model.edits.become import become
from model.edits.details import set_running_side, set_sheet, set_title
from model.edits.lay_line import lay_line
from model.edits.names import name_problem
from model.edits.pieces import (
    add_blocks,
    copy_pieces,
    erase,
    move,
    paste,
    place,
    place_all,
    reorder,
    set_build_order,
    set_next,
    set_piece,
)
from model.edits.refusals import EditRefused
from model.edits.routes import remove_route, set_route, start_route_at
from model.edits.track import lay_track
from model.edits.turning import move_plan, turn_and_order, turn_pieces, turn_plan
from model.edits.waivers import set_aside, take_up

__all__ = [
    "EditRefused",
    "add_arm",
    "add_blocks",
    "become",
    "copy_pieces",
    "erase",
    "lay_line",
    "lay_track",
    "move",
    "move_plan",
    "name_problem",
    "paste",
    "place",
    "place_all",
    "remove_arm",
    "remove_route",
    "reorder",
    "set_arm",
    "set_aside",
    "set_build_order",
    "set_next",
    "set_piece",
    "set_route",
    "set_running_side",
    "set_sheet",
    "set_title",
    "start_route_at",
    "take_up",
    "turn_and_order",
    "turn_pieces",
    "turn_plan",
]
