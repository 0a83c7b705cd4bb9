"""What is to happen in which tick."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Generic, TypeVar

T = TypeVar("T")


class Wheel(Generic[T]):
    """Things by the tick in which they come up, in the order in which they were added."""

    def __init__(self) -> None:
        self._by_tick: dict[int, list[T]] = {}

    def add(self, tick: int, thing: T) -> None:
        """Puts a thing into a tick to come."""
        self._by_tick.setdefault(tick, []).append(thing)

    def pop(self, tick: int) -> list[T]:
        """Takes out what comes up in a tick."""
        return self._by_tick.pop(tick, [])

    def __iter__(self) -> Iterator[tuple[int, T]]:
        return ((tick, thing) for tick, things in self._by_tick.items() for thing in things)

    def __bool__(self) -> bool:
        return bool(self._by_tick)
