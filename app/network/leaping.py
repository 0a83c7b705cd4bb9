"""Where the keyboard's cursor comes from one station or junction to the next. No Qt here."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from model.grid import VECTORS, Heading
from model.network.network import Spot

LEAST: Final = 0.75
"""Squares ahead from which a thing is not that on which the cursor stands."""
ASIDE: Final = 2.0
"""How much further a square to the side counts than one ahead."""


def next_spot(spots: Iterable[Spot], at: Spot, heading: Heading) -> Spot | None:
    """The nearest spot in the quarter that lies that way, so that four headings miss none; or ``None``."""
    ahead = [(far, spot) for spot in spots if (far := _distance(at, spot, heading)) is not None]
    return min(ahead)[1] if ahead else None


def _distance(at: Spot, spot: Spot, heading: Heading) -> float | None:
    vx, vy = VECTORS[heading]
    dx, dy = spot[0] - at[0], spot[1] - at[1]
    along, aside = dx * vx + dy * vy, abs(dx * vy - dy * vx)
    return along + ASIDE * aside if along >= LEAST and aside <= along else None
