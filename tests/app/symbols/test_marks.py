"""Ways, tags, markers, rings and icons, in pixels where that is what counts."""

from __future__ import annotations

from itertools import combinations

import numpy as np
import pytest
from PySide6.QtGui import QIcon, QImage, QPainter

from app.canvas.symbols import (
    Ground,
    Way,
    WayKind,
    draw_arm_tag,
    draw_chevrons,
    draw_joined_tag,
    draw_marker,
    draw_ring,
    draw_way,
    ring_of,
    screen,
    side_by_side,
    tag_rect,
    tag_size,
    way_steps,
)
from app.canvas.symbols.ways import Lane
from app.icons import TOOLS, icon
from app.names import group_name, part_name
from app.theme import Theme, theme
from model.grid import Cell, Heading
from model.parts import TRAITS, Part
from tests.app.symbols.pictures import Pixels, grey, pixels

pytestmark = pytest.mark.usefixtures("qapp")

LIGHT = "light"
NORTH, EAST, SOUTH, WEST = Heading
ALONG = [Cell(x, 64, 0) for x in range(9)]
ROUND_A_BEND = [Cell(0, 64, 1), Cell(1, 64, 1), Cell(1, 64, 0)]


def canvas(width: int, height: int, of: Theme) -> tuple[QImage, QPainter]:
    image = QImage(width, height, QImage.Format.Format_ARGB32)
    image.fill(of.paper)
    return image, QPainter(image)


def way_picture(kind: WayKind, c: int, *, chevrons: bool = False, of: Theme | None = None) -> QImage:
    """A way along nine cells to the east."""
    of = of or theme(LIGHT)
    image, painter = canvas(9 * c, c, of)
    steps = way_steps(ALONG, EAST, EAST, lambda _cell: True)
    ground = Ground(painter, 0, 0, screen(c), of, 64)
    draw_way(ground, steps, kind)
    if chevrons:
        draw_chevrons(ground, steps, kind)
    painter.end()
    return image


def test_steps_know_how_the_cart_comes_in_and_leaves() -> None:
    steps = way_steps(ROUND_A_BEND, EAST, NORTH, lambda cell: cell.x == 0)
    assert [(step.enter, step.leave) for step in steps] == [(EAST, EAST), (EAST, NORTH), (NORTH, NORTH)]
    assert [step.plain for step in steps] == [True, False, False]


def test_band_is_44_hundredths_of_a_cell_wide() -> None:
    row = grey(way_picture(WayKind.IDLE, 50))[:, 25]
    tinted = np.flatnonzero(row < 255)
    assert tinted[0] == pytest.approx(25 - 11, abs=1)
    assert tinted[-1] == pytest.approx(25 + 10, abs=1)


@pytest.mark.parametrize("name", ["light", "print"])
def test_called_way_has_broken_edges_and_idle_whole_ones(name: str) -> None:
    """Told apart without hue: along the edge of the band the called way has gaps."""
    edges = [grey(way_picture(kind, 48, of=theme(name)))[13] for kind in (WayKind.IDLE, WayKind.CALLED)]
    steps = [int((np.diff((edge < edge.mean()).astype(int)) != 0).sum()) for edge in edges]
    assert steps[0] == 0
    assert steps[1] > 20


def test_chevrons_are_one_and_two_and_only_from_20_px() -> None:
    def heads(kind: WayKind, c: int) -> int:
        middle = grey(way_picture(kind, c, chevrons=True))[c // 2]
        return int((np.diff((middle < 100).astype(int)) == 1).sum())

    assert heads(WayKind.CALLED, 48) == 2 * heads(WayKind.IDLE, 48) > 0
    assert heads(WayKind.IDLE, 16) == 0


def test_ways_over_one_cell_share_it_with_the_called_one_on_the_right() -> None:
    idle = way_steps(ALONG, EAST, EAST, lambda _cell: True)
    back = way_steps(ALONG[::-1][:5], WEST, WEST, lambda _cell: True)
    for called, other in ((list(idle), Lane.LEFT), (back, Lane.RIGHT)):
        left, right = side_by_side(idle, called)
        shared = {step.cell for step in called}
        assert {step.lane for step in right} == {Lane.RIGHT}
        assert {step.lane for step in left if step.cell in shared} == {other}
        assert {step.lane for step in left if step.cell not in shared} <= {Lane.WHOLE}


def test_only_the_level_shown_is_drawn() -> None:
    of = theme(LIGHT)
    image, painter = canvas(96, 48, of)
    steps = way_steps([Cell(0, 64, 0), Cell(1, 65, 0)], EAST, EAST, lambda _cell: True)
    draw_way(Ground(painter, 0, 0, screen(48), of, 64), steps, WayKind.IDLE)
    painter.end()
    tinted = grey(image) < 255
    assert tinted[:, :48].any()
    assert not tinted[:, 49:].any()


@pytest.mark.parametrize("outward", Heading)
@pytest.mark.parametrize("way", Way)
def test_tag_stays_in_the_space_that_it_names(outward: Heading, way: Way) -> None:
    of, size = theme(LIGHT), tag_size(48)
    image, painter = canvas(300, 300, of)
    rect = draw_arm_tag(painter, 150, 150, outward, "Quay", way, size, of)
    painter.end()
    assert rect == tag_rect("Quay", 150, 150, outward, size)
    rows, columns = np.nonzero(grey(image) < 250)
    assert columns.min() >= rect.left() - 2
    assert columns.max() <= rect.right() + 2
    assert rows.min() >= rect.top() - 2
    assert rows.max() <= rect.bottom() + 2
    assert not rect.contains(150, 150)


def test_tag_where_carts_come_in_is_filled() -> None:
    of, size = theme(LIGHT), tag_size(48)
    shares = {}
    for way in Way:
        image, painter = canvas(200, 60, of)
        rect = draw_arm_tag(painter, 10, 30, EAST, "Fen", way, size, of).toRect()
        painter.end()
        shares[way] = float((grey(image.copy(rect)) < 128).mean())
    assert shares[Way.IN] > 0.5 > shares[Way.OUT]


def test_long_names_are_cut() -> None:
    size = tag_size(48)
    assert tag_rect("Tithe Barn " * 7, 0, 0, EAST, size).width() < 16 * size.em


def test_joined_tag_has_its_filled_head_where_carts_come_in() -> None:
    of, size = theme(LIGHT), tag_size(24)
    dark = {}
    for side in (EAST, WEST):
        image, painter = canvas(200, 80, of)
        rect = draw_joined_tag(painter, 100, 30, SOUTH, "Mill", side, size, of).toRect()
        painter.end()
        bits = grey(image.copy(rect)) < 128
        dark[side] = (int(bits[2:-2, 3:14].sum()), int(bits[2:-2, -14:-3].sum()))
    assert dark[WEST][0] > dark[WEST][1]
    assert dark[EAST][1] > dark[EAST][0]


SMALL = [("error", False), ("warning", False)]
"""Of the small markers, which stand below 20 px a cell, there are no others."""
LARGE = [(severity, aside) for severity in ("error", "warning", "note") for aside in (False, True)]


@pytest.mark.parametrize(("px", "shown"), [(10, SMALL), (16, LARGE)])
@pytest.mark.parametrize("name", ["light", "print"])
def test_markers_differ_without_hue(px: int, shown: list[tuple[str, bool]], name: str) -> None:
    of = theme(name)

    def picture(severity: str, aside: bool) -> Pixels:
        image, painter = canvas(20, 20, of)
        draw_marker(painter, 10, 10, severity, of, px, aside=aside)
        painter.end()
        return grey(image) < 176

    kinds = [picture(severity, aside) for severity, aside in shown]
    assert all((a != b).sum() >= 8 for a, b in combinations(kinds, 2))


def test_ring_goes_about_the_union_and_leaves_cells_alone() -> None:
    of, c, cells = theme(LIGHT), 24, {(1, 1), (2, 1), (1, 2)}
    image, painter = canvas(5 * c, 5 * c, of)
    draw_ring(painter, 0, 0, c, ring_of(cells), of)
    painter.end()
    found = pixels(image)
    for x, z in cells:
        inside = found[z * c + 2 : (z + 1) * c - 2, x * c + 2 : (x + 1) * c - 2, :3]
        assert (inside == 255).all()
    assert image.pixelColor(2 * c, c - 2) == of.pick
    assert image.pixelColor(c - 2, 2 * c) == of.pick
    assert image.pixelColor(2 * c, 3 * c - 12) != of.ink


@pytest.mark.parametrize("c", [1, 2, 4])
def test_far_out_the_ring_hides_no_chosen_cell(c: int) -> None:
    of, rows = theme(LIGHT), range(10, 30, 2)
    cells = {(x, z) for z in rows for x in range(10, 30)}
    image, painter = canvas(40 * c, 40 * c, of)
    draw_ring(painter, 0, 0, c, ring_of(cells), of)
    painter.end()
    found = pixels(image)
    for z in rows:
        assert (found[z * c : (z + 1) * c, 15 * c : 25 * c, :3] == 255).all()
    assert image.pixelColor(20 * c, 10 * c - 1) == of.pick


def test_ring_on_paper_is_brackets_only() -> None:
    of, c = theme("print"), 24
    image, painter = canvas(3 * c, 3 * c, of)
    draw_ring(painter, 0, 0, c, ring_of({(1, 1)}), of)
    painter.end()
    top = grey(image)[c - 2, c - 3 : 2 * c + 3] < 128
    assert top[:4].all()
    assert top[-4:].all()
    assert not top[len(top) // 2 - 2 : len(top) // 2 + 2].any()


ICONS = [*TOOLS, *Part, *(f"{kind}{end}" for kind in ("error", "warning", "note") for end in ("", "-aside"))]


@pytest.mark.parametrize("name", ICONS)
def test_icons_are_drawn_and_fade_when_disabled(name: str) -> None:
    def opacity(mode: QIcon.Mode) -> int:
        return int(pixels(icon(name).pixmap(24, 24, mode).toImage())[:, :, 3].astype(int).sum())

    assert opacity(QIcon.Mode.Normal) > opacity(QIcon.Mode.Disabled) > 0


def test_unknown_icon_is_an_error() -> None:
    with pytest.raises(KeyError):
        icon("anvil")


def test_everything_has_a_name_for_people() -> None:
    names = [part_name(part) for part in Part]
    assert len(set(names)) == len(names)
    assert all(name[0].isupper() for name in names)
    assert {group_name(traits.group) for traits in TRAITS.values()} == {
        "Track",
        "Carries",
        "Signals",
        "Items",
    }
