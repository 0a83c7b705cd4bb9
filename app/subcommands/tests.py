"""``platelayer tests``: the runs with which to test a finished junction."""

from __future__ import annotations

from typing import Any

import click

from app.subcommands.commissioning_text import tests_text
from app.subcommands.completing import plans
from app.subcommands.statuses import DONE
from app.subcommands.streams import put, put_json
from model.commissioning import Commissioning
from model.files.plan_file import read_plan
from model.routing.junction import Junction


@click.command("tests")
@click.argument("file", shell_complete=plans)
@click.option("--json", "as_json", is_flag=True, help="Print one JSON object.")
def command(file: str, as_json: bool) -> int:
    """Find the fewest test runs that show every single fault that can be shown."""
    commissioning = Commissioning(Junction(read_plan(file)))
    if as_json:
        put_json(_as_json(commissioning))
    else:
        put(tests_text(commissioning))
    return DONE


def _as_json(commissioning: Commissioning) -> dict[str, Any]:
    faults, hidden = commissioning.faults, commissioning.hidden
    return {
        "runs": [
            {"run": number, **run.as_json(), "expect": commissioning.outcome(run)}
            for number, run in enumerate(commissioning.tests, start=1)
        ],
        "covers": {"faults": len(faults), "detected": len(faults) - len(hidden)},
        "hidden": [fault.as_json() for fault in hidden],
        "alike": [[fault.as_json() for fault in group] for group in commissioning.alike],
    }
