"""What is really painted: a switch at rest and powered, and pictures that follow every edit."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from PySide6.QtGui import QColor, QImage
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app import theme as themes
from app.canvas.view import PlanView
from app.document import Document
from model.edits import erase, lay_track, place, turn_plan
from model.grid import Cell, Facing, Turn
from model.parts import Part
from model.pieces import Piece
from model.track.switches import power_states
from tests.app.canvas.conftest import LEVEL, SWITCH, User, wye


def picture(view: PlanView) -> QImage:
    """The view as it looks once it has come to rest."""
    while view.navigator.drawn != view.navigator.view:
        QApplication.processEvents()
    QApplication.processEvents()
    return view.grab().toImage()


def colour_near(image: QImage, user: User, fx: float, fz: float) -> QColor:
    return image.pixelColor(user.pixel(SWITCH.x, SWITCH.z, fx, fz))


FreshView = Callable[[PlanView], PlanView]


@pytest.fixture
def fresh_view(document: Document, qtbot: QtBot) -> FreshView:
    """Makes a new view that looks at the same place; all live as long as the document."""
    made: list[PlanView] = []

    def make(like: PlanView) -> PlanView:
        view = PlanView(document)
        made.append(view)
        qtbot.addWidget(view)
        view.set_theme(like.theme)
        view.resize(like.size())
        view.show()
        view.navigator.show(like.navigator.view)
        return view

    return make


@pytest.mark.parametrize("name", ["light", "dark"])
def test_a_switch_lies_otherwise_when_it_is_powered(
    document: Document, shown_wye: PlanView, user: User, name: str
) -> None:
    # World rules: with south, east and west open the rail rests south-east and is powered south-west.
    states = power_states(document.layout, SWITCH)
    assert (states.resting.word, states.powered.word) == ("south-east", "south-west")
    theme = themes.theme(name)
    shown_wye.set_theme(theme)
    shown_wye.navigator.zoom_to(96)
    user.move(SWITCH.x, SWITCH.z)
    resting = picture(shown_wye)
    east, west, drive = (0.97, 0.5), (0.03, 0.5), (0.5, 0.12)
    assert colour_near(resting, user, *east) == theme.ink
    assert colour_near(resting, user, *west) != theme.ink
    assert colour_near(resting, user, *drive) == theme.paper
    shown_wye.use("throw")
    user.click(SWITCH.x, SWITCH.z)
    powered = picture(shown_wye)
    assert colour_near(powered, user, *west) == theme.live
    assert colour_near(powered, user, *east) not in (theme.ink, theme.live)
    assert colour_near(powered, user, *drive) == theme.live
    shown_wye.clear_preview()
    assert picture(shown_wye) == resting


def test_the_picture_after_each_edit_is_that_of_a_fresh_view(
    document: Document, shown_wye: PlanView, fresh_view: FreshView, qtbot: QtBot
) -> None:
    """Incremental equals full, in pixels: kept tiles never show what is gone."""
    edits = (
        lambda plan: lay_track(plan, [Cell(x, LEVEL, 2) for x in range(-3, 4)]),
        lambda plan: place(plan, Piece(Part.DUST, Cell(2, LEVEL, -2))),
        lambda plan: place(plan, Piece(Part.DUST, Cell(3, LEVEL, -2))),
        lambda plan: place(plan, Piece(Part.SOLID_BLOCK, Cell(1, LEVEL - 1, 0))),
        lambda plan: place(plan, Piece(Part.RAIL, Cell(1, LEVEL + 1, 2), Facing.EAST)),
        lambda plan: erase(plan, [Cell(0, LEVEL, 1), Cell(3, LEVEL, -2)]),
        lambda plan: turn_plan(plan, Turn(1, mirror=True)),
    )
    for edit in edits:
        document.apply(edit(document.plan))
        qtbot.waitUntil(lambda: not document.junction_is_old)
        for scale in (48, 24, 12, 4):
            shown_wye.navigator.zoom_to(scale)
            assert picture(shown_wye) == picture(fresh_view(shown_wye))
    document.undo_stack.setIndex(0)
    qtbot.waitUntil(lambda: not document.junction_is_old)
    assert document.plan == wye()
    assert picture(shown_wye) == picture(fresh_view(shown_wye))


def test_a_drag_shows_the_shapes_as_they_come_out_and_leaves_nothing_behind(
    document: Document, shown_wye: PlanView, user: User
) -> None:
    shown_wye.use("lay")
    user.move(4, 3)
    before = picture(shown_wye)
    user.press(4, 3)
    user.move(4, 1)
    assert picture(shown_wye) != before
    shown_wye.hands.escape()
    user.move(4, 3)
    assert picture(shown_wye) == before


def test_the_levels_below_and_above_show_dimmed_and_solo_drops_them(
    document: Document, shown_wye: PlanView, user: User
) -> None:
    alone = picture(shown_wye)
    document.apply(place(document.plan, Piece(Part.SOLID_BLOCK, Cell(-2, LEVEL - 1, -2))))
    document.apply(place(document.plan, Piece(Part.SOLID_BLOCK, Cell(2, LEVEL + 1, -2))))
    both = picture(shown_wye)
    assert both != alone
    shown_wye.solo = True
    assert picture(shown_wye) == alone


def test_the_empty_plan_says_what_to_do_until_the_first_piece(
    document: Document, view: PlanView, user: User
) -> None:
    theme = view.theme
    view.fit_all()
    middle = view.navigator.room.center()
    hint = picture(view).copy(middle.x() - 140, middle.y() - 100, 280, 140)
    inks = {hint.pixelColor(x, y).rgb() for x in range(280) for y in range(140)}
    assert theme.ink.rgb() in inks
    document.apply(place(document.plan, Piece(Part.SOLID_BLOCK, Cell(40, LEVEL, 40))))
    after = picture(view).copy(middle.x() - 140, middle.y() - 100, 280, 140)
    left = {after.pixelColor(x, y).rgb() for x in range(280) for y in range(140)}
    assert left <= {theme.paper.rgb(), theme.grid.rgb(), theme.grid4.rgb()}
