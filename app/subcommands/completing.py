"""What a shell offers for a word that is being typed: plans, networks, files, arms.

``click`` asks these while somebody waits with a finger on Tab, so nothing is loaded here before it is needed.
"""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Iterable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Final

import click
from click.shell_completion import CompletionItem, get_completion_class

from app.subcommands.statuses import DONE, WRONG_USE
from app.subcommands.streams import put

if TYPE_CHECKING:
    from model.plan import Plan

VARIABLE: Final = "_PLATELAYER_COMPLETE"
"""The shell asks by it; ``click`` names it after the program."""
PLAIN: Final = re.compile(r"([^\w./@%+:,~-])")
"""What bash would take for something else than a letter of a word."""

Complete = Callable[[click.Context, click.Parameter, str], list[CompletionItem]]


def is_asked() -> bool:
    """Whether it is a shell that runs the program, to complete a word."""
    return VARIABLE in os.environ


def answer(program: click.Command) -> int:
    """Tell the shell what it asked for, or the script with which it asks; gives the exit status."""
    shell, _, asked = os.environ[VARIABLE].partition("_")
    kind = get_completion_class(shell)
    if kind is None or asked not in ("source", "complete"):
        return WRONG_USE
    asking = kind(program, {}, "platelayer", VARIABLE)
    put(asking.source() if asked == "source" else asking.complete() + "\n")
    return DONE


def any_file(_context: click.Context, _parameter: click.Parameter, typed: str) -> list[CompletionItem]:
    """Files and folders, as the shell itself lists them."""
    return [CompletionItem(typed, type="file")]


def files_ending(ending: str, typed: str) -> list[CompletionItem]:
    """The files with that ending; where none begins like that, files and folders as the shell lists them.

    A name that is no UTF-8, or goes over two lines, cannot be told to a shell.
    """
    folder, start = os.path.split(typed)
    try:
        names = os.listdir(Path(folder or ".").expanduser())
    except OSError:
        names = []
    ours = (name for name in names if name.startswith(start) and name.endswith(ending))
    found = sorted(name for name in ours if name.isprintable())
    return _items(os.path.join(folder, name) for name in found) or [CompletionItem(typed, type="file")]


def _complete_files(
    ending: str, _context: click.Context, _parameter: click.Parameter, typed: str
) -> list[CompletionItem]:
    return files_ending(ending, typed)


plans: Final[Complete] = partial(_complete_files, ".plan.json")
networks: Final[Complete] = partial(_complete_files, ".network.json")


def arms(context: click.Context, _parameter: click.Parameter, typed: str) -> list[CompletionItem]:
    """The arms by which carts come in, of the plan that was named before."""
    plan = _plan_of(context)
    found = plan.arms if plan is not None else ()
    return _items(arm.name for arm in found if arm.enter is not None and arm.name.startswith(typed))


def readers(context: click.Context, _parameter: click.Parameter, typed: str) -> list[CompletionItem]:
    """The arms with a reader; after a comma one that was not named yet."""
    plan = _plan_of(context)
    found = dict.fromkeys(r.start for r in plan.routes if r.called is not None) if plan is not None else ()
    before, comma, start = typed.rpartition(",")
    named = before.split(",")
    return _items(before + comma + name for name in found if name.startswith(start) and name not in named)


def _plan_of(context: click.Context) -> Plan | None:
    """The plan that was named; a shell has no place for the reason why there is none."""
    from model.files.errors import PlanFileError
    from model.files.plan_file import read_plan

    # While an option still waits for its word, click has not given the file to its argument yet.
    named = [context.params.get("file"), *context.args]
    try:
        return next((read_plan(file) for file in named if file), None)
    except (OSError, PlanFileError):
        return None


def _items(values: Iterable[str]) -> list[CompletionItem]:
    """Bash alone puts into the line what it is given letter by letter."""
    is_bash = os.environ.get(VARIABLE, "").startswith("bash")
    return [CompletionItem(PLAIN.sub(r"\\\1", value) if is_bash else value) for value in values]
