"""Where the carts of a dry run stand, and where between two cells."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final, NamedTuple

from app.canvas.symbols import Ground, draw_cart
from app.canvas.ways import pose
from model.dry_run import CartState, Drop, DryRun, Event
from model.grid import Cell, Heading
from model.track.carts import WAY_OUT
from model.track.layout import Layout
from model.track.rails import STEP, pack
from model.track.shapes import End

MIDDLE: Final = 0.5
"""Where a cart that is held or stopped stands, as a part of its cell."""
CELLS_A_TICK: Final = 0.4
"""How fast a cart rolls to the middle of the cell in which it is held."""


class PlacedCart(NamedTuple):
    """A cart to be drawn: its cell, its place from the middle of it, how it is turned, what it carries."""

    cell: Cell
    x: float
    z: float
    clockwise: float
    loaded: bool


class _Anchor(NamedTuple):
    """From where a cart goes on in its cell."""

    cell: Cell
    goes: int | None
    at: float
    part: float


class LiveCarts:
    """Places the carts smoothly, though the engine knows whole cells only."""

    def __init__(self, engine: DryRun, layout: Layout) -> None:
        self._engine = engine
        self._layout = layout
        self._anchors: dict[int, _Anchor] = {}

    def placed(self, now: float, pending: tuple[Event, ...], reduced: bool) -> tuple[PlacedCart, ...]:
        """All carts at a time in ticks; with reduced motion from cell to cell."""
        states = self._engine.carts
        known, self._anchors = self._anchors, {}
        found = []
        for cart in states:
            anchor = self._anchors[cart.cart] = _anchored(cart, known.get(cart.cart), now)
            found.append(self._place(cart.at, cart.heading, anchor, now, _is_loaded(cart.carries), reduced))
        for drop in pending:
            if isinstance(drop, Drop):
                still = _Anchor(drop.at, None, now, MIDDLE)
                found.append(self._place(drop.at, drop.heading, still, now, _is_loaded(drop.load), reduced))
        return tuple(found)

    def _place(
        self, cell: Cell, heading: Heading, anchor: _Anchor, now: float, loaded: bool, reduced: bool
    ) -> PlacedCart:
        shape = self._engine.shape(cell)
        assert shape is not None
        end = WAY_OUT[shape][heading]
        part = MIDDLE if reduced else _part(anchor, now)
        if self._is_stopped_at(cell, end):
            part = min(part, MIDDLE)
        return PlacedCart(cell, *pose(heading, end.heading, part), loaded)

    def _is_stopped_at(self, cell: Cell, end: End) -> bool:
        """Whether a block stands where a cart would leave."""
        return pack(cell) + STEP[end.heading] + end.rise in self._layout.stoppers


def paint_live_carts(ground: Ground, carts: Iterable[PlacedCart]) -> None:
    """The carts on the level shown."""
    for cart in carts:
        if cart.cell.y == ground.level and ground.size.c >= 2:
            at = ground.point(cart.cell, cart.x, cart.z)
            size, theme = ground.size, ground.theme
            draw_cart(ground.painter, at.x(), at.y(), size, cart.clockwise, theme, loaded=cart.loaded)


def _anchored(cart: CartState, known: _Anchor | None, now: float) -> _Anchor:
    """A cart that came goes on from the edge; one that is held or freed from where it is."""
    if known is None or known.cell != cart.at:
        return _Anchor(cart.at, cart.goes, cart.came, 0.0)
    if known.goes != cart.goes:
        return _Anchor(cart.at, cart.goes, now, _part(known, now))
    return known


def _part(anchor: _Anchor, now: float) -> float:
    """How far a cart has come in its cell, 0 to 1."""
    since = max(0.0, now - anchor.at)
    if anchor.goes is None:
        return max(anchor.part, min(MIDDLE, anchor.part + CELLS_A_TICK * since))
    whole = anchor.goes - anchor.at
    return 1.0 if whole <= 0 else min(1.0, anchor.part + (1 - anchor.part) * since / whole)


def _is_loaded(load: tuple[tuple[str, int], ...]) -> bool:
    return any(count for _, count in load)
