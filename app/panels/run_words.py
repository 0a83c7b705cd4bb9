"""What a cell holds and does while a dry run is on, in words: what the plan view shows, for eyes and ears."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from app.canvas.run_log import with_load
from app.names import part_name
from app.translation import QT_TR_NOOP, tr
from model.dry_run import DryRun
from model.grid import Cell
from model.parts import RAILS, TRAITS, Part
from model.pieces import Piece
from model.signals.items import items_in

WORDS: Final = {
    Part.LEVER: (QT_TR_NOOP("off"), QT_TR_NOOP("on")),
    Part.BUTTON: (QT_TR_NOOP("not pressed"), QT_TR_NOOP("pressed")),
    Part.DETECTOR_RAIL: (QT_TR_NOOP("off"), QT_TR_NOOP("on")),
    Part.BOOSTER_RAIL: (QT_TR_NOOP("brakes"), QT_TR_NOOP("drives")),
    Part.LAMP: (QT_TR_NOOP("out"), QT_TR_NOOP("lit")),
}
"""Without and with a signal."""


def run_words(engine: DryRun, cell: Cell, unsure: bool) -> str:
    """The part, its state, and the carts on it."""
    piece = engine.plan.pieces.get(cell)
    if piece is None:
        return tr("nothing here")
    said = [part_name(piece.part).lower(), *_state(engine, piece)]
    if unsure:
        said.append(tr("unsure"))
    carts = (cart for cart in engine.carts if cart.at == cell)
    said += (with_load(tr("cart {cart}", cart=cart.cart), cart.carries) for cart in carts)
    return ", ".join(said)


def _state(engine: DryRun, piece: Piece) -> Iterator[str]:
    cell, part = piece.at, piece.part
    value = engine.output(cell)
    shape = engine.shape(cell)
    if shape is not None:
        yield tr(shape.word)
    if part in WORDS:
        yield tr(WORDS[part][value > 0])
    elif part is Part.TORCH:
        yield tr("lit") if value else tr("burnt out") if engine.is_burnt_out(cell) else tr("out")
    elif part is Part.DUST:
        yield tr("strength {value}", value=value)
    elif part is Part.REPEATER:
        yield tr("delay {delay} ticks, {words}", delay=piece.delay, words=tr("on") if value else tr("off"))
        if engine.is_locked(cell):
            yield tr("locked")
    elif part is Part.COMPARATOR:
        yield tr("{mode}, gives {strength}", mode=tr(piece.mode.value), strength=value)
    elif part in RAILS and value:
        yield tr("with a signal")
    if TRAITS[part].slots:
        yield tr(
            "{count} items, reads {reading}",
            count=items_in(engine.contents(cell)),
            reading=engine.reading(cell),
        )
    if part is Part.HOPPER and value:
        yield tr("stopped by its signal")
    power, strong = engine.block_power(cell)
    if power:
        yield (
            tr("strongly powered, {power}", power=power)
            if strong
            else tr("weakly powered, {power}", power=power)
        )
