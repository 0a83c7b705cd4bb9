"""``platelayer compare``: what to place and what to take away to get from one plan to another."""

from __future__ import annotations

from typing import Any, Final

import click

from app.subcommands.completing import plans
from app.subcommands.statuses import DONE
from app.subcommands.streams import put, put_json
from model.comparing import Difference, Kind, compare
from model.files.encoding import piece_value
from model.files.plan_file import read_plan
from model.plan import Plan

NETWORK: Final = ".network.json"


@click.command("compare")
@click.argument("before", metavar="A", shell_complete=plans)
@click.argument("after", metavar="B", shell_complete=plans)
@click.option("--json", "as_json", is_flag=True, help="Print one JSON object.")
def command(before: str, after: str, as_json: bool) -> int:
    """Say how to get from plan A to plan B: what to place, what to take away, what to turn or change.

    The text tells, too, which rails come to lie otherwise, and what differs beside the pieces.
    """
    for file in (before, after):
        _check_is_plan(file)
    earlier, later = read_plan(before), read_plan(after)
    if as_json:
        put_json(_as_json(compare(earlier.pieces, later.pieces)))
    else:
        put(_as_text((click.format_filename(before), earlier), (click.format_filename(after), later)))
    return DONE


def _check_is_plan(file: str) -> None:
    if file.endswith(NETWORK):
        raise click.UsageError(
            f"'{click.format_filename(file)}' is a network, and only plans are compared. "
            "For networks: platelayer network NEW --since OLD."
        )


def _as_json(differences: tuple[Difference, ...]) -> dict[str, Any]:
    """Pieces as files have them: those taken in the order of A, the others in the order of B."""
    by_kind: dict[Kind, list[Difference]] = {kind: [] for kind in Kind}
    for each in differences:
        by_kind[Kind.CHANGED if each.kind is Kind.TURNED else each.kind].append(each)
    return {
        "placed": [piece_value(each.after) for each in by_kind[Kind.PLACED] if each.after is not None],
        "taken": [piece_value(each.before) for each in by_kind[Kind.TAKEN] if each.before is not None],
        "changed": [
            {"at": each.at, "before": piece_value(each.before), "after": piece_value(each.after)}
            for each in by_kind[Kind.CHANGED]
            if each.before is not None and each.after is not None
        ],
    }


def _as_text(before: tuple[str, Plan], after: tuple[str, Plan]) -> str:
    from app.subcommands.compare_text import compare_text  # what --json does not need

    return compare_text(before, after)
