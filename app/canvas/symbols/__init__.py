"""Every symbol of the program: one place for canvas, tray, tables and sheet.

Geometry is in fractions of a cell. A ``Size`` from ``screen(c, ratio)`` or ``paper(mm)`` says how wide lines
are and how much detail is shown; places are in the painter's units.
"""

from app.canvas.symbols.carts import draw_cart
from app.canvas.symbols.look import Look, Mark, look_of
from app.canvas.symbols.markers import draw_marker
from app.canvas.symbols.pieces import (
    draw_cross,
    draw_former,
    draw_ghost,
    draw_ghost_hint,
    draw_over,
    draw_piece,
    paint,
    symbol_pixmap,
)
from app.canvas.symbols.selection import Ring, draw_cursor, draw_ring, ring_of
from app.canvas.symbols.signs import draw_inverter_gate, draw_mirror_mark, draw_north
from app.canvas.symbols.size import Size, paper, screen
from app.canvas.symbols.stage import Manner, Stage
from app.canvas.symbols.tags import Way, draw_arm_tag, draw_joined_tag, joined_tag_rect, tag_rect, tag_size
from app.canvas.symbols.ways import Ground, WayKind, WayStep, draw_chevrons, draw_way, side_by_side, way_steps

__all__ = [
    "Ground",
    "Look",
    "Manner",
    "Mark",
    "Ring",
    "Size",
    "Stage",
    "Way",
    "WayKind",
    "WayStep",
    "draw_arm_tag",
    "draw_cart",
    "draw_chevrons",
    "draw_cross",
    "draw_cursor",
    "draw_former",
    "draw_ghost",
    "draw_ghost_hint",
    "draw_inverter_gate",
    "draw_joined_tag",
    "draw_marker",
    "draw_mirror_mark",
    "draw_north",
    "draw_over",
    "draw_piece",
    "draw_ring",
    "draw_way",
    "joined_tag_rect",
    "look_of",
    "paint",
    "paper",
    "ring_of",
    "screen",
    "side_by_side",
    "symbol_pixmap",
    "tag_rect",
    "tag_size",
    "way_steps",
]
