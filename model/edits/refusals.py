"""What no edit may do: the limits of plans, each with a message for the user."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from typing import Final

from model.edits.words import part_word
from model.grid import XZ_LIMIT, Y_HIGHEST, Y_LOWEST, Cell
from model.parts import DELAYS, TRAITS
from model.pieces import Piece
from model.plan import ARM_LIMIT, NAME_LIMIT, PIECE_LIMIT, Arm

NOT_IN_NAMES: Final = ",/"
"""Commas separate names on the command line, slashes separate a junction from its arm."""


class EditRefused(Exception):  # noqa: N818  # says what happened; nothing went wrong
    """An edit that cannot be made; its message says why, in words for the user."""


def check_cell(cell: Cell) -> None:
    """Raises EditRefused for a cell outside the limits of plans."""
    if not (abs(cell.x) <= XZ_LIMIT and abs(cell.z) <= XZ_LIMIT):
        raise EditRefused(f"{cell} is out of reach: x and z go from −{XZ_LIMIT:,} to {XZ_LIMIT:,}.")
    if not Y_LOWEST <= cell.y <= Y_HIGHEST:
        raise EditRefused(f"{cell} is out of reach: levels go from −{-Y_LOWEST:,} to {Y_HIGHEST:,}.")


def check_piece(piece: Piece) -> None:
    """Raises EditRefused for a cell out of reach, a facing that the part cannot have, or an unknown delay."""
    check_cell(piece.at)
    if piece.facing not in TRAITS[piece.part].facings:
        raise EditRefused(f"A {part_word(piece.part)} cannot point {piece.facing}.")
    if piece.delay not in DELAYS:
        raise EditRefused(f"A repeater's delay is 2, 4, 6 or 8 ticks, not {piece.delay}.")


def check_piece_count(pieces: int) -> None:
    """Raises EditRefused when a plan would have more pieces than plans may."""
    if pieces > PIECE_LIMIT:
        raise EditRefused(f"A plan takes {PIECE_LIMIT:,} pieces at most.")


def check_arm_count(arms: int) -> None:
    """Raises EditRefused when a plan would have more arms than plans may."""
    if arms > ARM_LIMIT:
        raise EditRefused(f"A plan takes {ARM_LIMIT:,} arms at most.")


def check_arm(arm: Arm) -> None:
    """Raises EditRefused for a bad name, an arm with neither end, or an end out of reach."""
    check_name(arm.name)
    ends = [end for end in (arm.enter, arm.leave) if end is not None]
    if not ends:
        raise EditRefused(f"The arm {arm.name} needs an in or an out.")
    for end in ends:
        check_cell(end.at)


def check_name(name: str) -> None:
    """Raises EditRefused for what cannot be the name of an arm or a waybill."""
    problem = name_problem(name)
    if problem is not None:
        raise EditRefused(problem)


def name_problem(name: str) -> str | None:
    """Why ``name`` cannot be the name of an arm or a waybill, or ``None``."""
    if not name:
        return "A name cannot be empty."
    if len(name) > NAME_LIMIT:
        return f"A name has {NAME_LIMIT} characters at most."
    if any(letter in NOT_IN_NAMES for letter in name):
        return "A name takes no comma and no slash."
    return text_problem(name)


def check_texts(texts: Iterable[str]) -> None:
    """Raises EditRefused for text that could not be written or drawn."""
    for text in texts:
        problem = text_problem(text)
        if problem is not None:
            raise EditRefused(problem)


def text_problem(text: str) -> str | None:
    """Why ``text`` cannot stand in a plan, or ``None``.

    Control characters would break the drawings; half of a surrogate pair cannot be written as UTF-8.
    """
    if any(unicodedata.category(letter) in ("Cc", "Cs") for letter in text):
        return "Text takes no control characters."
    return None
