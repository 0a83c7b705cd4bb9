"""Networks for the finding rules, in ``tests/data/network_rules``, one file a rule.

Each begins with ``bad at Quay and Mill/East: what it shows``, with the first name of each finding, or with
``good: …``. They were judged by hand; the rules of networks are of this program's own making.
"""

from __future__ import annotations

import re
from pathlib import Path
from typing import Final, NamedTuple

CASES: Final = Path(__file__).parents[2] / "data" / "network_rules"

_HEAD: Final = re.compile(r"^(bad|good)(?: at (.+?))?: (.+)$", re.MULTILINE)


class Case(NamedTuple):
    """A network that must be flagged at just these names, or that must not be flagged."""

    rule: str
    shows: str
    names: tuple[str, ...]
    """The first of each finding; none for a good network."""
    text: str


def cases_of(rule: str) -> list[Case]:
    """The networks of one rule."""
    text = (CASES / f"{rule}.txt").read_text(encoding="utf-8")
    heads = list(_HEAD.finditer(text))
    ends = [head.start() for head in heads[1:]] + [len(text)]
    return [
        Case(rule, head[3], tuple(head[2].split(" and ")) if head[2] else (), text[head.end() : end])
        for head, end in zip(heads, ends, strict=True)
    ]
