"""What differs beside the pieces: title, running side, arms, routes, waivers, title block."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Iterator
from typing import Any

import msgspec

from model.plan import Details


class Beside(msgspec.Struct, frozen=True):
    """One thing that differs."""

    what: str
    """``title``, ``running side``, ``arm``, ``route``, ``waiver`` or ``sheet``."""
    name: str
    """Of the arm, of the arm where the route begins, the rule set aside, the field of the title block;
    empty for the title and the running side."""
    before: Any
    """The value of the earlier plan; ``None`` where it has none of that name."""
    after: Any
    """The value of the later plan."""


def differences_beside(before: Details, after: Details) -> tuple[Beside, ...]:
    """All that differs; things of one name are compared in the order of the later plan, then those gone.

    Keys that this version does not know count where they stand on an arm, a route or a waiver.
    """
    return (
        *_single("title", before.title, after.title),
        *_single("running side", before.running_side, after.running_side),
        *_listed("arm", [(arm.name, arm) for arm in before.arms], [(arm.name, arm) for arm in after.arms]),
        *_listed("route", _routes(before), _routes(after)),
        *_listed("waiver", _waivers(before), _waivers(after)),
        *_fields(before, after),
    )


def _single(what: str, before: Any, after: Any) -> Iterator[Beside]:
    if before != after:
        yield Beside(what, "", before or None, after or None)


def _routes(details: Details) -> list[tuple[Hashable, Any]]:
    return [(route.start, route) for route in details.routes]


def _waivers(details: Details) -> list[tuple[Hashable, Any]]:
    """What a waiver sets aside is its name; only its reason can differ."""
    return [((waiver.rule, waiver.cells, waiver.arms), waiver) for waiver in details.waivers]


def _listed(
    what: str, before: Iterable[tuple[Hashable, Any]], after: Iterable[tuple[Hashable, Any]]
) -> Iterator[Beside]:
    old, new = dict(before), dict(after)
    for key in {**new, **old}:
        if old.get(key) != new.get(key):
            name = key[0] if isinstance(key, tuple) else key
            yield Beside(what, str(name), old.get(key), new.get(key))


def _fields(before: Details, after: Details) -> Iterator[Beside]:
    old, new = msgspec.structs.asdict(before.sheet), msgspec.structs.asdict(after.sheet)
    for field in old:
        if field != "kept" and old[field] != new[field]:
            yield Beside("sheet", field.replace("_", " "), old[field] or None, new[field] or None)
