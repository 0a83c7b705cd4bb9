"""What is said of carts that went astray in a run of the proof, and of a run with what went wrong in it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, NamedTuple

from model.dry_run import Why
from model.grid import Cell
from model.rules.words import listed
from model.wording import QT_TR_NOOP, tr


class Astray(NamedTuple):
    """What became of carts, for each number of them, since verbs change with it in most languages."""

    alone: str
    """The only cart of its train."""
    one: str
    several: str


LOST: Final = {
    Why.LEAVES_TRACK: Astray(
        QT_TR_NOOP("the cart left the track at {cell}"),
        QT_TR_NOOP("cart {carts} left the track at {cell}"),
        QT_TR_NOOP("carts {carts} left the track at {cell}"),
    ),
    Why.STOPPED: Astray(
        QT_TR_NOOP("the cart was stopped by a block at {cell}"),
        QT_TR_NOOP("cart {carts} was stopped by a block at {cell}"),
        QT_TR_NOOP("carts {carts} were stopped by a block at {cell}"),
    ),
    Why.COLLISION: Astray(
        QT_TR_NOOP("the cart ran into another at {cell}"),
        QT_TR_NOOP("cart {carts} ran into another at {cell}"),
        QT_TR_NOOP("carts {carts} ran into another at {cell}"),
    ),
    Why.RUNNING: Astray(
        QT_TR_NOOP("the cart got no further at {cell}"),
        QT_TR_NOOP("cart {carts} got no further at {cell}"),
        QT_TR_NOOP("carts {carts} got no further at {cell}"),
    ),
}
ELSEWHERE: Final = Astray(
    QT_TR_NOOP("the cart came to {arm}, not to {goal}"),
    QT_TR_NOOP("cart {carts} came to {arm}, not to {goal}"),
    QT_TR_NOOP("carts {carts} came to {arm}, not to {goal}"),
)


def lost_words(why: Why, cell: Cell, carts: Sequence[int], of: int) -> str:
    """Carts that were lost in a cell: their places in a train of so many, from 0."""
    return tr(_form(LOST[why], carts, of), carts=_numbers(carts), cell=cell)


def elsewhere_words(arm: str, goal: str, carts: Sequence[int], of: int) -> str:
    """Carts that came to the wrong arm: their places in a train of so many, from 0."""
    return tr(_form(ELSEWHERE, carts, of), carts=_numbers(carts), arm=arm, goal=goal)


def _form(words: Astray, carts: Sequence[int], of: int) -> str:
    if of == 1:
        return words.alone
    return words.one if len(carts) == 1 else words.several


def _numbers(carts: Sequence[int]) -> str:
    return listed(str(cart + 1) for cart in sorted(carts))
