"""Colour laid over the sheet: the ways of the wanted routes as a wash under the track. It draws no line."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from app.canvas.symbols import Ground, WayKind, WayStep, paper, side_by_side, way_steps
from app.canvas.symbols.ways import wash_mark
from app.export.pencil import Pencil
from app.export.plan_picture import Window
from app.theme import Theme, theme
from app.translation import QT_TR_NOOP
from model.routing.junction import Junction

Washes = tuple[tuple[WayKind, tuple[WayStep, ...]], ...]
"""The steps of the ways of empty carts, and of called ones."""

COLOURED: Final = ("idle", "called", "error", "warning", "on_error", "on_warning", "wash")
"""The tokens that colour brings onto paper; all lines stay black."""
KEY: Final = QT_TR_NOOP("green: ways of empty carts \u00b7 purple: of called carts")


def sheet_theme(colour: bool) -> Theme:
    """The theme of the sheet; its lines are the same with and without colour."""
    bare, light = theme("print"), theme("light")
    return replace(bare, **{token: getattr(light, token) for token in COLOURED}) if colour else bare


def washes_of(junction: Junction) -> Washes:
    """The ways of all wanted routes; where empty and called carts pass, each has its side of the band."""
    by_kind: dict[bool, list[WayStep]] = {False: [], True: []}
    for route, way in junction.ways.items():
        arm = junction.plan.details.arm(route.start)
        if arm is not None and arm.enter is not None:
            by_kind[route.called] += way_steps(way.path, arm.enter.heading, way.heading, lambda _cell: False)
    idle, called = side_by_side(by_kind[False], by_kind[True])
    return (WayKind.IDLE, tuple(idle)), (WayKind.CALLED, tuple(called))


def draw_washes(pencil: Pencil, window: Window, level: int, washes: Washes) -> None:
    """The ways on a level, as far as the window shows them."""
    origin = window.corner(0, 0)
    ground = Ground(pencil.painter, origin.x(), origin.y(), paper(window.cell), pencil.theme, level)
    for kind, steps in washes:
        here = [step for step in steps if step.cell.y == level and window.holds(step.cell)]
        wash_mark(ground, here, kind).draw(ground.painter)
