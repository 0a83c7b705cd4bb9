"""``platelayer materials``: what to carry."""

from __future__ import annotations

from typing import Any

import click

from app.materials_csv import materials_csv
from app.subcommands.completing import plans
from app.subcommands.statuses import DONE
from app.subcommands.streams import columns, put, put_json
from model.edits.words import counted, part_word
from model.files.plan_file import read_plan
from model.parts import STACK
from model.sheet.materials import Materials, materials


@click.command("materials")
@click.argument("file", shell_complete=plans)
@click.option("--csv", "as_csv", is_flag=True, help="Print comma-separated values (RFC 4180).")
@click.option("--json", "as_json", is_flag=True, help="Print one JSON object.")
def command(file: str, as_csv: bool, as_json: bool) -> int:
    """Count the pieces by part and by level."""
    if as_csv and as_json:
        raise click.UsageError("--csv and --json exclude each other.")
    needed = materials(read_plan(file))
    if as_json:
        put_json(_as_json(needed))
    else:
        put(materials_csv(needed) if as_csv else _as_text(needed))
    return DONE


def _as_json(needed: Materials) -> dict[str, Any]:
    return {
        "parts": [
            {
                "part": material.part,
                "pieces": material.pieces,
                "levels": {str(level): pieces for level, pieces in material.levels.items()},
            }
            for material in needed.parts
        ]
    }


def _as_text(needed: Materials) -> str:
    rows = [
        (
            part_word(material.part),
            f"{material.pieces:,}",
            f"{material.stacks.full:,} × {STACK} + {material.stacks.over}",
            ", ".join(f"level {level}: {pieces:,}" for level, pieces in material.levels.items()),
        )
        for material in needed.parts
    ]
    return columns(rows) + counted(needed.pieces, "piece") + "\n"
