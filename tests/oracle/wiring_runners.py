"""What the judge of wired junctions needs of the model: files, printed numbers, and runners.

The runners are the dry run of the model, the plain one, and both side by side.
"""

from __future__ import annotations

import json

from model.dry_run import Script, Timed, run
from model.files.plan_file import parse_plan, plan_bytes
from model.plan import Plan
from model.wiring.result import Wiring
from tests.oracle.carts import ArmSpec
from tests.oracle.dry_run import DryRun
from tests.oracle.dry_run_adapter import model_event
from tests.oracle.wiring import Document, pieces_in
from tests.oracle.wiring_runs import Runner


def document_of(plan: Plan) -> Document:
    """The plan as a file has it."""
    return json.loads(plan_bytes(plan))


def report_of(wiring: Wiring) -> Document:
    """The numbers as the command line prints them."""
    lines = [{"arm": line.arm, "dust": line.dust, "repeaters": line.repeaters} for line in wiring.lines]
    return {
        "wired": wiring.wired,
        "lines": lines,
        "footprint_cells": wiring.footprint_cells,
        "depth": wiring.depth,
        "verified": {"runs": wiring.runs, "passed": wiring.passed},
    }


def model_runner(document: Document) -> Runner:
    """Runs scripts over a plan file as the program does."""
    plan = parse_plan(json.dumps(document).encode(), "judged")

    def shown(script: dict, ticks: int | None) -> dict:
        events = tuple(Timed(event["tick"], model_event(event)) for event in script["events"])
        done = run(plan, Script(events=events), ticks)
        return {
            "ticks": done.ticks,
            "arrivals": [
                {"cart": a.cart, "tick": a.tick, "arm": a.arm, "carries": dict(a.carries)}
                for a in done.arrivals
            ],
            "lost": [{"cart": lost.cart, "at": list(lost.at), "why": str(lost.why)} for lost in done.lost],
            "unsure": [{"tick": each.tick, "at": [list(at) for at in each.at]} for each in done.unsure],
        }

    return shown


def plain_runner(document: Document) -> Runner:
    """Runs scripts on the second implementation, which must be told for how long."""
    pieces, arms = pieces_in(document), arms_in(document)

    def shown(script: dict, ticks: int | None) -> dict:
        plain = DryRun(pieces, arms)
        assert ticks is not None
        for tick in range(ticks):
            plain.step([event for event in script["events"] if event["tick"] == tick])
        arrivals = plain.state.arrivals
        return {
            "ticks": ticks,
            "arrivals": [{"cart": a[0], "tick": a[1], "arm": a[2], "carries": a[3]} for a in arrivals],
            "lost": [{"cart": lost[0], "at": list(lost[1]), "why": lost[2]} for lost in plain.all_lost()],
            "unsure": [{"tick": tick, "at": [list(at) for at in pair]} for tick, *pair in plain.unsure],
        }

    return shown


def both_runners(document: Document) -> Runner:
    """The plain one, for as long as that of the model takes; raises AssertionError where the two differ."""
    model, plain = model_runner(document), plain_runner(document)

    def shown(script: dict, ticks: int | None) -> dict:
        expected = model(script, ticks)
        found = plain(script, expected["ticks"])
        assert found == expected, script
        return found

    return shown


def arms_in(document: Document) -> list[ArmSpec]:
    """The arms of a plan file in plain words."""

    def end(words: dict | None) -> tuple | None:
        return None if words is None else (tuple(words["at"]), words["heading"])

    return [ArmSpec(arm["name"], end(arm.get("in")), end(arm.get("out"))) for arm in document["arms"]]
