"""Gathers the ratios that the benchmarks measure into one table, on the terminal and as JSON.

``bash .run/benchmarks`` runs them all. A missed goal is written in the table and fails nothing: what a shared
machine does to a ratio must not decide whether a change is good.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Final

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from tests.benchmarks.measuring import ROUNDS, Action, Row, best, table, write

ROWS: Final = pytest.StashKey[list[Row]]()
AddRow = Callable[..., Row]
Ratio = Callable[..., Row]


def pytest_addoption(parser: pytest.Parser) -> None:
    """Where the table is written as JSON."""
    parser.addoption("--ratios", type=Path, help="the file in which the measured ratios are written as JSON")


def pytest_configure(config: pytest.Config) -> None:
    """A run begins with an empty table."""
    config.stash[ROWS] = []


@pytest.fixture
def add_row(request: pytest.FixtureRequest) -> AddRow:
    """Put a ratio into the table that was found without a clock: bytes, dust, names."""

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
        fastest = best(bound, rounds)
        benchmark.pedantic(action, rounds=rounds, warmup_rounds=1)
        # Measured on both sides, so that a machine that grew busy in between does not decide.
        fastest = min(fastest, best(bound, rounds))
        row = add_row(what, against, benchmark.stats.stats.min / fastest, goal)
        benchmark.extra_info.update(row._asdict())
        return row

    return measure


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    """Print the table, and write it where that was asked for."""
    rows = config.stash[ROWS]
    if not rows:
        return
    terminalreporter.section("ratios")
    for line in table(rows):
        terminalreporter.write_line(line)
    if file := config.getoption("ratios", None):
        write(rows, file)
