"""Signal parts: dust, torches, repeater, comparator, lever, button, lamp.

Logic outlines after IEC 60617-12 (from memory).
"""

from __future__ import annotations

from PySide6.QtGui import QColor

from app.canvas.symbols.look import Look
from app.canvas.symbols.size import Detail
from app.canvas.symbols.stage import Stage
from model.grid import Facing, Heading
from model.parts import Mode


def draw_dust(stage: Stage, look: Look) -> None:
    """Lines to the linked edges, and in the middle a circle, filled when there is a signal."""
    theme, size = stage.theme, stage.size
    on = bool(look.strength)
    colour = theme.live if on else theme.ink2
    for heading in sorted(look.links):
        stage.facing(heading).line([(0.5, 0.5), (0.5, 0)], colour, size.narrow)
    _draw_middle(stage, on, colour)
    if look.mark is None:
        draw_strength(stage, look.strength, colour)


def draw_strength(stage: Stage, strength: int | None, colour: QColor) -> None:
    """The figure of a dust, where there is room."""
    if strength is not None and stage.size.detail >= Detail.STRENGTHS:
        stage.text((0.79, 0.24), str(strength), 0.23, colour, widest=0.36)


def _draw_middle(stage: Stage, on: bool, colour: QColor) -> None:
    size = stage.size
    if stage.is_hint:
        stage.dot((0.5, 0.5), 0.085, colour, on_width=size.narrow)
    elif on:
        stage.dot((0.5, 0.5), 0.21 if size.is_small else 0.085, colour)
    else:
        stage.circle((0.5, 0.5), 0.095, colour, stage.theme.paper, on_width=size.narrow)


def draw_torch(stage: Stage, look: Look) -> None:
    """The gate with its negation circle, seen from above or from the side."""
    colour = stage.theme.live if look.on else stage.theme.ink
    fill = stage.theme.live if look.on else stage.theme.paper
    if look.facing in (Facing.UP, Facing.DOWN):
        near, r = (0.14, 0.20) if stage.size.is_small else (0.22, 0.15)
        stage.box(near, near, 1 - near, 1 - near, colour, stage.theme.paper)
        _draw_negation(stage, (0.5, 0.5), r, colour, fill, look)
        return
    top, y, r = (0.70, 0.44, 0.20) if stage.size.is_small else (0.58, 0.47, 0.105)
    stage.line([(0.5, 0), (0.5, y)], colour, stage.size.narrow)
    stage.box(0.24, top, 0.76, 0.97, colour, stage.theme.paper)
    _draw_negation(stage, (0.5, y), r, colour, fill, look)
    if stage.size.side_gate_figures:
        stage.text((0.5, 0.775), "1", 0.25, colour)


def _draw_negation(
    stage: Stage, centre: tuple[float, float], r: float, colour: QColor, fill: QColor, look: Look
) -> None:
    stage.circle(centre, r, colour, fill)
    if look.burnt:
        x, y = centre
        reach = (1.8 if stage.size.is_small else 1.5) * r
        width = stage.size.wide if stage.size.is_small else stage.size.narrow
        stage.line([(x - reach, y + reach), (x + reach, y - reach)], colour, width)


def draw_repeater(stage: Stage, look: Look) -> None:
    """A triangle with stubs and its delay; a bar across the output while it is locked."""
    theme, size = stage.theme, stage.size
    colour = theme.live if look.on else theme.ink
    stage.line([(0.5, 0), (0.5, 0.16)], colour, size.narrow)
    stage.line([(0.5, 0.82), (0.5, 1)], colour, size.narrow)
    triangle = ((0.17, 0.82), (0.83, 0.82), (0.5, 0.16))
    stage.polygon(triangle, colour, theme.live if look.on else theme.paper)
    if look.locked:
        near = 0.17 if size.is_small else 0.30
        stage.line([(near, 0.10), (1 - near, 0.10)], colour, size.wide)
    if size.detail >= Detail.FIGURES:
        stage.text((0.5, 0.62), str(look.delay), 0.25, theme.on_live if look.on else theme.ink, bold=True)


def draw_comparator(stage: Stage, look: Look) -> None:
    """A box with three inputs, an output head, and what it does written in it as strokes."""
    theme, size = stage.theme, stage.size
    colour = theme.live if look.on else theme.ink
    for stub in (((0.5, 0.86), (0.5, 1)), ((0, 0.54), (0.15, 0.54)), ((0.85, 0.54), (1, 0.54))):
        stage.line(stub, colour, size.narrow)
    stage.box(0.15, 0.24, 0.85, 0.86, colour, theme.live if look.on else theme.paper)
    stage.polygon(((0.36, 0.24), (0.64, 0.24), (0.5, 0.04)), None, colour)
    if not stage.is_hint and size.detail > Detail.LINES:
        _draw_mode(stage, look.mode, theme.on_live if look.on else theme.ink)


def _draw_mode(stage: Stage, mode: Mode, colour: QColor) -> None:
    """≥ or − upright in the middle of the box, wherever that is turned to."""
    stroke = min(stage.size.wide, 0.08 * stage.size.c) if not stage.size.is_small else stage.size.narrow
    upright = stage.facing(Heading.NORTH)
    away = ((0.0, 0.05), (-0.05, 0.0), (0.0, -0.05), (0.05, 0.0))[stage.quarter]
    x, y = 0.5 + away[0], 0.5 + away[1]
    if mode is Mode.SUBTRACT:
        reach = 0.24 if stage.size.is_small else 0.16
        upright.line([(x - reach, y), (x + reach, y)], colour, stroke)
    elif stage.size.is_small:
        upright.line([(x - 0.15, y - 0.22), (x + 0.17, y), (x - 0.15, y + 0.22)], colour, stroke)
    else:
        upright.line([(x - 0.13, y - 0.17), (x + 0.14, y - 0.04), (x - 0.13, y + 0.09)], colour, stroke)
        upright.line([(x - 0.13, y + 0.19), (x + 0.13, y + 0.19)], colour, stroke)


def draw_lever(stage: Stage, look: Look) -> None:
    """A switch between two contacts: the arm raised off, on both contacts on."""
    colour = stage.theme.live if look.on else stage.theme.ink
    _draw_mounting(stage, look.facing, colour)
    if look.on:
        stage.line([(0.20, 0.62), (0.80, 0.62)], colour, stage.size.wide)
    else:
        stage.line([(0.20, 0.62), (0.72, 0.22)], colour, stage.size.wide)
    _draw_contacts(stage, look.on, colour)


def draw_button(stage: Stage, look: Look) -> None:
    """A bar above two contacts, down on them while pressed."""
    colour = stage.theme.live if look.on else stage.theme.ink
    bar = 0.62 if look.on else 0.42
    _draw_mounting(stage, look.facing, colour)
    _draw_contacts(stage, look.on, colour)
    stage.line([(0.5, bar - 0.24), (0.5, bar)], colour, stage.size.narrow)
    stage.line([(0.16, bar), (0.84, bar)], colour, stage.size.wide)
    stage.line([(0.36, bar - 0.24), (0.64, bar - 0.24)], colour, stage.size.wide)


def _draw_contacts(stage: Stage, on: bool, colour: QColor) -> None:
    for x, outer in ((0.20, 0.04), (0.80, 0.96)):
        stage.line([(outer, 0.62), (x, 0.62)], colour, stage.size.narrow)
        stage.circle((x, 0.62), 0.085, colour, colour if on else stage.theme.paper)


def _draw_mounting(stage: Stage, facing: Facing, colour: QColor) -> None:
    """The face of the block that holds it: behind it on a wall, above it when it hangs."""
    if facing is Facing.UP or stage.is_hint:
        return
    y = 0.06 if facing is Facing.DOWN else 0.92
    stage.line([(0.12, y), (0.88, y)], colour, stage.size.narrow)


def draw_lamp(stage: Stage, look: Look) -> None:
    """A circle with a cross, filled when lit."""
    theme, reach = stage.theme, 0.34 * 0.7071
    colour = theme.live if look.on else theme.ink
    stage.circle((0.5, 0.5), 0.34, colour, theme.live if look.on else theme.paper)
    if stage.is_hint or stage.size.detail <= Detail.LINES:
        return
    cross = theme.on_live if look.on else theme.ink
    for side in (-reach, reach):
        stage.line([(0.5 - reach, 0.5 - side), (0.5 + reach, 0.5 + side)], cross, stage.size.narrow)
