"""What no edit may do: the limits of plans, each with a message for the user."""

from __future__ import annotations

from collections.abc import Iterable

from model.edits.names import item_problem, name_problem, text_problem
from model.edits.words import part_word
from model.grid import XZ_LIMIT, Y_HIGHEST, Y_LOWEST, Cell
from model.parts import DELAYS, STACK, TRAITS, Mode, Part
from model.pieces import Piece, slots_needed
from model.plan import ARM_LIMIT, PIECE_LIMIT, Arm
from model.wording import tr


class EditRefused(Exception):  # noqa: N818  # says what happened; nothing went wrong
    """An edit that cannot be made; its message says why, in words for the user."""


def check_cell(cell: Cell) -> None:
    """Raises EditRefused for a cell outside the limits of plans."""
    if not (abs(cell.x) <= XZ_LIMIT and abs(cell.z) <= XZ_LIMIT):
        raise EditRefused(
            tr(
                "{cell} is out of reach: x and z go from −{limit:,} to {limit:,}.",
                cell=cell,
                limit=XZ_LIMIT,
            )
        )
    if not Y_LOWEST <= cell.y <= Y_HIGHEST:
        raise EditRefused(
            tr(
                "{cell} is out of reach: levels go from −{lowest:,} to {highest:,}.",
                cell=cell,
                lowest=-Y_LOWEST,
                highest=Y_HIGHEST,
            )
        )


def check_piece(piece: Piece) -> None:
    """Raises EditRefused for a cell out of reach, or what the part cannot be, have or hold.

    Raises ValueError for a delay, a mode or wood on a part that has none, which no user can ask for.
    """
    check_cell(piece.at)
    if piece.facing not in TRAITS[piece.part].facings:
        raise EditRefused(
            tr("A {part} cannot point {facing}.", part=part_word(piece.part), facing=tr(piece.facing))
        )
    if piece.delay not in DELAYS:
        raise EditRefused(tr("A repeater's delay is 2, 4, 6 or 8 ticks, not {delay}.", delay=piece.delay))
    if piece.holds:
        _check_holds(piece)
    if _has_what_others_have(piece):
        raise ValueError(f"a {part_word(piece.part)} has no delay, mode or wood of its own")


def _has_what_others_have(piece: Piece) -> bool:
    return (
        (piece.delay != DELAYS[0] and piece.part is not Part.REPEATER)
        or (piece.mode is not Mode.COMPARE and piece.part is not Part.COMPARATOR)
        or (piece.wooden and piece.part is not Part.BUTTON)
    )


def _check_holds(piece: Piece) -> None:
    for held in piece.holds:
        _refuse(item_problem(held.item))
        if held.count < 1:
            raise EditRefused(tr("There cannot be {count} of an item.", count=held.count))
    slots = TRAITS[piece.part].slots
    if slots_needed(piece.holds) > slots:
        raise EditRefused(
            tr(
                "A {part} has {slots} slots of {stack} items.",
                part=part_word(piece.part),
                slots=slots,
                stack=STACK,
            )
        )


def check_piece_count(pieces: int) -> None:
    """Raises EditRefused when a plan would have more pieces than plans may."""
    if pieces > PIECE_LIMIT:
        raise EditRefused(tr("A plan takes {limit:,} pieces at most.", limit=PIECE_LIMIT))


def check_arm_count(arms: int) -> None:
    """Raises EditRefused when a plan would have more arms than plans may."""
    if arms > ARM_LIMIT:
        raise EditRefused(tr("A plan takes {limit:,} arms at most.", limit=ARM_LIMIT))


def check_arm(arm: Arm) -> None:
    """Raises EditRefused for a bad name, an arm with neither end, or an end out of reach."""
    check_name(arm.name)
    ends = [end for end in (arm.enter, arm.leave) if end is not None]
    if not ends:
        raise EditRefused(tr("The arm {arm} needs an in or an out.", arm=arm.name))
    for end in ends:
        check_cell(end.at)


def check_routes(routes: int) -> None:
    """Raises EditRefused when a plan would have more wanted routes than plans may: one an arm."""
    if routes > ARM_LIMIT:
        raise EditRefused(tr("A plan takes {limit:,} wanted routes at most.", limit=ARM_LIMIT))


def check_name(name: str) -> None:
    """Raises EditRefused for what cannot be the name of an arm or a waybill."""
    _refuse(name_problem(name))


def check_texts(texts: Iterable[str]) -> None:
    """Raises EditRefused for text that could not be written or drawn."""
    for text in texts:
        _refuse(text_problem(text))


def _refuse(problem: str | None) -> None:
    if problem is not None:
        raise EditRefused(problem)
