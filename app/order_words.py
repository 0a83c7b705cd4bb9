"""Build orders in words, the same on the command line and in the window."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from app.translation import tr
from model.grid import Turn

if TYPE_CHECKING:  # the planner takes long to import, and words must not wait for it
    from model.ordering import BuildOrder


def needs_words(order: BuildOrder) -> str:
    """``1 inverter, 4 thrown, 3 wired``; in words where the routes are not served."""
    if not order.served:
        return tr("not served")
    return tr(
        "{inverters}, {thrown:,} thrown, {wired:,} wired",
        inverters=tr("%n inverter(s)", "", order.inverters),
        thrown=order.thrown,
        wired=order.wired,
    )


def proof_words(order: BuildOrder) -> str:
    """Whether a better order is ruled out."""
    if order.served:
        return tr("no order is better") if order.proved else tr("not proved to be the best")
    return tr("no order serves all wanted routes") if order.proved else tr("no order that serves was found")


def order_words(order: BuildOrder) -> str:
    """What an order comes to, and whether a better one is ruled out."""
    needs = tr("served: {needs}", needs=needs_words(order)) if order.served else needs_words(order)
    return f"{needs}; {proof_words(order)}"


def cheapest(found: Mapping[Turn, BuildOrder]) -> tuple[Turn, ...]:
    """The orientations that are served with the least, in the order of their numbers; empty where none is."""
    served = {turn: order.cost for turn, order in found.items() if order.served}
    least = min(served.values(), default=None)
    return tuple(sorted((turn for turn in served if served[turn] == least), key=lambda turn: turn.number))
