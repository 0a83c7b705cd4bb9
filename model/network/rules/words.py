"""Words that the messages of several rules share."""

from __future__ import annotations

from collections.abc import Iterable

from model.wording import tr


def named(names: Iterable[str], at_most: int = 4) -> str:
    """``Quay``, ``Quay and Mill``, or the first few and how many more there are; each name once."""
    each = list(dict.fromkeys(names))
    if len(each) > at_most:
        each = [*each[: at_most - 1], tr("{count:,} more", count=len(each) - at_most + 1)]
    *first, last = each
    return tr("{first} and {last}", first=", ".join(first), last=last) if first else last


def trip_name(start: str, end: str) -> str:
    """``Quay → Mill``."""
    return f"{start} → {end}"


def carried(waybills: int) -> str:
    """``1 waybill``, ``65 waybills``."""
    return (
        tr("{waybills:,} waybill", waybills=waybills)
        if waybills == 1
        else tr("{waybills:,} waybills", waybills=waybills)
    )
