"""What fuzzing begins with: the examples, and the words of the formats."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from model.parts import Part
from tests.harness.readers import EXAMPLES, READERS, ROOT

KEYS: Final = (
    "format", "version", "title", "running_side", "pieces", "part", "at", "facing", "delay", "mode", "wooden",
    "holds", "item", "count", "arms", "name", "in", "out", "heading", "routes", "from", "idle",
    "called", "waybill", "waivers", "rule", "cells", "reason", "sheet", "stations", "junctions", "links",
    "trips", "pins", "ways", "via", "to", "length", "per_week", "readers", "default", "plan", "map",
    "events", "probes", "tick", "do", "send", "lever", "button", "fill", "carts", "gap", "waybills", "on",
    "runs", "saw",
    "platelayer-plan", "platelayer-network", "north", "down", "left", "compare", "stays", "Quay",
)  # fmt: skip
MARKS: Final = (
    "[[[[",
    "]]]]",
    '{"a":',
    "1e400",
    "-0.0",
    "9999999999999999999",
    "\\ud800",
    "\\u0000",
    "NaN",
    "null",
)


def _words() -> Iterator[str]:
    for word in (*KEYS, *Part):
        yield f'"\\"{word}\\""'
    for mark in MARKS:
        escaped = mark.replace("\\", "\\\\").replace('"', '\\"')
        yield f'"{escaped}"'


DICTIONARY: Final = "\n".join(_words()) + "\n"
"""One quoted word a line, in the form that libFuzzer reads."""


def seeds(name: str) -> Iterator[bytes]:
    """The good file of a reader, all examples of its kind, and what was found before."""
    yield READERS[name].good
    if name in ("plan", "clipboard", "network"):
        ending = "network" if name == "network" else "plan"
        yield from (path.read_bytes() for path in sorted(EXAMPLES.glob(f"*.{ending}.json")))
        yield from (
            path.read_bytes() for path in sorted((ROOT / "resources").glob(f"modules/*.{ending}.json"))
        )
    yield from (path.read_bytes() for path in sorted((ROOT / "tests" / "data" / "found" / name).glob("*")))
