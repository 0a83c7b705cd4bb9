"""Words that the messages of several rules share."""

from __future__ import annotations

from collections.abc import Iterable


def named(names: Iterable[str], at_most: int = 4) -> str:
    """``Quay``, ``Quay and Mill``, or the first few and how many more there are; each name once."""
    each = list(dict.fromkeys(names))
    if len(each) > at_most:
        each = [*each[: at_most - 1], f"{len(each) - at_most + 1:,} more"]
    *first, last = each
    return f"{', '.join(first)} and {last}" if first else last


def trip_name(start: str, end: str) -> str:
    """``Quay → Mill``."""
    return f"{start} → {end}"


def carried(waybills: int) -> str:
    """``1 waybill``, ``65 waybills``."""
    return f"{waybills:,} waybill" if waybills == 1 else f"{waybills:,} waybills"
