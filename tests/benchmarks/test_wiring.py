"""How many junctions are wired, in how much room, and how long lines are against the shortest there could be.

Prints a table; where the environment names a file in PLATELAYER_WIRING, the numbers go there as JSON.
"""

from __future__ import annotations

import json
import os
import time
from pathlib import Path
from statistics import median

import pytest
from msgspec import Struct

from model.files.plan_file import read_plan
from model.plan import Plan
from model.wiring.result import Wiring
from model.wiring.wire import wire
from tests.benchmarks.wiring_bounds import line_bounds
from tests.oracle.junctions_with_arms import junction_with_arms
from tests.oracle.wiring import Box, Document, faults_of_plan, faults_of_report, lines_in, pieces_in
from tests.oracle.wiring_runners import document_of, model_runner, report_of
from tests.oracle.wiring_runs import FEW_TRAINS, faults_of_runs

pytestmark = [pytest.mark.slow, pytest.mark.timeout(7200)]

EXAMPLES = Path(__file__).parents[2] / "resources" / "examples"
SEEDS = range(50)


class Row(Struct):
    """One junction."""

    name: str
    wired: bool
    seconds: float
    columns: int = 0
    depth: int = 0
    parts: int = 0
    """Pieces that the wiring added or changed."""
    lines: int = 0
    length: int = 0
    """Dust and repeaters of all lines."""
    lower: float = 0
    upper: float = 0
    """Between these lies the sum of the shortest trees."""
    faults: list[str] = []
    """What the judge found, or why it is not wired."""

    @property
    def ratio(self) -> float:
        """The length against the shortest there could be, at the worst."""
        return self.length / self.lower if self.lower else 1.0


def test_examples() -> None:
    rows = [
        measured(path.name.split(".")[0], read_plan(path)) for path in sorted(EXAMPLES.glob("*.plan.json"))
    ]
    told("examples", rows)
    assert rows
    assert all(row.wired and not row.faults for row in rows)


def test_random_junctions() -> None:
    """At least 90 of 100 are wired, none wrong, and half of them take at most 1.3 of the least length."""
    rows = [measured(f"{seed} {plan.details.title}", plan) for seed, plan in random_plans()]
    told("random", rows)
    wired = [row for row in rows if row.wired]
    assert not any(row.faults for row in wired)
    assert len(wired) >= 0.9 * len(rows)
    assert median(row.ratio for row in wired) <= 1.3
    assert all(row.ratio >= 1 for row in wired)


def random_plans() -> list[tuple[int, Plan]]:
    return [(seed, junction_with_arms(seed)) for seed in SEEDS]


def measured(name: str, plan: Plan) -> Row:
    """Wires a plan and has it judged."""
    start = time.perf_counter()
    *_, wiring = wire(plan)
    assert isinstance(wiring, Wiring)
    row = Row(name, wiring.wired, time.perf_counter() - start)
    if wiring.change is None:
        row.faults = [found.message for found in wiring.findings]
        return row
    after = wiring.change.applied(plan)
    row.columns, row.depth, row.parts = wiring.footprint_cells, wiring.depth, len(wiring.change.placed)
    old, new = pieces_in(document_of(plan)), pieces_in(document_of(after))
    lines = lines_in(old, new)
    bounds = [line_bounds(plan, after, line, lines) for line in lines]
    row.lines = len(lines)
    row.length = sum(len(line.dust) + len(line.repeaters) for line in lines)
    row.lower, row.upper = (sum(bound[end] for bound in bounds) for end in (0, 1))
    row.faults = judged(document_of(plan), document_of(after), wiring)
    return row


def judged(before: Document, after: Document, wiring: Wiring) -> list[str]:
    """What the independent judge finds."""
    return [
        *faults_of_plan(before, after, Box()),
        *faults_of_report(before, after, report_of(wiring)),
        *faults_of_runs(after, model_runner(after), FEW_TRAINS),
    ]


def told(title: str, rows: list[Row]) -> None:
    """Prints the table and keeps the numbers."""
    print(f"\n{title:28} wired  secs columns depth parts lines length bound ratio")
    for row in rows:
        room = f"{row.columns:7} {row.depth:5} {row.parts:5} {row.lines:5}"
        length = f"{row.length:6} {row.lower:5.0f} {row.ratio:5.2f}"
        said = "; ".join(row.faults)
        print(f"{row.name:28} {'yes' if row.wired else 'NO':5} {row.seconds:5.1f} {room} {length} {said}")
    wired = [row for row in rows if row.wired]
    ratio = median(row.ratio for row in wired) if wired else 0
    print(f"wired {len(wired)} of {len(rows)}, median ratio {ratio:.2f}")
    if name := os.environ.get("PLATELAYER_WIRING"):
        path = Path(name)
        kept = json.loads(path.read_text()) if path.exists() else {}
        kept[title] = [{**vars_of(row), "ratio": row.ratio} for row in rows]
        path.write_text(json.dumps(kept, indent=1))


def vars_of(row: Row) -> dict[str, object]:
    return {field: getattr(row, field) for field in row.__struct_fields__}
