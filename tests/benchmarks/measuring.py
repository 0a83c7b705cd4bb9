"""What a benchmark measures: ratios, each of two things done in one run, and never seconds alone.

A machine is fast or slow, busy or idle; what a thing costs beside another one that is done in the same run
says the same everywhere.
"""

from __future__ import annotations

import gc
import os
import platform
import resource
import time
from collections.abc import Callable, Iterable, Mapping
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, Final

import msgspec

Action = Callable[[], Any]
ROUNDS: Final = 3


class Row(msgspec.Struct, frozen=True):
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


class Measured(msgspec.Struct, frozen=True):
    """A table that was written, with when and on what it was measured."""

    date: str
    machine: str
    rows: list[Row]


def processor_seconds() -> float:
    """What the processor has spent on this process, its threads, and the processes that it waited for.

    Of a machine that others use, too, this says more than a clock: while they run it stands still.
    """
    waited_for = resource.getrusage(resource.RUSAGE_CHILDREN)
    return time.process_time() + waited_for.ru_utime + waited_for.ru_stime


def best(action: Action, rounds: int = ROUNDS) -> float:
    """Seconds of the fastest of several runs: others on the machine only ever make a run slower."""
    return min(seconds(action) for _ in range(rounds))


def seconds(action: Action) -> float:
    """Seconds of one run, garbage of earlier ones collected before."""
    gc.collect()
    start = processor_seconds()
    action()
    return processor_seconds() - start


def table(rows: Iterable[Row], before: Iterable[Row] = ()) -> list[str]:
    """The rows as aligned lines, the first one the heading, with the change since an earlier table."""
    earlier = {(row.what, row.against): row.ratio for row in before}
    cells = [("what", "against", "ratio", "change", "goal", ""), *(_cells(row, earlier) for row in rows)]
    widths = [max(map(len, column)) for column in zip(*cells, strict=True)]
    return ["  ".join(map(str.ljust, line, widths)).rstrip() for line in cells]


def _cells(row: Row, earlier: Mapping[tuple[str, str], float]) -> tuple[str, ...]:
    before = earlier.get((row.what, row.against))
    change = f"{row.ratio / before - 1:+.0%}" if before else ""
    sign = "≥" if row.at_least else "≤"
    goal = "" if row.goal is None else f"{sign} {row.goal:g}"
    ratio = f"{row.ratio:,.0f}" if row.ratio >= 100 else f"{row.ratio:.3g}"
    return row.what, row.against, ratio, change, goal, row.verdict


def read(file: Path) -> list[Row]:
    """The rows of a table that was written; none where there is no such file."""
    return msgspec.json.decode(file.read_bytes(), type=Measured).rows if file.exists() else []


def write(rows: Iterable[Row], file: Path) -> None:
    """The rows as JSON, an object each, under the date and the size of this machine."""
    memory = os.sysconf("SC_PAGE_SIZE") * os.sysconf("SC_PHYS_PAGES") / 2**30
    machine = f"{os.cpu_count()} processors, {memory:.0f} GiB, Python {platform.python_version()}"
    objects = [{**msgspec.structs.asdict(row), "verdict": row.verdict} for row in rows]
    data = {"date": datetime.now(UTC).date().isoformat(), "machine": machine, "rows": objects}
    file.write_bytes(msgspec.json.format(msgspec.json.encode(data)) + b"\n")
