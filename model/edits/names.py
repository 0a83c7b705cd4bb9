"""What names, items and other texts may be."""

from __future__ import annotations

import unicodedata
from typing import Final

from model.pieces import WAYBILL
from model.plan import NAME_LIMIT, TEXT_LIMIT
from model.wording import tr

NOT_IN_NAMES: Final = ",/"
"""Commas separate names on the command line, slashes separate a junction from its arm."""


def name_problem(name: str) -> str | None:
    """Why ``name`` cannot be the name of an arm or a waybill, in words for the user, or ``None``."""
    if not name:
        return tr("A name cannot be empty.")
    if len(name) > NAME_LIMIT:
        return tr("A name has {limit} characters at most.", limit=NAME_LIMIT)
    if any(letter in NOT_IN_NAMES for letter in name):
        return tr("A name takes no comma and no slash.")
    return text_problem(name)


def item_problem(item: str) -> str | None:
    """Why ``item`` cannot be held by a container, or ``None``."""
    if item.startswith(WAYBILL):
        return name_problem(item.removeprefix(WAYBILL))
    if not 1 <= len(item) <= len(WAYBILL) + NAME_LIMIT:
        return tr("An item has 1 to {limit} characters.", limit=len(WAYBILL) + NAME_LIMIT)
    return text_problem(item)


def text_problem(text: str) -> str | None:
    """Why ``text`` cannot stand in a plan, or ``None``.

    Control characters would break the drawings; half of a surrogate pair cannot be written as UTF-8.
    """
    if len(text) > TEXT_LIMIT:
        return tr("A text has {limit:,} characters at most.", limit=TEXT_LIMIT)
    if any(unicodedata.category(letter) in ("Cc", "Cs") for letter in text):
        return tr("Text takes no control characters.")
    return None
