"""What may stand at each place of a plan file, in words for people."""

from __future__ import annotations

import re
from typing import Final

from model.files.document import COUNT_LIMIT, FORMAT, VERSION
from model.files.limits import CELL_LIMIT, ROUTE_LIMIT, WAIVER_LIMIT
from model.grid import XZ_LIMIT, Y_HIGHEST, Y_LOWEST
from model.parts import Part
from model.plan import ARM_LIMIT, NAME_LIMIT, PIECE_LIMIT, TEXT_LIMIT

_CELL: Final = (
    f"three whole numbers [x, y, z], x and z from {-XZ_LIMIT:,} to {XZ_LIMIT:,}, "
    f"y from {Y_LOWEST:,} to {Y_HIGHEST:,}"
)
_NAME: Final = f"a name of 1 to {NAME_LIMIT} characters without control characters, comma or slash"
_TEXT: Final = f"a text of at most {TEXT_LIMIT:,} characters"
_END: Final = 'an object with "at" and "heading"'
_HEADING: Final = "north, east, south or west"

_BY_PLACE: Final[dict[str, str]] = {
    "": 'an object with "format", "version" and "pieces"',
    "format": f'"{FORMAT}"',
    "version": str(VERSION),
    "title": _TEXT,
    "running_side": "left or right",
    "pieces": f"a list of at most {PIECE_LIMIT:,} pieces",
    "pieces[]": 'an object with "part" and "at"',
    "pieces[].part": f"one of {', '.join(Part)}",
    "pieces[].at": _CELL,
    "pieces[].at[]": _CELL,
    "pieces[].facing": "north, east, south, west, up or down",
    "pieces[].delay": "2, 4, 6 or 8",
    "pieces[].mode": "compare or subtract",
    "pieces[].wooden": "true or false",
    "pieces[].holds": "a list of what the slots hold",
    "pieces[].holds[]": 'an object with "item" and "count"',
    "pieces[].holds[].item": f"waybill: and {_NAME}; or another word without control characters",
    "pieces[].holds[].count": f"a whole number from 1 to {COUNT_LIMIT:,}",
    "arms": f"a list of at most {ARM_LIMIT:,} arms",
    "arms[]": 'an object with "name" and at least one of "in" and "out"',
    "arms[].name": _NAME,
    "arms[].in": _END,
    "arms[].in.at": _CELL,
    "arms[].in.at[]": _CELL,
    "arms[].in.heading": _HEADING,
    "arms[].out": _END,
    "arms[].out.at": _CELL,
    "arms[].out.at[]": _CELL,
    "arms[].out.heading": _HEADING,
    "routes": f"a list of at most {ROUTE_LIMIT:,} routes",
    "routes[]": 'an object with "from" and "idle"',
    "routes[].from": _NAME,
    "routes[].idle": _NAME,
    "routes[].called": _NAME,
    "routes[].waybill": _NAME,
    "waivers": f"a list of at most {WAIVER_LIMIT:,} waivers",
    "waivers[]": 'an object with "rule"',
    "waivers[].rule": f"a word of 1 to {NAME_LIMIT} characters",
    "waivers[].cells": f"a list of at most {CELL_LIMIT:,} cells",
    "waivers[].cells[]": _CELL,
    "waivers[].cells[][]": _CELL,
    "waivers[].arms": f"a list of at most {ARM_LIMIT:,} names",
    "waivers[].arms[]": _NAME,
    "waivers[].reason": _TEXT,
    "sheet": "an object",
    "sheet.owner": _TEXT,
    "sheet.number": _TEXT,
    "sheet.revision": _TEXT,
    "sheet.date": _TEXT,
    "sheet.created_by": _TEXT,
    "sheet.approved_by": _TEXT,
}


def expected_at(place: str) -> str:
    """What may stand at a place such as ``pieces[3].at``."""
    return _BY_PLACE[re.sub(r"\[\d+\]", "[]", place)]
