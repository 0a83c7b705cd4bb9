"""Plans for the finding rules: text drawings in ``tests/data/rules``, one file a rule.

Each begins with ``bad at x y z and x y z: what it shows`` (or ``at no place``), or with ``good: …``. They
were judged by hand from the rules of the world: common practice, no source.
"""

from __future__ import annotations

import re
from pathlib import Path
from typing import Final, NamedTuple

from model.grid import Cell

DRAWINGS: Final = Path(__file__).parents[2] / "data" / "rules"

_HEAD: Final = re.compile(r"^(bad|good)(?: at (.+?))?: (.+)$", re.MULTILINE)


class Case(NamedTuple):
    """A plan that must be flagged in just these places, or that must not be flagged."""

    rule: str
    shows: str
    places: tuple[Cell | None, ...]
    """Where findings must be; none for a good plan."""
    drawing: str


def cases_of(rule: str) -> list[Case]:
    """The plans of one rule."""
    text = (DRAWINGS / f"{rule}.txt").read_text(encoding="utf-8")
    heads = list(_HEAD.finditer(text))
    ends = [head.start() for head in heads[1:]] + [len(text)]
    return [
        Case(
            rule,
            head[3],
            tuple(map(_place, head[2].split(" and "))) if head[2] else (),
            text[head.end() : end],
        )
        for head, end in zip(heads, ends, strict=True)
    ]


def _place(text: str) -> Cell | None:
    return None if text == "no place" else Cell(*map(int, text.replace("−", "-").split()))
