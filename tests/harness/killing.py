"""Processes that are killed, as by a power cut, while they work."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Final

ROOT: Final = Path(__file__).parents[2]
GOOD_WRITER: Final = "from model.files.writer import write_bytes"
IN_PLACE: Final = "def write_bytes(path, data):\n    with open(path, 'wb') as stream: stream.write(data)\n"
"""A control that must be caught: what stood in the file is gone before the new is there."""
SAVE_AND_KILL: Final = """
import glob, os, signal, sys, time
from random import Random
{writer}
old, new = b"old" * 700_000, b"new" * 900_000
target, runs = sys.argv[1], int(sys.argv[2])
random, spoilt = Random(runs), 0
for _ in range(runs):
    with open(target, "wb") as stream:
        stream.write(old)
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        os.write(writing, b".")
        while True:
            write_bytes(target, new)
            write_bytes(target, old)
    os.read(reading, 1)
    time.sleep(random.uniform(0, 0.03))
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    os.close(reading)
    os.close(writing)
    with open(target, "rb") as stream:
        spoilt += stream.read() not in (old, new)
    for temporary in glob.glob(os.path.join(glob.escape(os.path.dirname(target)), ".*.tmp")):
        os.unlink(temporary)
print(spoilt)
"""
"""Each child is a fork of one process, so that Python need not start for every kill."""


def spoilt_by_killing(folder: Path, writer: str, runs: int) -> int:
    """How many of so many files, each killed at some moment while it was saved, are neither old nor new."""
    script = SAVE_AND_KILL.format(writer=writer)
    command = [sys.executable, "-c", script, str(folder / "fen.plan.json"), str(runs)]
    return int(subprocess.run(command, cwd=ROOT, check=True, capture_output=True).stdout)


@contextmanager
def running(script: str, *arguments: object) -> Iterator[subprocess.Popen[str]]:
    """A Python process of its own; it is killed at the end, whatever it does."""
    process = subprocess.Popen(
        [sys.executable, "-c", script, *map(str, arguments)], cwd=ROOT, stdout=subprocess.PIPE, text=True
    )
    with process:
        try:
            yield process
        finally:
            process.kill()


def said(process: subprocess.Popen[str]) -> str:
    """The next line that it prints, without its end."""
    assert process.stdout is not None
    return process.stdout.readline().removesuffix("\n")
