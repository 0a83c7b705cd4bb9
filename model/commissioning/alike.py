"""Groups of things that cannot be told from one another."""

from __future__ import annotations

from collections.abc import Hashable, Mapping
from typing import TypeVar

Thing = TypeVar("Thing")


def groups_alike(responses: Mapping[Thing, Hashable]) -> tuple[tuple[Thing, ...], ...]:
    """The things put together that respond in the same way; things and groups in the order given."""
    groups: dict[Hashable, list[Thing]] = {}
    for thing, response in responses.items():
        groups.setdefault(response, []).append(thing)
    return tuple(map(tuple, groups.values()))
