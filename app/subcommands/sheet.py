"""``platelayer sheet``: the build sheet on paper."""

from __future__ import annotations

import os
from collections.abc import Sequence
from pathlib import Path
from typing import Final

import click

from app.interrupts import interrupt_held_back
from app.numbered_pages import older_pages
from app.subcommands.completing import any_file, plans
from app.subcommands.statuses import DONE
from app.subcommands.streams import say
from model.files.plan_file import read_plan

ENDINGS: Final = (".pdf", ".svg", ".png")


@click.command("sheet")
@click.argument("file", shell_complete=plans)
@click.option(
    "-o",
    "--output",
    metavar="OUT.pdf",
    required=True,
    shell_complete=any_file,
    help="The file to write: .pdf, .svg or .png.",
)
@click.option("--paper", type=click.Choice(["A4", "A3"]), default="A4", show_default=True)
@click.option("--colour", is_flag=True, help="Use colour beside line and hatching.")
def command(file: str, output: str, paper: str, colour: bool) -> int:
    """Draw the build sheet. As .svg or .png, each page is a file: OUT-01.svg, OUT-02.svg, …"""
    if Path(output).suffix.lower() not in ENDINGS:
        raise click.BadParameter(f"the name must end in {', '.join(ENDINGS)}", param_hint="-o")
    plan = read_plan(file)
    # Qt looks at these when it is imported: drawing needs no screen, and is the same in every locale.
    os.environ |= {"QT_QPA_PLATFORM": "offscreen", "LC_ALL": "C.UTF-8"}
    with interrupt_held_back():
        from app.export import export_sheet

    say_pages(Path(output), export_sheet(plan, Path(output), paper, colour))
    return DONE


def say_pages(path: Path, files: Sequence[str]) -> None:
    """What was written under that name, and what still lies beside it."""
    for written in files:
        say(f"wrote {click.format_filename(written)}")
    if older := older_pages(path, files):
        say(f"pages of an older one are still there: {', '.join(map(click.format_filename, older))}")
