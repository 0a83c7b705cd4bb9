"""Words that the messages of several rules share."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from model.grid import Cell
from model.routing.control import WantedRoute
from model.track.carts import Outcome, Way
from model.wording import from_to, tr


def listed(words: Iterable[str]) -> str:
    """``Quay``, ``Quay and Mill``, ``Quay, Mill and Fen``; each word once."""
    *first, last = dict.fromkeys(words)
    return tr("{first} and {last}", first=", ".join(first), last=last) if first else last


def places(cells: Sequence[Cell], at_most: int = 3) -> str:
    """The cells, or the first of them and how many more there are."""
    shown = [str(cell) for cell in cells[:at_most]]
    more = len(cells) - len(shown)
    return listed(shown) if more == 0 else tr("{shown} and {more:,} more", shown=", ".join(shown), more=more)


def route_name(route: WantedRoute) -> str:
    """``Quay → Mill``."""
    return from_to(route.start, route.goal)


def cart_name(route: WantedRoute) -> str:
    """Which cart takes a wanted route, as the start of a sentence."""
    return (
        tr("A called cart from {start}", start=route.start)
        if route.called
        else tr("An empty cart from {start}", start=route.start)
    )


def arm_names(routes: Iterable[WantedRoute]) -> tuple[str, ...]:
    """The arms between which the routes run, each once."""
    return tuple(dict.fromkeys(name for route in routes for name in (route.start, route.goal)))


def holding(arm: str | None) -> str:
    """A setting: ``while no reader holds``, ``while the reader of Quay holds``."""
    return tr("while no reader holds") if arm is None else tr("while the reader of {arm} holds", arm=arm)


def ending(way: Way) -> str:
    """What becomes of a cart, as the rest of a sentence about it."""
    last = way.path[-1]
    match way.outcome:
        case Outcome.ARM:
            return tr("leaves by {arm}", arm=way.arm)
        case Outcome.LEAVES_TRACK:
            return tr("runs off the track at {last}", last=last)
        case Outcome.STOPPED:
            return tr("runs into a block at {last}", last=last)
        case Outcome.LOOPS:
            return tr("goes round without end past {last}", last=last)
