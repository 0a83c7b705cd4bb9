"""What a benchmark measures: ratios, each of two things done in one run, and never seconds alone.

A machine is fast or slow, busy or idle; what a thing costs beside another one that is done in the same run
says the same everywhere.
"""

from __future__ import annotations

import gc
import time
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any, Final, NamedTuple

import msgspec

Action = Callable[[], Any]
ROUNDS: Final = 5


class Row(NamedTuple):
    """One line of the table."""

    what: str
    against: str
    """What the ratio is to."""
    ratio: float
    goal: float | None = None
    """The largest ratio that is good enough; ``None`` where the bound itself is the news."""
    at_least: bool = False
    """Whether the goal is the smallest good ratio instead."""

    @property
    def verdict(self) -> str:
        """``met``, ``missed``, or nothing where there is no goal."""
        if self.goal is None:
            return ""
        good = self.ratio >= self.goal if self.at_least else self.ratio <= self.goal
        return "met" if good else "missed"


def best(action: Action, rounds: int = ROUNDS) -> float:
    """Seconds of the fastest of several runs: others on the machine only ever make a run slower."""
    return min(seconds(action) for _ in range(rounds))


def seconds(action: Action) -> float:
    """Seconds of one run, garbage of earlier ones collected before."""
    gc.collect()
    start = time.perf_counter()
    action()
    return time.perf_counter() - start


def table(rows: Iterable[Row]) -> list[str]:
    """The rows as aligned lines, the first one the heading."""
    cells = [("what", "against", "ratio", "goal", ""), *map(_cells, rows)]
    widths = [max(map(len, column)) for column in zip(*cells, strict=True)]
    return ["  ".join(map(str.ljust, line, widths)).rstrip() for line in cells]


def _cells(row: Row) -> tuple[str, str, str, str, str]:
    sign = "≥" if row.at_least else "≤"
    goal = "" if row.goal is None else f"{sign} {row.goal:g}"
    return row.what, row.against, f"{row.ratio:.3g}", goal, row.verdict


def write(rows: Iterable[Row], file: Path) -> None:
    """The rows as JSON, an object each."""
    data = [{**row._asdict(), "verdict": row.verdict} for row in rows]
    file.write_bytes(msgspec.json.format(msgspec.json.encode(data)))
