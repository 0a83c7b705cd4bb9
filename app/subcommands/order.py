"""``platelayer order``: in which order to place the rails, and how to face with each."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, Any, Final

import click

from app.order_words import cheapest, order_words
from app.subcommands.completing import any_file, plans
from app.subcommands.progress import Progress
from app.subcommands.statuses import DONE, ERROR_FOUND
from app.subcommands.streams import columns, put, put_json, say
from app.turn_words import turn_words
from model.edits import set_build_order
from model.files.plan_file import plan_bytes, read_plan
from model.files.writer import check_writable, write_bytes
from model.grid import ALL_TURNS, Turn
from model.plan import Plan

if TYPE_CHECKING:  # what the planner needs takes long to import, and the help of all commands must not wait
    from model.ordering import BuildOrder

MOST_SECONDS: Final = 1_000_000
"""No clock reckons with a number of any length."""


@click.command("order")
@click.argument("file", shell_complete=plans)
@click.option(
    "-o",
    "--output",
    metavar="OUT.plan.json",
    required=True,
    shell_complete=any_file,
    help="The file to write.",
)
@click.option(
    "--seconds",
    type=click.IntRange(0, MOST_SECONDS),
    default=60,
    show_default=True,
    help="How long to search at most, in each orientation.",
)
@click.option("--orientations", is_flag=True, help="Search in each of the eight orientations, too.")
@click.option("--json", "as_json", is_flag=True, help="Print one JSON object.")
def command(file: str, output: str, seconds: int, orientations: bool, as_json: bool) -> int:
    """Find the order of placing that serves all wanted routes with the fewest inverters.

    Of those the fewest thrown, then the fewest wired switches. The plan is written in that order.
    """
    plan = read_plan(file)
    check_writable(output)
    found = _search(plan, seconds, orientations)
    best = found[Turn()]
    write_bytes(output, plan_bytes(set_build_order(plan, best.rails).applied(plan)))
    if as_json:
        put_json(_as_json(best, found if orientations else None))
    else:
        put(order_words(best) + "\n" + (_as_text(found) if orientations else ""))
    say(f"wrote {click.format_filename(output)}")
    return DONE if best.served else ERROR_FOUND


def _search(plan: Plan, seconds: int, orientations: bool) -> dict[Turn, BuildOrder]:
    """The last result of each orientation looked at, telling of the others meanwhile."""
    found: dict[Turn, BuildOrder] = {}
    with Progress() as progress:
        for turn, order in _orders(plan, seconds, orientations):
            found[turn] = order
            where = f"orientation {turn.number}, " if orientations else ""
            progress.tell(where + order_words(order))
    return dict(sorted(found.items(), key=lambda entry: entry[0].number))


def _orders(plan: Plan, seconds: int, orientations: bool) -> Iterable[tuple[Turn, BuildOrder]]:
    from model.ordering import best_order, orders_by_orientation

    if orientations:
        return orders_by_orientation(plan, seconds * len(ALL_TURNS))
    return ((Turn(), order) for order in best_order(plan, seconds))


def _counts(order: BuildOrder) -> dict[str, Any]:
    return {name: getattr(order, name) for name in ("served", "inverters", "thrown", "wired", "proved")}


def _as_json(best: BuildOrder, found: Mapping[Turn, BuildOrder] | None) -> dict[str, Any]:
    if found is None:
        return _counts(best)
    each = [
        {"quarter": turn.quarter, "mirror": turn.mirror, **_counts(order)} for turn, order in found.items()
    ]
    return {**_counts(best), "orientations": each}


def _as_text(found: Mapping[Turn, BuildOrder]) -> str:
    rows = [(str(turn.number), turn_words(turn), order_words(order)) for turn, order in found.items()]
    return f"Orientations\n{columns(rows)}{_cheapest(found)}\n"


def _cheapest(found: Mapping[Turn, BuildOrder]) -> str:
    """Which orientations to build in, in words."""
    least = [str(turn.number) for turn in cheapest(found)]
    if not least:
        return "served in no orientation"
    if len(least) == len(found):
        return "all orientations cost the same"
    return f"cheapest: orientation{'s' if len(least) > 1 else ''} {', '.join(least)}"
