"""``platelayer trace``: the way of one cart."""

from __future__ import annotations

import click

from app.subcommands.completing import arms, plans, readers
from app.subcommands.statuses import DONE
from app.subcommands.streams import columns, plain, put, put_json
from model.files.plan_file import read_plan
from model.grid import Cell
from model.plan import Arm, Plan
from model.routing.junction import Junction
from model.rules.words import ending
from model.track.carts import Way


def cell(words: str) -> Cell:
    """The cell that ``X,Y,Z`` names, also with the minus sign that the program itself prints."""
    try:
        x, y, z = map(int, words.replace("\N{MINUS SIGN}", "-").split(","))
    except ValueError:
        raise click.BadParameter(f"{words!r} is no cell; three whole numbers X,Y,Z are") from None
    return Cell(x, y, z)


@click.command("trace")
@click.argument("file", shell_complete=plans)
@click.option(
    "--from",
    "start",
    metavar="ARM",
    required=True,
    shell_complete=arms,
    help="The arm by which the cart enters.",
)
@click.option("--called", metavar="ARM[,ARM…]", shell_complete=readers, help="The arms whose readers hold.")
@click.option(
    "--throw", type=cell, metavar="X,Y,Z", multiple=True, help="A switch that is powered; repeat it."
)
@click.option("--json", "as_json", is_flag=True, help="Print one JSON object.")
def command(file: str, start: str, called: str | None, throw: tuple[Cell, ...], as_json: bool) -> int:
    """Follow a cart that enters by an arm.

    With neither --called nor --throw it is an empty cart, and no reader holds. With --throw just those
    switches are wired, and all are powered; the = form takes negative numbers: --throw=-1,64,0.
    """
    if called is not None and throw:
        raise click.UsageError("--called and --throw exclude each other.")
    plan = read_plan(file)
    junction = Junction(plan)
    arm = _entry(junction, start)
    readers = () if called is None else _readers(plan, called)
    if throw:
        switches = _switches(junction, throw)
        way = junction.way_of(arm, switches, wired=switches)
    else:
        way = junction.way(start, readers)
    _print(start, way, as_json)
    return DONE


def _entry(junction: Junction, name: str) -> Arm:
    arm = _known_arm(junction.plan, name, "--from")
    if arm.enter is None:
        raise click.BadParameter(f"the arm {name} has no way in", param_hint="--from")
    if not junction.can_enter(name):
        raise click.BadParameter(f"no rail lies where the arm {name} comes in", param_hint="--from")
    return arm


def _readers(plan: Plan, called: str) -> tuple[str, ...]:
    names = tuple(called.split(","))
    with_reader = {route.start for route in plan.routes if route.called is not None}
    for name in names:
        _known_arm(plan, name, "--called")
        if name not in with_reader:
            raise click.BadParameter(f"the arm {name} has no called route", param_hint="--called")
    return names


def _known_arm(plan: Plan, name: str, option: str) -> Arm:
    arm = plan.details.arm(name)
    if arm is None:
        raise click.BadParameter(f"there is no arm {name!r}", param_hint=option)
    return arm


def _switches(junction: Junction, cells: tuple[Cell, ...]) -> frozenset[Cell]:
    for cell in cells:
        if cell not in junction.switch_states:
            raise click.BadParameter(f"there is no switch at {cell}", param_hint="--throw")
    return frozenset(cells)


def _print(start: str, way: Way, as_json: bool) -> None:
    if as_json:
        put_json(
            {
                "from": start,
                "path": way.path,
                "outcome": way.outcome,
                "arm": way.arm,
                "heading": way.heading.word,
            }
        )
    else:
        put(columns([str(cell)] for cell in way.path))
        put(plain(f"A cart from {start} {ending(way)}, heading {way.heading.word}.") + "\n")
