"""``platelayer diagnose``: what is wrong with a junction in which carts go astray."""

from __future__ import annotations

from typing import Any

import click

from app.subcommands.commissioning_text import diagnosis_text
from app.subcommands.completing import any_file, plans
from app.subcommands.statuses import DONE
from app.subcommands.streams import put, put_json, say
from model.commissioning import Commissioning, Diagnosis, Observed, Run, diagnose
from model.files.observed_file import read_observed
from model.files.plan_file import read_plan
from model.routing.junction import Junction


@click.command("diagnose")
@click.argument("file", shell_complete=plans)
@click.option(
    "--observed",
    metavar="OBS.json",
    required=True,
    shell_complete=any_file,
    help="The file that says what was seen of each cart.",
)
@click.option("--json", "as_json", is_flag=True, help="Print one JSON object.")
def command(file: str, observed: str, as_json: bool) -> int:
    """Find what explains where the carts went: one fault, or two.

    OBS.json holds the runs made: {"runs": [{"from": "Quay", "waybill": null, "saw": "Fen"}]}. What was seen
    is an arm, or "stays" for a cart that reached none.
    """
    commissioning = Commissioning(Junction(read_plan(file)))
    seen = read_observed(observed, commissioning)
    found = diagnose(commissioning, seen)
    if not found.diagnoses:
        say(_why_none(commissioning, seen))
    if as_json:
        put_json(_as_json(found))
    else:
        put(diagnosis_text(found))
    return DONE


def _as_json(found: Diagnosis) -> dict[str, Any]:
    otherwise = [{"quarter": turn.quarter, "mirror": turn.mirror} for turn in found.built_otherwise]
    return {
        **({"built_otherwise": otherwise} if otherwise else {}),
        "diagnoses": [{"faults": [fault.as_json() for fault in faults]} for faults in found.diagnoses],
        "next_run": None if found.next_run is None else found.next_run.as_json(),
    }


def _why_none(commissioning: Commissioning, seen: tuple[Observed, ...]) -> str:
    saw: dict[Run, str] = {}
    for each in seen:
        if saw.setdefault(commissioning.trials.as_read(each.run), each.saw) != each.saw:
            return f"two carts alike from {each.run.start} went two ways; no fault that stays does that"
    return "no fault, and no two faults together, explain what the carts did"
