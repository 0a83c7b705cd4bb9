"""The names of parts and groups for people, from ``resources/parts.json``.

No Qt here, so that the command line may use it.
"""

from __future__ import annotations

from functools import cache
from importlib.resources import files

import msgspec

from model.parts import Part


class PartName(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """A part's name at the head of a row, and inside a sentence after a number above one."""

    one: str
    many: str


class Names(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """All names of the file."""

    groups: dict[str, str]
    parts: dict[Part, PartName]


@cache
def names() -> Names:
    """The names as the file gives them."""
    return msgspec.json.decode(files("resources").joinpath("parts.json").read_bytes(), type=Names)


def part_name(part: Part) -> str:
    """``Plain rail``."""
    return names().parts[part].one


def counted(part: Part, pieces: int) -> str:
    """``1 plain rail``, ``3 plain rails``."""
    name = names().parts[part]
    return f"{pieces} {name.one.lower() if pieces == 1 else name.many}"


def group_name(group: str) -> str:
    """``Track``: the heading of a group of the parts tray."""
    return names().groups[group]
