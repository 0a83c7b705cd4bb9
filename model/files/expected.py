"""What may stand at each place of a plan file, in words for people."""

from __future__ import annotations

from typing import Final

from model.files.document import FORMAT, VERSION
from model.files.limits import CELL_LIMIT, ROUTE_LIMIT, WAIVER_LIMIT
from model.files.places import CELL, COUNT, HELD, HOLDS, ITEM, NAME, SIDE, TEXT, TRUTH, said_at
from model.parts import Part
from model.plan import PIECE_LIMIT
from model.wording import QT_TR_NOOP

_END: Final = QT_TR_NOOP('an object with "at" and "heading"')
_HEADING: Final = QT_TR_NOOP("north, east, south or west")

_BY_PLACE: Final[dict[str, str]] = {
    "": QT_TR_NOOP('an object with "format", "version" and "pieces"'),
    "format": f'"{FORMAT}"',
    "version": str(VERSION),
    "title": TEXT,
    "running_side": SIDE,
    "pieces": QT_TR_NOOP("a list of at most {pieces:,} pieces"),
    "pieces[]": QT_TR_NOOP('an object with "part" and "at"'),
    "pieces[].part": QT_TR_NOOP("one of {parts}"),
    "pieces[].at": CELL,
    "pieces[].at[]": CELL,
    "pieces[].facing": QT_TR_NOOP("north, east, south, west, up or down"),
    "pieces[].delay": QT_TR_NOOP("2, 4, 6 or 8"),
    "pieces[].mode": QT_TR_NOOP("compare or subtract"),
    "pieces[].wooden": TRUTH,
    "pieces[].holds": HOLDS,
    "pieces[].holds[]": HELD,
    "pieces[].holds[].item": ITEM,
    "pieces[].holds[].count": COUNT,
    "arms": QT_TR_NOOP("a list of at most {arms:,} arms"),
    "arms[]": QT_TR_NOOP('an object with "name" and at least one of "in" and "out"'),
    "arms[].name": NAME,
    "arms[].in": _END,
    "arms[].in.at": CELL,
    "arms[].in.at[]": CELL,
    "arms[].in.heading": _HEADING,
    "arms[].out": _END,
    "arms[].out.at": CELL,
    "arms[].out.at[]": CELL,
    "arms[].out.heading": _HEADING,
    "routes": QT_TR_NOOP("a list of at most {routes:,} routes"),
    "routes[]": QT_TR_NOOP('an object with "from" and "idle"'),
    "routes[].from": NAME,
    "routes[].idle": NAME,
    "routes[].called": NAME,
    "routes[].waybill": NAME,
    "waivers": QT_TR_NOOP("a list of at most {waivers:,} waivers"),
    "waivers[]": QT_TR_NOOP('an object with "rule"'),
    "waivers[].rule": QT_TR_NOOP("a word of 1 to {name} characters"),
    "waivers[].cells": QT_TR_NOOP("a list of at most {cells:,} cells"),
    "waivers[].cells[]": CELL,
    "waivers[].cells[][]": CELL,
    "waivers[].arms": QT_TR_NOOP("a list of at most {arms:,} names"),
    "waivers[].arms[]": NAME,
    "waivers[].reason": TEXT,
    "sheet": QT_TR_NOOP("an object"),
    "sheet.owner": TEXT,
    "sheet.number": TEXT,
    "sheet.revision": TEXT,
    "sheet.date": TEXT,
    "sheet.created_by": TEXT,
    "sheet.approved_by": TEXT,
}
_LIMITS: Final[dict[str, object]] = {
    "parts": ", ".join(Part),
    "pieces": PIECE_LIMIT,
    "routes": ROUTE_LIMIT,
    "waivers": WAIVER_LIMIT,
    "cells": CELL_LIMIT,
}


def expected_at(place: str) -> str:
    """What may stand at a place such as ``pieces[3].at``."""
    return said_at(place, _BY_PLACE, _LIMITS)
