"""What was fitted stays fitted while the view changes its size, until the user moves it or draws."""

from __future__ import annotations

import msgspec
from PySide6.QtWidgets import QApplication

from app.canvas.arms import shown_tags
from app.canvas.view import PlanView
from app.document import Document
from model.plan import Details, Plan
from tests.app.canvas.conftest import LEVEL, User, wye


def all_is_in_sight(view: PlanView) -> bool:
    """Whether every arm can be read."""
    tags = shown_tags(view.document.plan.arms, LEVEL, view.navigator.view)
    return all(view.navigator.room.contains(tag.rect.toRect()) for tag in tags)


def resize(view: PlanView, width: int, height: int) -> None:
    view.resize(width, height)
    QApplication.processEvents()


def test_a_fitted_plan_is_whole_at_every_size(shown_wye: PlanView) -> None:
    shown_wye.fit_all()
    for size in ((500, 400), (1100, 800), (360, 330)):
        resize(shown_wye, *size)
        assert all_is_in_sight(shown_wye), size


def test_long_names_beside_the_track_have_room(document: Document, view: PlanView) -> None:
    plan = wye()
    arms = tuple(
        msgspec.structs.replace(arm, name=f"{arm.name} beyond the old lime kiln") for arm in plan.arms
    )
    document.load(Plan(plan.pieces, Details(arms=arms)), None)
    for size in ((900, 700), (500, 400)):
        resize(view, *size)
        assert all_is_in_sight(view), size


def test_what_the_user_moved_stays_there(shown_wye: PlanView) -> None:
    shown_wye.fit_all()
    shown_wye.navigator.show(shown_wye.navigator.view.panned(-40, 0))
    moved = shown_wye.navigator.view
    resize(shown_wye, 500, 400)
    assert shown_wye.navigator.view == moved
    assert not all_is_in_sight(shown_wye), "the control: at this size what is not fitted is cut"


def test_what_was_drawn_since_stays_under_the_hand(shown_wye: PlanView, user: User) -> None:
    shown_wye.fit_all()
    before = shown_wye.navigator.view
    shown_wye.use("lay")
    user.drag((-3, 2), (3, 2))
    resize(shown_wye, 700, 600)
    assert shown_wye.navigator.view == before
