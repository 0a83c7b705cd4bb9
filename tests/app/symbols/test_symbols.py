"""What the symbols must keep: told apart when small, inside their cell, turned as their part is turned.

The bounds (12 px, grey 176, 8 pixels) are the project's own; no outside source.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage, QTransform

from app.canvas.symbols import Look, Manner, screen, symbol_pixmap
from app.canvas.symbols.pieces import DRAWN_BY
from app.canvas.symbols.rails import free_side
from app.theme import theme
from model.grid import ALL_TURNS, Facing, Heading, Turn
from model.parts import RAILS, Part
from model.track.shapes import Shape
from tests.app.symbols.looks import LOOKS, SWITCH, THROWN
from tests.app.symbols.pictures import drawn, grey, pixels

pytestmark = pytest.mark.usefixtures("qapp")


def test_every_part_has_a_symbol_and_stands_in_the_table() -> None:
    assert set(DRAWN_BY) == set(Part)
    assert {look.part for look in LOOKS.values()} == set(Part)


@pytest.mark.parametrize("name", ["light", "print"])
def test_any_two_symbols_and_states_differ_at_12_px_in_one_bit(name: str) -> None:
    of = theme(name)
    bits = {key: grey(drawn(look, 12, of, ground=of.paper)) < 176 for key, look in LOOKS.items()}
    close = {
        (a, b): int((bits[a] != bits[b]).sum())
        for a, b in combinations(bits, 2)
        if (bits[a] != bits[b]).sum() < 8
    }
    assert not close


@pytest.mark.parametrize("c", [12, 16, 24, 32, 48, 96])
@pytest.mark.parametrize("key", LOOKS)
def test_no_symbol_paints_outside_its_cell(key: str, c: int) -> None:
    margin = 8
    alpha = pixels(drawn(LOOKS[key], c, theme("light"), margin))[:, :, 3]
    inside = alpha[margin:-margin, margin:-margin].copy()
    alpha[margin:-margin, margin:-margin] = 0
    assert inside.any()
    assert alpha.max() <= TRACE, np.argwhere(alpha > TRACE)


TRACE = 20
"""Of 255: what the rasteriser may leave beyond the square end of a dash, too pale to be seen."""


TURNABLE = [
    key
    for key, look in LOOKS.items()
    if look.part in (*RAILS, Part.DUST, Part.REPEATER, Part.COMPARATOR, Part.HOPPER)
    or (look.part in (Part.TORCH, Part.AUTO_CRAFTER) and look.facing.heading is not None)
]
"""All that has a direction, but levers and buttons: these stand on a block or hang, and are no way round."""


TURNS = [(key, turn) for key in TURNABLE for turn in ALL_TURNS if not (turn.mirror and LOOKS[key].burnt)]
"""The stroke through a burnt out torch rises to the same side in a mirrored plan."""


@pytest.mark.parametrize(("key", "turn"), TURNS, ids=lambda value: str(getattr(value, "number", value)))
def test_turned_piece_has_the_turned_picture(key: str, turn: Turn, monkeypatch: pytest.MonkeyPatch) -> None:
    """At 48 px, where every width is even; letters apart, which are never turned."""
    monkeypatch.setattr("app.canvas.symbols.stage.draw_centred", lambda *_args, **_more: None)
    monkeypatch.setattr("app.canvas.symbols.signals._draw_mode", lambda *_args: None)
    look, of = LOOKS[key], theme("light")
    straight = QTransform().rotate(90 * turn.quarter)
    picture = drawn(look, 48, of, ground=of.paper)
    if turn.mirror:
        picture = picture.flipped(Qt.Orientation.Horizontal)
    expected = grey(picture.transformed(straight)).astype(int)
    got = grey(drawn(turned(look, turn), 48, of, ground=of.paper)).astype(int)
    off = np.abs(expected - got)
    assert off.max() <= ROUNDING, (off.max(), np.argwhere(off > ROUNDING)[:5])


ROUNDING = 60
"""Grey steps by which smoothed edges may differ: the rasteriser rounds to sixteenths of a pixel."""


def turned(look: Look, turn: Turn) -> Look:
    """The same piece in a turned plan."""
    return replace(
        look,
        facing=turn.facing(look.facing),
        shape=turned_shape(look.shape, turn),
        other_shape=turned_shape(look.other_shape, turn),
        links=frozenset(turn.heading(link) for link in look.links),
        run_through=tuple(turned_shape(shape, turn) for shape in look.run_through),
    )


def turned_shape(shape: Shape | None, turn: Turn) -> Shape | None:
    """The shape with the same ends, each turned."""
    if shape is None:
        return None
    ends = {(turn.heading(end.heading), end.rise) for end in shape.ends}
    return next(other for other in Shape if {tuple(end) for end in other.ends} == ends)


def test_ways_to_hold_a_lever_differ() -> None:
    of = theme("light")
    pictures = [grey(drawn(Look(Part.LEVER, facing), 48, of, ground=of.paper)) for facing in Facing]
    assert all((a != b).sum() >= 8 for a, b in combinations(pictures, 2))


def test_switch_at_rest_and_powered_in_pixels() -> None:
    """The present curve is wide and unbroken, its drive open or filled (48 px: wide lines are 4 px)."""
    of = theme("light")
    rest, thrown = (drawn(look, 48, of, ground=of.paper) for look in (SWITCH, THROWN))
    south, north = (23, 47), (23, 0)
    drive = (5, 24)
    assert rest.pixelColor(*south) == of.ink
    assert thrown.pixelColor(*north) == of.live
    assert rest.pixelColor(*drive) == of.paper
    assert thrown.pixelColor(*drive) == of.live
    assert dark_across(rest, 47) == 4
    assert dark_across(thrown, 0) == 4
    assert dark_across(rest, 0) <= 2
    assert dark_across(thrown, 47) <= 2


def dark_across(image: QImage, y: int) -> int:
    """How many pixels of a row are dark."""
    return int((grey(image)[y] < 176).sum())


def test_drive_stands_on_the_side_that_belongs_to_neither_shape() -> None:
    assert free_side(Shape.SOUTH_EAST, Shape.NORTH_EAST) is Heading.WEST
    assert free_side(Shape.SOUTH_EAST, Shape.SOUTH_WEST) is Heading.NORTH
    assert free_side(Shape.NORTH_EAST, Shape.NORTH_WEST) is Heading.SOUTH
    assert free_side(Shape.SOUTH_WEST, Shape.NORTH_WEST) is Heading.EAST


@pytest.mark.parametrize("c", [24, 48, 96])
def test_wide_lines_are_twice_as_wide_as_narrow_ones(c: int) -> None:
    """2:1 after ISO 128 (from memory)."""
    of = theme("print")
    rail = drawn(LOOKS["straight"], c, of, ground=of.paper)
    dust = drawn(Look(Part.DUST, links=frozenset({Heading.NORTH})), c, of, ground=of.paper)
    assert dark_across(rail, 1) == 2 * dark_across(dust, 1) == max(2, round(c / 12))


@pytest.mark.parametrize("ratio", [1.25, 1.5, 1.75, 2.0])
def test_fractional_scaling_keeps_track_on_whole_pixels(ratio: float) -> None:
    size = screen(48, ratio)
    assert size.wide == 2 * size.narrow
    assert size.wide == int(size.wide)
    middle = size.line(size.c / 2, size.wide)
    assert (middle - size.wide / 2) == int(middle - size.wide / 2)


def test_straight_track_meets_a_curve_at_every_zoom() -> None:
    """The same pixels are dark on both sides of the edge that a straight and a curve share."""
    of = theme("print")
    for c in (8, 12, 16, 24, 32, 48, 64, 96):
        straight = grey(drawn(LOOKS["straight"], c, of, ground=of.paper))
        curve = grey(drawn(LOOKS["curve"], c, of, ground=of.paper))
        dark = np.flatnonzero(straight[0] < 100)
        assert set(dark) == set(np.flatnonzero(curve[-1] < 150)), c


def test_pixmaps_are_kept_and_true_to_the_screen() -> None:
    of = theme("dark")
    first = symbol_pixmap(LOOKS["lamp"], 24, 1.5, of)
    assert symbol_pixmap(LOOKS["lamp"], 24, 1.5, of) is first
    assert (first.width(), first.devicePixelRatio()) == (36, 1.5)
    assert symbol_pixmap(LOOKS["lamp"], 24, 1.5, theme("light")) is not first


def test_neighbour_levels_tell_apart_by_dash_only() -> None:
    of = theme("light")
    below, above = (
        symbol_pixmap(LOOKS["curve"], 48, 1.0, of, manner).toImage()
        for manner in (Manner.BELOW, Manner.ABOVE)
    )
    opaque = [pixels(image)[:, :, 3] > 128 for image in (below, above)]
    assert not (opaque[1] & (pixels(below)[:, :, 3] < 64)).any()
    assert opaque[1].sum() < 0.8 * opaque[0].sum()
    for image, shown in zip((below, above), opaque, strict=True):
        y, x = np.argwhere(shown)[0]
        assert abs(image.pixelColor(int(x), int(y)).red() - of.dim.red()) <= 2
