"""What a cell holds and does while a dry run is on, in words: what the plan view shows, for eyes and ears."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from app.canvas.run_log import load_words
from app.names import part_name
from model.dry_run import DryRun
from model.grid import Cell
from model.parts import RAILS, TRAITS, Part
from model.pieces import Piece
from model.signals.items import items_in

WORDS: Final = {
    Part.LEVER: ("off", "on"),
    Part.BUTTON: ("not pressed", "pressed"),
    Part.DETECTOR_RAIL: ("off", "on"),
    Part.BOOSTER_RAIL: ("brakes", "drives"),
    Part.LAMP: ("out", "lit"),
}
"""Without and with a signal."""


def run_words(engine: DryRun, cell: Cell, unsure: bool) -> str:
    """The part, its state, and the carts on it."""
    piece = engine.plan.pieces.get(cell)
    if piece is None:
        return "nothing here"
    said = [part_name(piece.part).lower(), *_state(engine, piece)]
    if unsure:
        said.append("unsure")
    carts = (cart for cart in engine.carts if cart.at == cell)
    said += (f"cart {cart.cart}{load_words(cart.carries)}" for cart in carts)
    return ", ".join(said)


def _state(engine: DryRun, piece: Piece) -> Iterator[str]:
    cell, part = piece.at, piece.part
    value = engine.output(cell)
    shape = engine.shape(cell)
    if shape is not None:
        yield shape.word
    if part in WORDS:
        yield WORDS[part][value > 0]
    elif part is Part.TORCH:
        yield "lit" if value else "burnt out" if engine.is_burnt_out(cell) else "out"
    elif part is Part.DUST:
        yield f"strength {value}"
    elif part is Part.REPEATER:
        yield f"delay {piece.delay} ticks, {'on' if value else 'off'}"
        if engine.is_locked(cell):
            yield "locked"
    elif part is Part.COMPARATOR:
        yield f"{piece.mode.value}, gives {value}"
    elif part in RAILS and value:
        yield "with a signal"
    if TRAITS[part].slots:
        yield f"{items_in(engine.contents(cell))} items, reads {engine.reading(cell)}"
    if part is Part.HOPPER and value:
        yield "stopped by its signal"
    power, strong = engine.block_power(cell)
    if power:
        yield f"{'strongly' if strong else 'weakly'} powered, {power}"
