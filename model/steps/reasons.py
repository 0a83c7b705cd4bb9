"""Why a step comes where it does, in words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from model.grid import Cell
from model.parts import CARRIERS
from model.pieces import Piece, rests_on
from model.steps.words import places
from model.track.layout import Layout
from model.wording import tr


def why_rails_wait(on: Cell, step: int) -> str:
    """For rails below a level that has been begun."""
    return tr(
        "Laid only after {on} (step {step:,}), so that all rails around come to lie as planned.",
        on=on,
        step=step,
    )


def why_signals_wait(touched: Sequence[Cell], near: Sequence[Cell], held_by: Sequence[Cell]) -> str:
    """For signal parts below a level that has been begun.

    They wait for the rails that they touch, for those laid in sight of such, or for what they hang from.
    """
    if touched:
        return tr(
            "Placed before {places}, a signal could reach the track while it is laid.", places=places(touched)
        )
    if near:
        return tr(
            "Placed before {places}, it could turn a rail beside while the track is laid.",
            places=places(near),
        )
    return tr("What it hangs from stands higher, at {places}.", places=places(held_by))


def why_uncarried(layout: Layout, pieces: Iterable[Piece]) -> Iterator[str]:
    """For pieces that need something under or behind them which the plan does not have."""
    missing = list(dict.fromkeys(cell for piece in pieces for cell in _missing(layout, piece)))
    if missing:
        yield tr("Nothing in the plan carries it at {places}.", places=places(missing))


def _missing(layout: Layout, piece: Piece) -> Iterator[Cell]:
    needed = [rests_on(piece)]
    shape = layout.shape(piece.at)
    if shape is not None and shape.rises_to is not None:
        needed.append(piece.at.step(shape.rises_to))
    part_at = layout.plan.pieces.part_at
    return (cell for cell in needed if cell is not None and part_at(cell) not in CARRIERS)
