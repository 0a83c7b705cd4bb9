"""The command line: ``platelayer`` and its subcommands.

Data goes to standard output and nothing else does; messages go to standard error. A subcommand is imported
when it is called, so that none waits for what another one needs.
"""

from __future__ import annotations

import io
import os
import sys
from collections.abc import Sequence
from importlib import import_module
from typing import Any, Final

import click
from click.shell_completion import CompletionItem

from app.subcommands import completing
from app.subcommands.statuses import DONE, NOT_READ_OR_WRITTEN, WRONG_USE
from app.subcommands.streams import put, say, tell
from model.files.errors import PlanFileError
from model.files.writer import WriteError

SUBCOMMANDS: Final = (
    "check",
    "trace",
    "sheet",
    "materials",
    "turn",
    "compare",
    "order",
    "steps",
    "tests",
    "diagnose",
    "run",
    "wire",
    "network",
)
SCREENS: Final = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")
"""Any of these tells Qt where to draw; without one it would abort."""


class Program(click.Group):
    """The subcommands, and the editor where none is named."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(SUBCOMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in SUBCOMMANDS:
            return None
        command: click.Command = import_module(f"app.subcommands.{cmd_name}").command
        _help_by_put(command.get_help_option(ctx))
        return command

    def get_help_option(self, ctx: click.Context) -> click.Option | None:
        return _help_by_put(super().get_help_option(ctx))

    def shell_complete(self, ctx: click.Context, incomplete: str) -> list[CompletionItem]:
        """Subcommands by their names alone, so that none is loaded; plans, as one alone opens the editor."""
        names = [CompletionItem(name) for name in SUBCOMMANDS if name.startswith(incomplete)]
        options = click.Command.shell_complete(self, ctx, incomplete)
        return names + options or completing.files_ending(".plan.json", incomplete)

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """A file alone opens the editor; what is neither a file nor a subcommand is wrong use.

        While a shell completes the line, nothing is: it is not finished yet.
        """
        if args[0] in SUBCOMMANDS or ctx.resilient_parsing:
            return super().resolve_command(ctx, args)
        if not os.path.exists(args[0]):
            raise click.UsageError(f"'{args[0]}' is neither a subcommand nor a file.", ctx)
        if len(args) > 1:
            raise click.UsageError(f"The editor opens one file; '{args[1]}' is one too many.", ctx)
        # Behind two dashes a name may begin with one.
        return "edit", _edit, ["--", args[0]]


def _help_by_put(option: click.Option | None) -> click.Option | None:
    """Let the option print as all data is printed: click's own way lets a full disk end in a traceback."""
    if option is not None:
        option.callback = _show_help
    return option


def _show_help(ctx: click.Context, _option: click.Parameter, is_asked: bool) -> None:
    if is_asked and not ctx.resilient_parsing:
        put(ctx.get_help() + "\n")
        ctx.exit()


@click.group(
    cls=Program, invoke_without_command=True, context_settings={"help_option_names": ["-h", "--help"]}
)
@click.pass_context
def program(ctx: click.Context) -> int:
    """Design rail junctions of automatic cart networks.

    Without a subcommand, or with the file of a plan or of a network alone, the editor opens.
    """
    return edit(None) if ctx.invoked_subcommand is None else DONE


def edit(path: str | None) -> int:
    """Open the editor; gives its exit status. Raises UsageError where there is no screen."""
    if sys.platform == "linux" and not any(map(os.environ.get, SCREENS)):
        raise click.UsageError("The editor needs a screen, and there is none; the subcommands need none.")
    from app import window  # Qt takes longer to import than all else together

    return window.run(path)


@click.command("edit")
@click.argument("file")
def _edit(file: str) -> int:
    return edit(file)


def run(arguments: Sequence[str] | None = None) -> int:
    """Run the program with what was typed after its name; gives its exit status."""
    try:
        if completing.is_asked():
            return completing.answer(program)
        return _invoke(sys.argv[1:] if arguments is None else list(arguments))
    except click.exceptions.Exit as done:
        return done.exit_code
    except click.UsageError as error:
        said = io.StringIO()
        error.show(said)
        tell(said.getvalue())
        return WRONG_USE
    except (PlanFileError, WriteError) as error:
        say(str(error))
        return NOT_READ_OR_WRITTEN


def _invoke(arguments: list[str]) -> int:
    with program.make_context("platelayer", arguments) as context:
        status: Any = program.invoke(context)
    return int(status)
