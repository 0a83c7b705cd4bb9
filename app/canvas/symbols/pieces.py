"""A symbol for every part: as it is, as a hint of another level, as a ghost; and a cache of them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPixmap

from app.canvas.symbols.carriers import draw_carrier
from app.canvas.symbols.items import draw_auto_crafter, draw_barrel, draw_hopper
from app.canvas.symbols.lettering import width
from app.canvas.symbols.look import Look, Mark
from app.canvas.symbols.rails import draw_rail, draw_track
from app.canvas.symbols.signals import (
    draw_button,
    draw_comparator,
    draw_dust,
    draw_lamp,
    draw_lever,
    draw_repeater,
    draw_strength,
    draw_torch,
)
from app.canvas.symbols.size import Detail, Size, screen
from app.canvas.symbols.stage import OTHER_DASH, Manner, Stage
from app.theme import Theme
from model.parts import RAILS, Part

DRAWN_BY: Final[dict[Part, Callable[[Stage, Look], None]]] = {
    Part.RAIL: draw_rail,
    Part.BOOSTER_RAIL: draw_rail,
    Part.DETECTOR_RAIL: draw_rail,
    Part.SOLID_BLOCK: draw_carrier,
    Part.GLASS: draw_carrier,
    Part.SLAB: draw_carrier,
    Part.TARGET_BLOCK: draw_carrier,
    Part.DUST: draw_dust,
    Part.TORCH: draw_torch,
    Part.REPEATER: draw_repeater,
    Part.COMPARATOR: draw_comparator,
    Part.LEVER: draw_lever,
    Part.BUTTON: draw_button,
    Part.HOPPER: draw_hopper,
    Part.BARREL: draw_barrel,
    Part.AUTO_CRAFTER: draw_auto_crafter,
    Part.LAMP: draw_lamp,
}

TURNED: Final = frozenset(
    {Part.TORCH, Part.REPEATER, Part.COMPARATOR, Part.LEVER, Part.BUTTON, Part.HOPPER, Part.AUTO_CRAFTER}
)
"""Parts whose symbol turns with their facing; rails follow their shape, the rest has no direction."""

COARSE: Final = frozenset({Part.TORCH, Part.REPEATER, Part.COMPARATOR, Part.LEVER, Part.BUTTON})
"""Parts that become a small square where only lines are drawn."""

CACHE_SIZE: Final = 4096


def draw_piece(painter: QPainter, x: float, y: float, c: float, look: Look, theme: Theme) -> None:
    """The symbol with its north-west corner at (x, y), ``c`` px a cell, on a painter of a screen."""
    _on_screen(painter, x, y, c, look, theme, Manner.OWN)


def draw_ghost(
    painter: QPainter, x: float, y: float, c: float, look: Look, theme: Theme, *, blocked: bool = False
) -> None:
    """What a drag or a paste would make; a cross over it where the cell cannot take the piece."""
    _on_screen(painter, x, y, c, look, theme, Manner.GHOST)
    if look.part is Part.DUST:
        draw_strength(_stage(painter, x, y, c, theme), look.strength, theme.ink2)
        painter.restore()
    if blocked:
        draw_cross(painter, x, y, c, theme)


def draw_cross(painter: QPainter, x: float, y: float, c: float, theme: Theme) -> None:
    """The narrow cross over a cell that cannot take a piece, or that loses its own."""
    stage = _stage(painter, x, y, c, theme)
    for side in (-0.3, 0.3):
        stage.line([(0.2, 0.5 - side), (0.8, 0.5 + side)], theme.ink, stage.size.narrow)
    painter.restore()


def draw_former(painter: QPainter, x: float, y: float, c: float, look: Look, theme: Theme) -> None:
    """A piece as it was: a rail as the other state of a switch is drawn, another part as a ghost."""
    if look.shape is None:
        draw_ghost(painter, x, y, c, look, theme)
        return
    stage = _stage(painter, x, y, c, theme)
    draw_track(stage, look.shape, theme.ink2, stage.size.narrow, None if stage.size.is_small else OTHER_DASH)
    painter.restore()


def draw_ghost_hint(
    painter: QPainter, x: float, y: float, c: float, look: Look, theme: Theme, *, below: bool
) -> None:
    """The same on the level below the one shown, or on the one above."""
    _on_screen(painter, x, y, c, look, theme, Manner.BELOW if below else Manner.ABOVE)


def draw_over(painter: QPainter, x: float, y: float, c: float, look: Look, theme: Theme) -> None:
    """A rail as a ghost that lies over what it crosses: paper inside it and beside it."""
    stage = _stage(painter, x, y, c, theme)
    if look.shape is not None and stage.size.detail is not Detail.DOT:
        draw_track(stage, look.shape, theme.paper, stage.size.wide + 4 * stage.size.narrow)
    painter.restore()
    draw_ghost(painter, x, y, c, look, theme)


@lru_cache(maxsize=CACHE_SIZE)
def symbol_pixmap(look: Look, c: int, ratio: float, theme: Theme, manner: Manner = Manner.OWN) -> QPixmap:
    """The symbol on a transparent ground, ``c`` px wide at that device pixel ratio; drawn once, then kept."""
    size = screen(c, ratio)
    pixmap = QPixmap(int(size.c), int(size.c))
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    paint(Stage(painter, 0, 0, size, theme, manner), look)
    painter.end()
    pixmap.setDevicePixelRatio(ratio)
    return pixmap


def paint(stage: Stage, look: Look) -> None:
    """The symbol on a stage: the one way in which every piece is drawn, on screen and on paper."""
    if stage.size.detail is Detail.DOT:
        stage.block(0, 0, 1, 1, stage.theme.ink if look.part in RAILS else stage.theme.dim)
        return
    stage.smooth()
    heading = look.facing.heading
    turned = stage.facing(heading) if look.part in TURNED and heading is not None else stage
    if look.mark is Mark.UNSURE:
        # Whether it is on is what nobody can say.
        turned, look = replace(turned, dashed=True), replace(look, on=False, locked=False, powered=False)
    if turned.size.detail is Detail.LINES and look.part in COARSE:
        _draw_coarse(turned, look)
    else:
        DRAWN_BY[look.part](turned, look)
    if stage.size.detail >= Detail.STRENGTHS and not stage.is_hint:
        _draw_figure(stage, look)


def _draw_figure(stage: Stage, look: Look) -> None:
    """What is counted in a container, or the mark of a part that has no figure of its own; on paper."""
    if look.mark is not None and look.power is None:
        said: str = look.mark
    elif look.count is not None:
        said = str(look.count)
    else:
        return
    em, right, y = 0.23, 0.96, 0.2
    wide = width(said, em) + 0.06
    stage.block(right - wide, y - 0.13, right, y + 0.13, stage.theme.paper)
    stage.text((right - wide / 2, y), said, em, stage.theme.ink)


def _draw_coarse(stage: Stage, look: Look) -> None:
    theme = stage.theme
    colour, fill = (theme.live, theme.live) if look.on else (theme.ink, theme.paper)
    stage.box(0.25, 0.25, 0.75, 0.75, colour, fill)


def _on_screen(
    painter: QPainter, x: float, y: float, c: float, look: Look, theme: Theme, manner: Manner
) -> None:
    paint(replace(_stage(painter, x, y, c, theme), manner=manner), look)
    painter.restore()


def _stage(painter: QPainter, x: float, y: float, c: float, theme: Theme) -> Stage:
    """A stage in device pixels at a place in px; the painter is saved and must be restored."""
    ratio = painter.device().devicePixelRatio()
    size: Size = screen(c, ratio)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    painter.translate(x, y)
    painter.scale(1 / ratio, 1 / ratio)
    return Stage(painter, 0, 0, size, theme)
