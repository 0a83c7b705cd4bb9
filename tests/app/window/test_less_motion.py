"""Less motion, because the user asks for it: kept, and obeyed by what runs and glides."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from app import motion
from app.canvas.ways import length_of
from app.window import MainWindow
from model.grid import Cell
from tests.app.canvas.conftest import wye
from tests.app.conftest import MakeWindow
from tests.app.windows import settle


@pytest.fixture(autouse=True)
def as_the_system() -> Iterator[None]:
    """Other tests find what the system asks for."""
    yield
    motion.reduce(False)


def test_a_test_cart_is_at_the_end_of_its_way_at_once(window: MainWindow) -> None:
    window.document.load(wye(), None)
    settle(window)
    window.bound["less_motion"].trigger()
    assert motion.is_reduced(window.view)
    window.view.run_cart("Mill", False)
    shown = window.view.motion
    assert shown.run is not None
    assert shown.distance == length_of(shown.run)


def test_the_view_jumps(window: MainWindow) -> None:
    window.document.load(wye(), None)
    settle(window)
    window.bound["less_motion"].trigger()
    window.view.go_to(Cell(12, 64, 3))
    assert window.view.navigator.drawn == window.view.navigator.view


def test_it_is_remembered_until_it_is_taken_back(window: MainWindow, make_window: MakeWindow) -> None:
    window.bound["less_motion"].trigger()
    other = make_window()
    assert other.bound["less_motion"].isChecked()
    other.bound["less_motion"].trigger()
    assert not window.bound["less_motion"].isChecked()
    assert not motion.is_reduced(window.view)
