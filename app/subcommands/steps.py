"""``platelayer steps``: how to build a plan, step by step."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any, Final

import click

from app.subcommands.completing import plans
from app.subcommands.statuses import DONE
from app.subcommands.streams import plain, put, put_json
from model.files.encoding import piece_value
from model.files.plan_file import read_plan
from model.steps import Step, build_steps


@click.command("steps")
@click.argument("file", shell_complete=plans)
@click.option("--json", "as_json", is_flag=True, help="Print one JSON object.")
def command(file: str, as_json: bool) -> int:
    """Say how to build a junction, step by step: what to place, and what to see then.

    Whoever places the pieces in the order of the steps gets each rail in the shape that it has in the plan.
    """
    steps = build_steps(read_plan(file))
    if as_json:
        put_json({"steps": [_as_json(step) for step in steps]})
    else:
        put("".join(f"{line}\n" for line in _as_text(steps)))
    return DONE


def _as_json(step: Step) -> dict[str, Any]:
    members = {
        "step": step.number,
        "level": step.level,
        "title": step.title,
        "place": [piece_value(piece) for piece in step.place],
        "why": step.why,
        "see": step.see,
        "shapes": [{"at": cell, "shape": shape.word} for cell, shape in step.shapes.items()],
    }
    return {key: value for key, value in members.items() if value is not None}


INTRODUCTION: Final = (
    "Cells are x y z: x to the east, y up, z to the south. Lay each run from the first cell to the last.",
    "A rail without a facing may be laid facing any way.",
)


def _as_text(steps: Iterable[Step]) -> Iterator[str]:
    yield from INTRODUCTION
    level = None
    for step in steps:
        if step.level != level:
            level = step.level
            yield f"Level {level}".replace("-", "\N{MINUS SIGN}")
        yield plain(f"{step.number:>5}  {step.title}")
        if step.why is not None:
            yield f"       why here: {step.why}"
        yield f"       see: {step.see}"
