"""``platelayer run``: a dry run of a plan by a script."""

from __future__ import annotations

from typing import Any

import click

from app.subcommands.completing import any_file, plans
from app.subcommands.statuses import DONE
from app.subcommands.streams import columns, plain, put, put_json
from model.dry_run import Arrival, EventRefused, Lost, Result, Script, Watched, run
from model.edits.words import counted
from model.files.plan_file import read_plan
from model.files.script_file import read_script
from model.grid import Cell
from model.plan import Plan

MOST_TICKS = 1_000_000


@click.command("run")
@click.argument("file", shell_complete=plans)
@click.option(
    "--script",
    metavar="S.json",
    required=True,
    shell_complete=any_file,
    help="The file that says what is done, and when.",
)
@click.option(
    "--ticks", type=click.IntRange(1, MOST_TICKS), metavar="N", help="Run ticks 0 to N−1, 20 a second."
)
@click.option("--json", "as_json", is_flag=True, help="Print one JSON object.")
def command(file: str, script: str, ticks: int | None, as_json: bool) -> int:
    """Run signals, items and carts together, tick by tick.

    Without --ticks it runs until nothing moves or changes, 12,000 ticks at most. S.json holds what is done:
    {"probes": [[x,y,z]], "events": [{"tick": 0, "do": "send", "arm": "Quay"}]}.
    """
    plan = read_plan(file)
    done = _run(plan, read_script(script, plan), ticks)
    if as_json:
        put_json(_as_json(done))
    else:
        put(_as_text(done))
    return DONE


def _run(plan: Plan, script: Script, ticks: int | None) -> Result:
    try:
        return run(plan, script, ticks)
    except EventRefused as refused:
        raise click.BadParameter(str(refused), param_hint="--script") from None


def _as_json(done: Result) -> dict[str, Any]:
    return {
        "ticks": done.ticks,
        "arrivals": [
            {"cart": each.cart, "tick": each.tick, "arm": each.arm, "carries": dict(each.carries)}
            for each in done.arrivals
        ],
        "lost": [{"cart": each.cart, "at": each.at, "why": each.why} for each in done.lost],
        "probes": {",".join(map(str, cell)): watched for cell, watched in done.probes.items()},
        "unsure": [{"tick": each.tick, "at": each.at} for each in done.unsure],
    }


def _as_text(done: Result) -> str:
    """What became of the carts, what probes read, where the order matters, what is wrong, and the time."""
    unsure = [[f"tick {each.tick}", *map(str, each.at)] for each in done.unsure]
    return (
        _section("Carts that arrived", [_arrived(each) for each in done.arrivals])
        + _section("Carts that did not", [_not_arrived(each) for each in done.lost])
        + _section("Probes (tick:strength)", [_watched(*probe) for probe in done.probes.items()])
        + _section("Order matters, and the world may do otherwise", unsure)
        + _section("Findings", [[str(each.tick), plain(each.message)] for each in done.findings])
        + f"{counted(done.ticks, 'tick')}: {done.ticks / 20:g} s\n"
    )


def _section(heading: str, rows: list[list[str]]) -> str:
    return f"{heading}\n{columns(rows)}" if rows else ""


def _arrived(arrival: Arrival) -> list[str]:
    left = ", ".join(f"{count} {plain(name)}" for name, count in arrival.carries)
    return [f"cart {arrival.cart}", f"tick {arrival.tick}", arrival.arm, left]


def _not_arrived(lost: Lost) -> list[str]:
    return [f"cart {lost.cart}", str(lost.at), lost.why]


def _watched(cell: Cell, watched: Watched) -> list[str]:
    return [str(cell), " ".join(f"{tick}:{strength}" for tick, strength in watched)]
