"""What may stand at a place of a file, in words for people: what the tables of all readers share."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from model.files.document import COUNT_LIMIT
from model.grid import XZ_LIMIT, Y_HIGHEST, Y_LOWEST
from model.plan import ARM_LIMIT, NAME_LIMIT, TEXT_LIMIT
from model.wording import QT_TR_NOOP, tr

CELL: Final = QT_TR_NOOP(
    "three whole numbers [x, y, z], x and z from -{xz:,} to {xz:,}, y from {lowest:,} to {highest:,}"
)
NAME: Final = QT_TR_NOOP("a name of 1 to {name} characters without control characters, comma or slash")
TEXT: Final = QT_TR_NOOP("a text of at most {text:,} characters")
HOLDS: Final = QT_TR_NOOP("a list of what the slots hold")
HELD: Final = QT_TR_NOOP('an object with "item" and "count"')
ITEM: Final = QT_TR_NOOP(
    "waybill: and a name of 1 to {name} characters without control characters, comma or slash; "
    "or another word without control characters"
)
COUNT: Final = QT_TR_NOOP("a whole number from 1 to {count:,}")
TRUTH: Final = QT_TR_NOOP("true or false")
SIDE: Final = QT_TR_NOOP("left or right")

_LIMITS: Final[dict[str, object]] = {
    "xz": XZ_LIMIT,
    "lowest": Y_LOWEST,
    "highest": Y_HIGHEST,
    "name": NAME_LIMIT,
    "text": TEXT_LIMIT,
    "count": COUNT_LIMIT,
    "arms": ARM_LIMIT,
}


def said_at(place: str, table: Mapping[str, str], limits: Mapping[str, object]) -> str:
    """What the table says of a place such as ``pieces[3].at``; ``limits`` are what its braces stand for."""
    return tr(table[re.sub(r"\[\d+\]", "[]", place)], **{**_LIMITS, **limits})
