"""How far a long work has got."""

from __future__ import annotations

import msgspec


class Progress(msgspec.Struct, frozen=True):
    """What is being done, and how many of how many parts of it are done."""

    stage: str
    done: int
    of: int
