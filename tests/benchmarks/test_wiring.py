"""How many junctions are wired, in what room, and how long lines are against the shortest there could be."""

from __future__ import annotations

from pathlib import Path
from statistics import median
from typing import Final

import pytest
from msgspec import Struct

from model.files.plan_file import read_plan
from model.plan import Plan
from model.wiring.proof.proof import prove
from model.wiring.result import Wiring
from model.wiring.wire import wire
from tests.benchmarks.conftest import AddRow, Ratio
from tests.benchmarks.wiring_bounds import line_bounds
from tests.oracle.junctions_with_arms import junction_with_arms
from tests.oracle.wiring import Box, Document, faults_of_plan, faults_of_report, lines_in, pieces_in
from tests.oracle.wiring_runners import document_of, model_runner, report_of
from tests.oracle.wiring_runs import FEW_TRAINS, faults_of_runs

pytestmark = pytest.mark.slow

EXAMPLES: Final = Path(__file__).parents[2] / "resources" / "examples"
JUNCTIONS: Final = 25
BOUND: Final = "the shortest lines that there could be"


class Laid(Struct):
    """The wiring of one junction."""

    length: int
    """Dust and repeaters of all lines."""
    least: float
    """No more than the sum of the shortest trees."""
    columns: int
    """Columns with pieces."""
    columns_before: int

    @property
    def ratio(self) -> float:
        """The length against the shortest there could be, at the worst."""
        return self.length / self.least if self.least else 1.0


def test_examples(add_row: AddRow) -> None:
    plans = [read_plan(path) for path in sorted(EXAMPLES.glob("*.plan.json"))]
    laid = [each for each in map(laid_in, plans) if each is not None]
    assert len(laid) == len(plans) > 0
    length, least = sum(each.length for each in laid), sum(each.least for each in laid)
    add_row("dust and repeaters of the examples, wired", BOUND, length / least, 1.3)
    columns = sum(each.columns for each in laid) / sum(each.columns_before for each in laid)
    add_row("columns that the examples take, wired", "the same, not wired", columns)


def test_random_junctions(add_row: AddRow) -> None:
    laid = [laid_in(junction_with_arms(seed)) for seed in range(JUNCTIONS)]
    wired = [each for each in laid if each is not None]
    assert all(each.ratio >= 1 for each in wired)
    add_row(
        f"share of {JUNCTIONS} junctions that is wired", "all", len(wired) / len(laid), 0.9, at_least=True
    )
    add_row("dust and repeaters of these, median", BOUND, median(each.ratio for each in wired), 1.3)


def laid_in(plan: Plan) -> Laid | None:
    """Wires a plan and has it judged; ``None`` where it is not wired."""
    wiring = wired(plan)
    if wiring.change is None:
        return None
    after = wiring.change.applied(plan)
    assert not judged(document_of(plan), document_of(after), wiring)
    lines = lines_in(pieces_in(document_of(plan)), pieces_in(document_of(after)))
    return Laid(
        sum(len(line.dust) + len(line.repeaters) for line in lines),
        sum(line_bounds(plan, after, line, lines).lower for line in lines),
        wiring.footprint_cells,
        len({(piece.at.x, piece.at.z) for piece in plan.pieces}),
    )


def wired(plan: Plan) -> Wiring:
    *_, wiring = wire(plan)
    assert isinstance(wiring, Wiring)
    return wiring


def judged(before: Document, after: Document, wiring: Wiring) -> list[str]:
    """What the independent judge finds."""
    return [
        *faults_of_plan(before, after, Box()),
        *faults_of_report(before, after, report_of(wiring)),
        *faults_of_runs(after, model_runner(after), FEW_TRAINS),
    ]


def test_the_time_beside_the_proof(ratio: Ratio) -> None:
    """Wiring ends with a proof, so that it can never cost less."""
    plan = read_plan(EXAMPLES / "fen-ring.plan.json")
    change = wired(plan).change
    assert change is not None
    after = change.applied(plan)
    ratio(
        f"wiring {plan.details.title}",
        lambda: wired(plan),
        against="proving it in the dry run, once it is wired",
        bound=lambda: list(prove(after)),
        rounds=2,
    )
