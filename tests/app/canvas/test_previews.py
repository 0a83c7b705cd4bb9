"""Previews: what readers throw, where test carts go and why their ways end."""

from __future__ import annotations

import math

import pytest
from PySide6.QtGui import QImage, QPainter
from PySide6.QtWidgets import QApplication, QProxyStyle, QStyle, QStyleHintReturn, QStyleOption, QWidget
from pytestqt.qtbot import QtBot

from app.canvas.arms import shown_tags
from app.canvas.motion import SPEED
from app.canvas.preview import Run, headings_of
from app.canvas.view import PlanView
from app.canvas.ways import ground_for, length_of, pose, reason_box, shown_ways
from app.document import Document
from model.edits import erase, place
from model.grid import VECTORS, Cell, Heading
from model.parts import Part
from model.pieces import Piece
from model.track.carts import Outcome, Way
from tests.app.canvas.conftest import LEVEL, SWITCH, User


def test_a_reader_shows_what_it_throws_and_the_called_way(shown_wye: PlanView) -> None:
    # With south, east and west open the switch rests south-east; the called cart must go west: powered.
    shown_wye.preview_reader("Mill")
    shown = shown_wye.previews.shown
    assert shown.powered == {SWITCH}
    assert shown.title == "Preview: the Mill reader holds — S1 powered"
    assert [run.words for run in shown.runs] == ["Mill → Quay, with Salt"]
    assert shown_wye.motion.run is None
    shown_wye.preview_reader(None)
    assert not shown_wye.previews.is_on


def test_an_empty_cart_takes_the_way_of_the_switches_thrown_by_hand(shown_wye: PlanView) -> None:
    shown_wye.run_cart("Mill", False)
    assert shown_wye.previews.shown.runs[-1].way.arm == "Fen"
    shown_wye.clear_preview()
    shown_wye.preview_switches(frozenset({SWITCH}))
    shown_wye.run_cart("Mill", False)
    assert shown_wye.previews.shown.runs[-1].way.arm == "Quay"
    assert shown_wye.previews.shown.powered == {SWITCH}


def test_an_edit_ends_the_preview(document: Document, shown_wye: PlanView) -> None:
    shown_wye.run_cart("Mill", True)
    document.apply(place(document.plan, Piece(Part.SOLID_BLOCK, Cell(9, LEVEL, 9))))
    assert not shown_wye.previews.is_on
    assert shown_wye.motion.run is None


def test_a_cart_waits_for_the_routes_to_be_worked_out(
    document: Document, shown_wye: PlanView, qtbot: QtBot
) -> None:
    document.apply(place(document.plan, Piece(Part.SOLID_BLOCK, Cell(9, LEVEL, 9))))
    assert document.junction_is_old
    shown_wye.run_cart("Mill", False)
    assert shown_wye.previews.shown.runs == ()
    qtbot.waitUntil(lambda: bool(shown_wye.previews.shown.runs))
    assert shown_wye.previews.shown.runs[0].way.arm == "Fen"


@pytest.mark.parametrize(
    ("put", "words"),
    [
        (None, "Mill, empty: leaves the track at 0 64 2"),
        (Part.SOLID_BLOCK, "Mill, empty: stopped by a block at 0 64 2"),
    ],
)
def test_the_reason_why_a_way_ended_is_given(
    document: Document, shown_wye: PlanView, qtbot: QtBot, put: Part | None, words: str
) -> None:
    gap = Cell(0, LEVEL, 1)
    document.apply(erase(document.plan, [gap]) if put is None else place(document.plan, Piece(put, gap)))
    qtbot.waitUntil(lambda: not document.junction_is_old)
    shown_wye.run_cart("Mill", False)
    (run,) = shown_wye.previews.shown.runs
    assert run.words == words


def test_a_cart_on_a_ring_runs_in_a_loop(
    document: Document, view: PlanView, user: User, qtbot: QtBot
) -> None:
    view.use("lay")
    user.drag((0, 0), (2, 0), (2, 2), (0, 2), (0, 0))
    qtbot.waitUntil(lambda: not document.junction_is_old)
    view.use("cart")
    user.drag((1, 0), (2, 0))
    (run,) = view.previews.shown.runs
    assert run.words == "1 64 0, empty: runs in a loop"
    assert len(run.way.path) == 8


def test_a_cart_runs_at_eight_cells_a_second(shown_wye: PlanView, qtbot: QtBot) -> None:
    shown_wye.run_cart("Mill", False)
    run = shown_wye.motion.run
    assert run is not None
    assert shown_wye.motion.distance < length_of(run) / 2
    qtbot.waitUntil(lambda: shown_wye.motion.distance == length_of(run), timeout=5000)
    assert SPEED == 8


def test_a_cart_sent_the_same_way_again_runs_again(shown_wye: PlanView, qtbot: QtBot) -> None:
    shown_wye.run_cart("Mill", False)
    qtbot.waitUntil(lambda: shown_wye.motion.distance > 1)
    shown_wye.run_cart("Mill", False)
    assert shown_wye.motion.distance < 1


class StillStyle(QProxyStyle):
    """A system that asks for no animation."""

    def styleHint(
        self,
        hint: QStyle.StyleHint,
        option: QStyleOption | None = None,
        widget: QWidget | None = None,
        data: QStyleHintReturn | None = None,
    ) -> int:
        if hint is QStyle.StyleHint.SH_Widget_Animation_Duration:
            return 0
        return super().styleHint(hint, option, widget, data)


def test_with_reduced_motion_the_cart_is_at_its_end_at_once(shown_wye: PlanView) -> None:
    style = StillStyle()
    # A widget does not keep its style alive by itself, and uses it to the end.
    style.setParent(shown_wye)
    shown_wye.setStyle(style)
    shown_wye.run_cart("Mill", False)
    run = shown_wye.motion.run
    assert run is not None
    assert shown_wye.motion.distance == length_of(run)
    shown_wye.go_to(Cell(30, LEVEL, 0))
    assert shown_wye.navigator.drawn == shown_wye.navigator.view


def test_a_reason_stands_clear_of_the_tag_at_the_end(shown_wye: PlanView) -> None:
    shown_wye.previews.send_cart(Cell(0, LEVEL, 1), Heading.SOUTH, True)
    view = shown_wye.navigator.view
    last = shown_ways(shown_wye.previews.shown.runs, lambda _: True)[-1].steps[-1]
    tags = [tag.rect for tag in shown_tags(shown_wye.document.plan.arms, LEVEL, view)]
    image = QImage(shown_wye.size(), QImage.Format.Format_RGB32)
    painter = QPainter(image)
    ground = ground_for(painter, view, shown_wye.theme, LEVEL)
    before, beside = (
        reason_box(ground, last, "leaves the track", ()),
        reason_box(ground, last, "leaves the track", tags),
    )
    painter.end()
    assert any(before.intersects(tag) for tag in tags), "the tag lies where the cart runs off"
    assert not any(beside.intersects(tag) for tag in tags)


@pytest.mark.parametrize("enter", Heading)
@pytest.mark.parametrize("leave", Heading)
def test_a_cart_comes_in_by_one_edge_and_leaves_by_the_other(enter: Heading, leave: Heading) -> None:
    if leave is enter.opposite:
        return
    (ax, az), (bx, bz) = VECTORS[enter], VECTORS[leave]
    x, z, degrees = pose(enter, leave, 0.0)
    assert (x, z, degrees) == pytest.approx((-0.5 * ax, -0.5 * az, 90 * enter))
    x, z, degrees = pose(enter, leave, 1.0)
    assert (x, z) == pytest.approx((0.5 * bx, 0.5 * bz))
    assert degrees % 360 == pytest.approx(90 * leave)
    corner = (0.5 * (bx - ax), 0.5 * (bz - az))
    if enter is not leave:
        for part in (0.25, 0.5, 0.75):
            x, z, _ = pose(enter, leave, part)
            assert math.dist((x, z), corner) == pytest.approx(0.5)


def test_the_headings_of_a_run_follow_its_path() -> None:
    path = (Cell(0, 64, 1), Cell(0, 64, 0), Cell(1, 65, 0))
    run = Run(Way(path, Outcome.LEAVES_TRACK, None, Heading.EAST), Heading.NORTH, False, "Mill")
    assert [(enter, leave) for _, enter, leave in headings_of(run)] == [
        (Heading.NORTH, Heading.NORTH),
        (Heading.NORTH, Heading.EAST),
        (Heading.EAST, Heading.EAST),
    ]


def test_the_plan_glides_to_what_is_near_and_comes_to_rest(shown_wye: PlanView, qtbot: QtBot) -> None:
    before = shown_wye.navigator.view
    shown_wye.go_to(Cell(12, LEVEL, 0))
    assert shown_wye.navigator.view != before
    assert shown_wye.navigator.drawn != shown_wye.navigator.view
    qtbot.waitUntil(lambda: shown_wye.navigator.drawn == shown_wye.navigator.view)
    QApplication.processEvents()
