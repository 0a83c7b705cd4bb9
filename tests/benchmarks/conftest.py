"""Gathers the ratios that the benchmarks measure into one table, on the terminal and as JSON.

``bash .run/benchmarks`` runs them all. A missed goal is written in the table and fails nothing: what a shared
machine does to a ratio must not decide whether a change is good.
"""

from __future__ import annotations

import gc
from collections.abc import Callable
from pathlib import Path
from typing import Final

import msgspec
import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from tests.benchmarks.measuring import ROUNDS, Action, Row, processor_seconds, read, seconds, table, write

LATEST: Final = Path(__file__).with_name("latest.json")
"""The table that a run is compared with."""
SECONDS_A_TEST: Final = 3_600
ROWS: Final = pytest.StashKey[list[Row]]()
AddRow = Callable[..., Row]
Ratio = Callable[..., Row]


def pytest_addoption(parser: pytest.Parser) -> None:
    """Where the table is written as JSON."""
    parser.addoption("--ratios", type=Path, help="the file in which the measured ratios are written as JSON")


def pytest_configure(config: pytest.Config) -> None:
    """A run begins with an empty table."""
    config.stash[ROWS] = []


def pytest_itemcollected(item: pytest.Item) -> None:
    """The plugin that times goes by the same clock as everything here, and a busy machine gets its time."""
    item.add_marker(pytest.mark.benchmark(timer=processor_seconds))
    item.add_marker(pytest.mark.timeout(SECONDS_A_TEST))


@pytest.fixture
def add_row(request: pytest.FixtureRequest) -> AddRow:
    """Put a ratio into the table that no clock finds, or not in one go: bytes, dust, names."""

    def add(*fields: object, **named: object) -> Row:
        row = Row(*fields, **named)  # type: ignore[arg-type]
        request.config.stash[ROWS].append(row)
        return row

    return add


@pytest.fixture
def ratio(benchmark: BenchmarkFixture, add_row: AddRow) -> Ratio:
    """Time one thing beside another, and put the ratio of the fastest runs into the table. Once a test."""

    def measure(
        what: str,
        action: Action,
        *,
        against: str,
        bound: Action,
        goal: float | None = None,
        rounds: int = ROUNDS,
    ) -> Row:
        bounds: list[float] = []

        def before_each() -> None:
            # In turn, so that a machine that grows busy in between does not decide.
            bounds.append(seconds(bound))
            gc.collect()

        benchmark.pedantic(action, setup=before_each, rounds=rounds)
        row = add_row(what, against, benchmark.stats.stats.min / min(bounds), goal)
        benchmark.extra_info.update(msgspec.structs.asdict(row))
        return row

    return measure


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    """Print the table beside the latest that was kept, and write it where that was asked for."""
    rows = config.stash[ROWS]
    if not rows:
        return
    terminalreporter.section("ratios")
    for line in table(rows, read(LATEST)):
        terminalreporter.write_line(line)
    if file := config.getoption("ratios", None):
        write(rows, file)
