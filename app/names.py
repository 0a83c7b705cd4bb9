"""The names of parts and groups for people, and what each part does, from ``resources/parts.json``.

No Qt here, so that the command line may use it.
"""

from __future__ import annotations

from functools import cache
from importlib.resources import files

import msgspec

from model.parts import Part


class _Names(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    groups: dict[str, str]
    parts: dict[Part, str]
    about: dict[Part, str]


@cache
def _names() -> _Names:
    return msgspec.json.decode(files("resources").joinpath("parts.json").read_bytes(), type=_Names)


def part_name(part: Part) -> str:
    """``Plain rail``."""
    return _names().parts[part]


def part_about(part: Part) -> str:
    """What the part does, in one sentence."""
    return _names().about[part]


def group_name(group: str) -> str:
    """``Track``: the heading of a group of the parts tray."""
    return _names().groups[group]
