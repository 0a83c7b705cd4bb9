"""``platelayer check``: what each rail, switch and route comes to, and what is wrong."""

from __future__ import annotations

import click

from app.subcommands.check_text import check_text
from app.subcommands.completing import plans
from app.subcommands.statuses import DONE, ERROR_FOUND, NOT_READ_OR_WRITTEN
from app.subcommands.streams import put, put_json, say
from model.files.errors import PlanFileError
from model.files.plan_file import read_plan
from model.rules.check import Check, check


@click.command("check")
@click.argument("files", metavar="FILE...", nargs=-1, required=True, shell_complete=plans)
@click.option("--json", "as_json", is_flag=True, help="Print one JSON object.")
def command(files: tuple[str, ...], as_json: bool) -> int:
    """Work out shapes, switches, routes, inverters and findings of plan files."""
    status = DONE
    checked: list[tuple[str, Check]] = []
    for file in files:
        try:
            result = check(read_plan(file))
        except PlanFileError as error:
            say(str(error))
            status = NOT_READ_OR_WRITTEN
            continue
        checked.append((click.format_filename(file), result))
        if result.has_errors:
            status = max(status, ERROR_FOUND)
        if not as_json:
            put(check_text(*checked[-1], first=len(checked) == 1))
    if as_json:
        put_json({"files": [result.as_json(name) for name, result in checked]})
    return status
