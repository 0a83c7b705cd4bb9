"""``platelayer wire``: readers, inverters and lines under the track, proved by the dry run."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from app.subcommands.check_text import finding_row
from app.subcommands.completing import any_file, plans
from app.subcommands.progress import Progress
from app.subcommands.statuses import DONE, ERROR_FOUND
from app.subcommands.streams import columns, plain, put, put_json, say
from app.translation import tr
from app.wire_words import (
    BARRELS,
    CAUTIONS,
    FIRST_DEPTH,
    FIRST_GROW,
    MOST_CELLS,
    ROOM,
    as_finding,
    lines_words,
    progress_words,
    proof_words,
    room_words,
    time_words,
)
from model.edits.words import counted
from model.files.plan_file import plan_bytes, read_plan
from model.files.writer import check_writable, write_bytes
from model.plan import Plan
from model.rules.check import finding_json

if TYPE_CHECKING:  # what the search needs takes long to import, and the help of all commands must not wait
    from model.wiring.result import LineReport, Wiring


@click.command("wire")
@click.argument("file", shell_complete=plans)
@click.option(
    "-o",
    "--output",
    metavar="OUT.plan.json",
    required=True,
    shell_complete=any_file,
    help="The file to write.",
)
@click.option("--seed", type=int, default=0, show_default=True, help="Another one may lay other lines.")
@click.option(
    "--grow",
    type=click.IntRange(0, MOST_CELLS),
    default=FIRST_GROW,
    show_default=True,
    help="Cells that the wiring may reach out beyond the track, on each side.",
)
@click.option(
    "--depth",
    type=click.IntRange(0, MOST_CELLS),
    default=FIRST_DEPTH,
    show_default=True,
    help="Levels that it may use below the lowest rail.",
)
@click.option("--json", "as_json", is_flag=True, help="Print one JSON object.")
def command(file: str, output: str, seed: int, grow: int, depth: int, as_json: bool) -> int:
    """Wire a junction under its own track: readers, inverters and lines for all wanted routes.

    The wired plan is run dry, train after train. Where it is not wired, or a run fails, nothing is written.
    """
    plan = read_plan(file)
    check_writable(output)
    wiring = _search(plan, seed, grow, depth)
    if wiring.wired and wiring.change is not None:
        write_bytes(output, plan_bytes(wiring.change.applied(plan)))
    if as_json:
        put_json(_as_json(wiring))
    else:
        put(_as_text(wiring))
    name = click.format_filename(output)
    say(f"wrote {name}" if wiring.wired else f"{name} was not written")
    return DONE if wiring.wired else ERROR_FOUND


def _search(plan: Plan, seed: int, grow: int, depth: int) -> Wiring:
    """The wiring, telling of how far it is meanwhile."""
    from model.wiring.result import Wiring
    from model.wiring.wire import wire

    with Progress() as progress:
        for step in wire(plan, seed, grow, depth):
            if isinstance(step, Wiring):
                return step
            progress.tell(progress_words(step))
    raise AssertionError("the search ended without a result")


def _as_json(wiring: Wiring) -> dict[str, Any]:
    return {
        "wired": wiring.wired,
        "lines": [
            {"arm": line.arm, "switches": line.switches, "dust": line.dust, "repeaters": line.repeaters}
            for line in wiring.lines
        ],
        "footprint_cells": wiring.footprint_cells,
        "depth": wiring.depth,
        "verified": {"runs": wiring.runs, "passed": wiring.passed},
        "findings": [finding_json(as_finding(unwired)) for unwired in wiring.findings],
    }


def _as_text(wiring: Wiring) -> str:
    """What was laid, how it was proved, and what a builder must know; or why nothing was laid."""
    findings = _section("Findings", [finding_row(as_finding(unwired)) for unwired in wiring.findings])
    if not wiring.wired:
        return f"{lines_words(wiring)}\n{findings}"
    return (
        f"{lines_words(wiring)}\n"
        + _section("Lines", [_line(line) for line in wiring.lines])
        + _section("Headway, from the last cart of a called train to the next train", _headways(wiring))
        + f"{findings}room: {room_words(wiring)}\nproof: {proof_words(wiring)}\n"
        + (f"{tr(BARRELS, room=ROOM)}\n" if wiring.lines else "")
        + f"{' '.join(CAUTIONS)}\n"
    )


def _headways(wiring: Wiring) -> list[list[str]]:
    return [[plain(each.arm), time_words(each.ticks)] for each in wiring.headways]


def _section(heading: str, rows: list[list[str]]) -> str:
    return f"{heading}\n{columns(rows)}" if rows else ""


def _line(line: LineReport) -> list[str]:
    switches = "throws " + ", ".join(map(str, line.switches))
    return [plain(line.arm), switches, f"{line.dust:,} dust", counted(line.repeaters, "repeater")]
