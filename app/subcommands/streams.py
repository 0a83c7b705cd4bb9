"""Standard output, for data only, and standard error, for messages."""

from __future__ import annotations

import os
import sys
import unicodedata
from collections.abc import Iterable, Sequence
from typing import Any, TextIO

import msgspec

from model.files.writer import WriteError


def put(text: str) -> None:
    """Print data, as UTF-8 wherever the program runs. Raises WriteError.

    A reader that has seen enough, and closed the pipe, is no error: the exit status says what it says anyway.
    """
    if sys.stdout is None:  # closed by the shell
        return
    try:
        sys.stdout.buffer.write(text.encode("utf-8", "replace"))
        sys.stdout.buffer.flush()
    except BrokenPipeError:
        _drop_the_rest(sys.stdout)
    except OSError as error:
        _drop_the_rest(sys.stdout)
        raise WriteError("standard output", error.strerror or str(error)) from error


def put_json(value: Any) -> None:
    """Print one object."""
    put(msgspec.json.encode(value).decode() + "\n")


def say(message: str) -> None:
    """Print a message for people."""
    tell(f"platelayer: {plain(message)}\n")


def tell(text: str) -> None:
    """Print lines for people. Where that fails, the exit status is all that is left to say it by."""
    if sys.stderr is None:  # closed by the shell
        return
    try:
        sys.stderr.write(text)
        sys.stderr.flush()
    except OSError:
        _drop_the_rest(sys.stderr)


def plain(text: str) -> str:
    """One line that no terminal takes for a command: control characters give way to a mark."""
    return "".join("\N{REPLACEMENT CHARACTER}" if unicodedata.category(c) == "Cc" else c for c in text)


def columns(rows: Iterable[Sequence[str]]) -> str:
    """Rows as indented lines, each column as wide as its widest word, and two spaces between."""
    table = [[plain(word) for word in row] for row in rows]
    widths = [max(map(len, column)) for column in zip(*table, strict=True)]
    lines = ("  ".join(word.ljust(width) for word, width in zip(row, widths, strict=True)) for row in table)
    return "".join(f"  {line.rstrip()}\n" for line in lines)


def _drop_the_rest(stream: TextIO) -> None:
    """Point a stream nowhere, so that closing it at the end finds nothing to complain of."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, stream.fileno())
    os.close(nowhere)
