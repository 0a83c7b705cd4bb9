"""From a plan to bytes: one plan, one byte string; one piece a line, so that a diff shows one piece a line.

A key is left out where its value is what the reader takes for it anyway. Written all the same: the facing
of a part for which it means something, a repeater's delay, a comparator's mode.
"""

from __future__ import annotations

from typing import Any, Final

import msgspec
from msgspec import Struct

from model.files.document import FORMAT, VERSION
from model.files.members import document_bytes, object_of, one_a_line
from model.grid import Cell, Facing
from model.parts import FACED, TRAITS, Part
from model.pauses import with_pauses
from model.pieces import Held, Piece
from model.plan import Arm, ArmEnd, Plan, Route, SheetData, Waiver

_MORE_THAN_FACING: Final = frozenset({Part.REPEATER, Part.COMPARATOR, Part.BUTTON}) | frozenset(
    part for part in Part if TRAITS[part].slots
)
"""Parts that have keys of their own."""
_NORTH: Final = Facing.NORTH  # looking up a member of an enumeration costs as much as a whole line
_ENCODER: Final = msgspec.json.Encoder()


class _FacingNorth(Struct, gc=False):
    """A piece that says that it faces north: a struct costs a fraction of a dictionary."""

    part: Part
    at: Cell
    facing: Facing = Facing.NORTH


def plan_bytes(plan: Plan) -> bytes:
    """The bytes of a plan's file: UTF-8 JSON, the same for equal plans."""
    details = plan.details
    members: dict[str, bytes] = {
        "format": _ENCODER.encode(FORMAT),
        "version": _ENCODER.encode(VERSION),
        "title": _ENCODER.encode(details.title),
        "running_side": _ENCODER.encode(details.running_side) if details.running_side else b"",
        "pieces": one_a_line([piece_value(placed.piece) for placed in with_pauses(plan.pieces.in_order())])
        or b"[]",
        "arms": one_a_line([_arm(each) for each in details.arms]),
        "routes": one_a_line([_route(each) for each in details.routes]),
        "waivers": one_a_line([_waiver(each) for each in details.waivers]),
        "sheet": _ENCODER.encode(_sheet(details.sheet)) if details.sheet != SheetData() else b"",
    }
    return document_bytes(members, details.kept)


def piece_value(piece: Piece) -> Piece | _FacingNorth | dict[str, Any]:
    """What stands for a piece in a file, to be encoded as JSON."""
    if piece.kept or piece.part in _MORE_THAN_FACING:
        return _piece_with_more(piece)
    if piece.facing is _NORTH and piece.part in FACED:
        return _FacingNorth(piece.part, piece.at)
    return piece


def _piece_with_more(piece: Piece) -> dict[str, Any]:
    faced = piece.part in FACED or piece.facing is not _NORTH
    members = {
        "part": piece.part,
        "at": piece.at,
        "facing": piece.facing if faced else None,
        "delay": piece.delay if piece.part is Part.REPEATER else None,
        "mode": piece.mode if piece.part is Part.COMPARATOR else None,
        "wooden": piece.wooden or None,
        "holds": [_held(held) for held in piece.holds] or None,
    }
    return object_of(members, piece.kept)


def _held(held: Held) -> dict[str, Any]:
    return object_of({"item": held.item, "count": held.count}, held.kept)


def _arm(arm: Arm) -> dict[str, Any]:
    return object_of({"name": arm.name, "in": _end(arm.enter), "out": _end(arm.leave)}, arm.kept)


def _end(end: ArmEnd | None) -> dict[str, Any] | None:
    return None if end is None else object_of({"at": end.at, "heading": end.heading.word}, end.kept)


def _route(route: Route) -> dict[str, Any]:
    members = {"from": route.start, "idle": route.idle, "called": route.called, "waybill": route.waybill}
    return object_of(members, route.kept)


def _waiver(waiver: Waiver) -> dict[str, Any]:
    members = {"rule": waiver.rule, "cells": waiver.cells, "arms": waiver.arms, "reason": waiver.reason}
    return object_of(members, waiver.kept)


def _sheet(sheet: SheetData) -> dict[str, Any]:
    members = msgspec.structs.asdict(sheet)
    return object_of({key: members[key] for key in members if key != "kept"}, sheet.kept)
