"""Drawing the build sheet against working out what it says, and a large plan's against a small one's."""

from __future__ import annotations

from pathlib import Path
from typing import Final

import pytest
from PySide6.QtWidgets import QApplication

from app.export.devices import pdf
from app.export.papers import PAPERS
from app.export.sheet import Worked, sheet_pages, working_out
from model.files.plan_file import read_plan
from model.plan import Plan
from model.progress import result_of
from tests.benchmarks.conftest import Ratio
from tests.benchmarks.tracks import station_throat

pytestmark = pytest.mark.slow

EXAMPLE: Final = Path(__file__).parents[2] / "resources" / "examples" / "saltern-junction.plan.json"


def worked_out(plan: Plan) -> Worked:
    return result_of(working_out(plan))


def drawn(worked: Worked) -> tuple[bytes, int]:
    """The sheet as PDF, without the disk, and its number of pages."""
    pages = result_of(sheet_pages(worked, "A4", colour=False, steps=True))
    return pdf(pages, PAPERS["A4"], "Measured"), len(pages)


@pytest.mark.parametrize("rails", [None, 1_000])
def test_drawing(qapp: QApplication, ratio: Ratio, rails: int | None) -> None:
    plan = read_plan(EXAMPLE) if rails is None else station_throat(rails)
    worked = worked_out(plan)
    data, pages = drawn(worked)
    assert data.startswith(b"%PDF")
    ratio(
        f"build sheet of {plan.details.title or f'{rails:,} rails'} drawn as PDF, {pages} pages",
        lambda: drawn(worked),
        against="working out what it says",
        bound=lambda: worked_out(plan),
        rounds=3,
    )


def test_drawing_ten_times_as_many_rails(qapp: QApplication, ratio: Ratio) -> None:
    small, large = (worked_out(station_throat(rails)) for rails in (200, 2_000))
    ratio(
        "build sheet of 2,000 rails drawn as PDF",
        lambda: drawn(large),
        against="the same of 200 rails",
        bound=lambda: drawn(small),
        goal=10,
        rounds=2,
    )
