"""How large a plan file may be. What is over a limit is refused before memory is spent on it.

The limits on pieces, arms, names and coordinates belong to the plan itself and stand with it.
"""

from __future__ import annotations

from typing import Final

from model.files.errors import PlaceError
from model.files.opening import at_most
from model.plan import ARM_LIMIT, PIECE_LIMIT
from model.wording import tr

FILE_LIMIT: Final = 256 * 1024 * 1024
"""Bytes in a file."""
VALUE_LIMIT: Final = 24_000_000
"""Commas and opening brackets in a file; they bound the number of its values."""
UNKNOWN_LIMIT: Final = 1_000_000
"""Of these, those under keys that this version does not know."""
DEPTH_LIMIT: Final = 64
"""Lists and objects inside one another."""
ROUTE_LIMIT: Final = ARM_LIMIT
"""Wanted routes: at most one an arm."""
WAIVER_LIMIT: Final = 100_000
CELL_LIMIT: Final = PIECE_LIMIT
"""Cells that one waiver names."""


def check_size(data: bytes) -> None:
    """Refuse bytes that no plan needs, by counting alone. Raises PlaceError."""
    if len(data) > FILE_LIMIT:
        raise PlaceError("", at_most(FILE_LIMIT))
    if data.count(b'"part"') > PIECE_LIMIT:
        raise PlaceError("pieces", tr("at most {limit:,} pieces", limit=PIECE_LIMIT))
    if values_in(data) > VALUE_LIMIT:
        raise PlaceError("", at_most_values(VALUE_LIMIT))


def at_most_values(limit: int) -> str:
    """What is expected where a file says too much."""
    return tr("at most {limit:,} values", limit=limit)


def values_in(data: bytes) -> int:
    """Commas and opening brackets: a bound on the number of values in a JSON text, up to a factor of two."""
    return data.count(b",") + data.count(b"[") + data.count(b"{")
