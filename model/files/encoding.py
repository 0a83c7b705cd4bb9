"""From a plan to bytes: one plan, one byte string; one piece a line, so that a diff shows one piece a line.

A key is left out where its value is what the reader takes for it anyway. Written all the same: the facing
of a part for which it means something, a repeater's delay, a comparator's mode.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any, Final

import msgspec
from msgspec import UNSET, Raw, Struct, UnsetType

from model.files.document import FORMAT, VERSION
from model.grid import Cell, Facing
from model.parts import FACED, TRAITS, Part
from model.pieces import Held, Piece
from model.plan import Arm, ArmEnd, Kept, Plan, Route, SheetData, Waiver

_MORE_THAN_FACING: Final = frozenset({Part.REPEATER, Part.COMPARATOR, Part.BUTTON}) | frozenset(
    part for part in Part if TRAITS[part].slots
)
"""Parts that have keys of their own."""
_NORTH: Final = Facing.NORTH  # looking up a member of an enumeration costs as much as a whole line
_ENCODER: Final = msgspec.json.Encoder()


class _UsualPiece(Struct, gc=False):
    """A piece with nothing special about it: a struct costs a fraction of a dictionary."""

    part: Part
    at: Cell
    facing: Facing | UnsetType = UNSET


def plan_bytes(plan: Plan) -> bytes:
    """The bytes of a plan's file: UTF-8 JSON, the same for equal plans."""
    details = plan.details
    members: dict[str, bytes] = {
        "format": _ENCODER.encode(FORMAT),
        "version": _ENCODER.encode(VERSION),
        "title": _ENCODER.encode(details.title),
        "running_side": _ENCODER.encode(details.running_side) if details.running_side else b"",
        "pieces": _lines(map(piece_value, plan.pieces)) or b"[]",
        "arms": _lines(map(_arm, details.arms)),
        "routes": _lines(map(_route, details.routes)),
        "waivers": _lines(map(_waiver, details.waivers)),
        "sheet": _ENCODER.encode(_sheet(details.sheet)) if details.sheet != SheetData() else b"",
    }
    members |= {key: text.encode() for key, text in details.kept}
    lines = (_ENCODER.encode(key) + b": " + text for key, text in members.items() if text)
    return b"{\n  " + b",\n  ".join(lines) + b"\n}\n"


def _lines(values: Iterable[Any]) -> bytes:
    """A list with one value a line; nothing for an empty one. No JSON has a raw line break in a value."""
    lines = _ENCODER.encode_lines(list(values)).rstrip(b"\n")
    return b"[\n    " + lines.replace(b"\n", b",\n    ") + b"\n  ]" if lines else b""


def piece_value(piece: Piece) -> _UsualPiece | dict[str, Any]:
    """What stands for a piece in a file, to be encoded as JSON."""
    if piece.kept or piece.part in _MORE_THAN_FACING:
        return _piece_with_more(piece)
    if piece.part in FACED or piece.facing is not _NORTH:
        return _UsualPiece(piece.part, piece.at, piece.facing)
    return _UsualPiece(piece.part, piece.at)


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
    return _object(members, piece.kept)


def _held(held: Held) -> dict[str, Any]:
    return _object({"item": held.item, "count": held.count}, held.kept)


def _arm(arm: Arm) -> dict[str, Any]:
    return _object({"name": arm.name, "in": _end(arm.enter), "out": _end(arm.leave)}, arm.kept)


def _end(end: ArmEnd | None) -> dict[str, Any] | None:
    return None if end is None else _object({"at": end.at, "heading": end.heading.word}, end.kept)


def _route(route: Route) -> dict[str, Any]:
    members = {"from": route.start, "idle": route.idle, "called": route.called, "waybill": route.waybill}
    return _object(members, route.kept)


def _waiver(waiver: Waiver) -> dict[str, Any]:
    members = {"rule": waiver.rule, "cells": waiver.cells, "arms": waiver.arms, "reason": waiver.reason}
    return _object(members, waiver.kept)


def _sheet(sheet: SheetData) -> dict[str, Any]:
    members = msgspec.structs.asdict(sheet)
    return _object({key: members[key] for key in members if key != "kept"}, sheet.kept)


def _object(members: Mapping[str, Any], kept: Kept) -> dict[str, Any]:
    """The members that are there, then the unknown keys as they were."""
    known = {key: value for key, value in members.items() if value is not None}
    return known | {key: Raw(text.encode()) for key, text in kept}
