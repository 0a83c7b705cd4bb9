"""The names of parts and groups for people, and what each part does, from ``resources/parts.json``.

No Qt here, so that the command line may use it.
"""

from __future__ import annotations

from functools import cache
from importlib.resources import files

import msgspec

from app.translation import tr
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
    return tr(_names().parts[part])


def part_about(part: Part) -> str:
    """What the part does, in one sentence."""
    return tr(_names().about[part])


def group_name(group: str) -> str:
    """``Track``: the heading of a group of the parts tray."""
    return tr(_names().groups[group])


def catalogue_texts() -> tuple[str, ...]:
    """All of these texts in English, to be translated."""
    names = _names()
    return (*names.groups.values(), *names.parts.values(), *names.about.values())
