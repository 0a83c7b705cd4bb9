"""How far a long work is: it is a generator that tells so, and returns what came of it."""

from __future__ import annotations

from collections.abc import Generator
from typing import TypeVar

import msgspec

Result = TypeVar("Result")


class Progress(msgspec.Struct, frozen=True):
    """What is being done, and how many of how many parts of it are done."""

    stage: str
    done: int
    of: int


def result_of(work: Generator[object, None, Result]) -> Result:
    """What comes of a work when nobody asks how far it is."""
    while True:
        try:
            next(work)
        except StopIteration as end:
            result: Result = end.value
            return result
