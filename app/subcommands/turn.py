"""``platelayer turn``: the junction in another orientation."""

from __future__ import annotations

import click

from app.subcommands.completing import any_file, plans
from app.subcommands.statuses import DONE
from app.subcommands.streams import say
from model.edits import turn_plan
from model.files.plan_file import plan_bytes, read_plan
from model.files.writer import write_bytes
from model.grid import Turn


@click.command("turn")
@click.argument("file", shell_complete=plans)
@click.option("--quarter", type=int, required=True, help="Quarters clockwise, seen from above.")
@click.option("--mirror", is_flag=True, help="Mirror first, x to -x.")
@click.option(
    "-o",
    "--output",
    metavar="OUT.plan.json",
    required=True,
    shell_complete=any_file,
    help="The file to write.",
)
def command(file: str, quarter: int, mirror: bool, output: str) -> int:
    """Turn a junction about x = z = 0, seen from above; the order of placing stays."""
    plan = read_plan(file)
    write_bytes(output, plan_bytes(turn_plan(plan, Turn(quarter % 4, mirror)).applied(plan)))
    say(f"wrote {click.format_filename(output)}")
    return DONE
