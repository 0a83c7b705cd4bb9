"""The map by pointer and by keys: every gesture is one step, and one cut short changes nothing."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from app.network.items import Item, Kind
from app.network.window import NetworkWindow
from model.network.network import EMPTY_NETWORK, Link, Trip
from tests.app.network.networks import answer, click, drag, keys, load, pixel, small_network

QUAY, WYE = Item(Kind.STATION, 0), Item(Kind.JUNCTION, 0)
Key = Qt.Key


def steps(window: NetworkWindow) -> int:
    return window.document.undo_stack.count()


def test_a_network_is_drawn_from_nothing_by_the_pointer(network_window: NetworkWindow) -> None:
    window = network_window
    keys(window, Key.Key_P)
    answer({"Name": "Quay"})
    click(window, 0, 0)
    answer({"Name": "Mill"})
    click(window, 6, 0)
    keys(window, Key.Key_J)
    answer({"Name": "Wye", "Arms": "West, East, South"})
    click(window, 3, 0)
    keys(window, Key.Key_L)
    answer({"Arm by which it enters Wye": "West", "Length in cells": 100})
    drag(window, (0, 0), (3, 0))
    answer({"Arm by which it leaves Wye": "East", "And one back, by the same arms": False})
    drag(window, (3, 0), (6, 0))
    keys(window, Key.Key_T)
    answer({"Trips a week": 7})
    drag(window, (0, 0), (6, 0))
    network = window.document.network
    assert [station.name for station in network.stations] == ["Quay", "Mill"]
    assert network.links == (
        Link("Quay", "Wye/West", 100),
        Link("Wye/West", "Quay", 100),
        Link("Wye/East", "Mill", 64),
    )
    assert network.trips == (Trip("Quay", "Mill", 7),)
    assert network.stations[1].at == (120.0, 0.0)
    assert steps(window) == 6
    while window.document.undo_stack.canUndo():
        window.bound["undo"].trigger()
    assert window.document.network == EMPTY_NETWORK


def test_the_same_by_keys_alone(network_window: NetworkWindow) -> None:
    window = network_window
    window.view.setFocus()
    keys(window, Key.Key_P)
    answer({"Name": "Quay"})
    keys(window, Key.Key_Return)
    answer({"Name": "Mill"})
    keys(window, Key.Key_Right, Key.Key_Right, Key.Key_Right, Key.Key_Return)
    keys(window, Key.Key_L)
    keys(window, Key.Key_Return)
    answer({"Length in cells": 24})
    keys(window, Key.Key_Left, Key.Key_Left, Key.Key_Left, Key.Key_Return)
    assert window.document.network.links == (Link("Mill", "Quay", 24), Link("Quay", "Mill", 24))
    keys(window, Key.Key_S, Key.Key_Return, Key.Key_Down, Key.Key_Down, Key.Key_Return)
    assert window.document.network.stations[0].at == (0.0, 40.0)


def test_dragging_moves_what_is_chosen_as_one_step(network_window: NetworkWindow) -> None:
    window = network_window
    load(window)
    click(window, 0, 0)
    click(window, 4, 0, Qt.KeyboardModifier.ShiftModifier)
    assert window.view.selection == {QUAY, WYE}
    drag(window, (4, 0), (4, -2))
    network = window.document.network
    assert (network.stations[0].at, network.junctions[0].at) == ((0.0, -40.0), (80.0, -40.0))
    assert (steps(window), window.document.undo_stack.undoText()) == (1, "Move 2 things")
    window.bound["undo"].trigger()
    assert window.document.network == small_network()


def test_a_drag_beyond_the_edge_takes_the_map_along(network_window: NetworkWindow, qtbot: QtBot) -> None:
    load(network_window)
    view = network_window.view
    start = pixel(network_window, 0, 0)
    QTest.mousePress(view, Qt.MouseButton.LeftButton, pos=start)
    QTest.mouseMove(view, QPoint(-60, start.y()))
    before = view.navigator.view
    qtbot.waitUntil(lambda: view.navigator.view.origin_x > before.origin_x + 100)
    QTest.mouseRelease(view, Qt.MouseButton.LeftButton, pos=QPoint(-60, start.y()))
    stands = view.navigator.view
    qtbot.wait(100)
    assert view.navigator.view == stands
    quay = network_window.document.network.stations[0].at
    assert quay is not None
    # A square of the map is 20 of the network's.
    assert pixel(network_window, quay[0] / 20, 0).x() == pytest.approx(-60, abs=stands.scale)
    assert steps(network_window) == 1


def test_a_band_chooses_what_it_holds(network_window: NetworkWindow) -> None:
    load(network_window)
    drag(network_window, (-1, -1), (5, 1))
    assert network_window.view.selection == {QUAY, WYE}


def test_a_click_on_a_line_chooses_the_link_and_del_takes_it_away(network_window: NetworkWindow) -> None:
    window = network_window
    load(window)
    drag(window, (1.5, -2), (1.5, -2))
    line = window.document.picture.routes[0]
    x, y = (line[0][0] + line[-1][0]) / 2, line[0][1]
    QTest.mouseClick(window.view, Qt.MouseButton.LeftButton, pos=pixel(window, x, y))
    assert window.view.selection == {Item(Kind.LINK, 0)}
    keys(window, Key.Key_Delete)
    assert len(window.document.network.links) == 5


def test_erasing_a_station_takes_its_links_and_trips_along(network_window: NetworkWindow) -> None:
    window = network_window
    load(window)
    keys(window, Key.Key_E)
    click(window, 0, 0)
    assert [station.name for station in window.document.network.stations] == ["Mill", "Fen"]
    assert window.document.network.trips == ()
    assert len(window.document.network.links) == 4
    assert steps(window) == 1


GESTURES = pytest.mark.parametrize(
    ("tool", "start", "end"),
    [
        ("select", (0, 0), (0, 3)),
        ("select", (-1, -1), (5, 3)),
        ("link", (0, 0), (4, 0)),
        ("trip", (0, 0), (8, 0)),
        ("station", (2, 3), (2, 3)),
        ("junction", (2, 3), (2, 3)),
        ("erase", (0, 0), (0, 0)),
    ],
)


@GESTURES
@pytest.mark.parametrize("steps_before", [0, 1])
def test_undo_in_the_middle_of_a_gesture_takes_back_that_alone(
    network_window: NetworkWindow,
    tool: str,
    start: tuple[float, float],
    end: tuple[float, float],
    steps_before: int,
) -> None:
    window = network_window
    load(window)
    if steps_before:
        drag(window, (0, 0), (0, 1))
        drag(window, (0, 1), (0, 0))
    window.view.use(tool)
    before, done = window.document.network, window.document.undo_stack.index()
    assert bool(done) == bool(steps_before)
    QTest.mousePress(window.view, Qt.MouseButton.LeftButton, pos=pixel(window, *start))
    QTest.mouseMove(window.view, pixel(window, *end))
    keys(window, Key.Key_Z, held=Qt.KeyboardModifier.ControlModifier)
    QTest.mouseRelease(window.view, Qt.MouseButton.LeftButton, pos=pixel(window, *end))
    assert window.document.network == before
    assert window.document.undo_stack.index() == done
    assert window.view.tool == tool


@GESTURES
def test_esc_drops_a_gesture_at_every_stage(
    network_window: NetworkWindow, tool: str, start: tuple[float, float], end: tuple[float, float]
) -> None:
    window = network_window
    load(window)
    for stage in range(3):
        window.view.use(tool)
        QTest.mousePress(window.view, Qt.MouseButton.LeftButton, pos=pixel(window, *start))
        for _ in range(stage):
            QTest.mouseMove(window.view, pixel(window, *end))
        keys(window, Key.Key_Escape)
        QTest.mouseRelease(window.view, Qt.MouseButton.LeftButton, pos=pixel(window, *end))
        assert window.document.network == small_network()
        assert steps(window) == 0
        assert not window.view.hands.is_busy
        assert window.view.tool == tool


def test_a_link_from_a_place_where_nothing_stands_is_refused_in_words(network_window: NetworkWindow) -> None:
    load(network_window)
    network_window.view.use("link")
    drag(network_window, (0, 3), (4, 0))
    assert "drag from the one to the other" in network_window.panels.status.here.text()
    assert steps(network_window) == 0


def test_a_second_station_of_a_name_is_refused_and_asked_again(network_window: NetworkWindow) -> None:
    window = network_window
    load(window)
    keys(window, Key.Key_J)
    problems = answer({"Name": "Wye"})
    click(window, 2, 3)
    assert len(problems) == 1
    assert "Wye" in problems[0]
    assert steps(window) == 0


def test_the_wheel_zooms_at_the_pointer_and_fit_shows_all(network_window: NetworkWindow) -> None:
    window = network_window
    load(window)
    window.bound["zoom_100"].trigger()
    assert window.view.navigator.view.scale == 48
    window.bound["fit_all"].trigger()
    assert window.view.rect().contains(pixel(window, 0, 0))
    assert window.view.rect().contains(pixel(window, 8, 0))


def test_nothing_moves_when_names_change(network_window: NetworkWindow) -> None:
    """A network whose file says no places keeps its picture while it is edited."""
    window = network_window
    bare = small_network().replace(
        stations=tuple(type(s)(s.name) for s in small_network().stations),
        junctions=tuple(type(j)(j.name, readers=j.readers) for j in small_network().junctions),
    )
    load(window, bare)
    before = dict(window.document.picture.spots)
    answer({"Name": "Harbour"})
    window.commands.change(QUAY)
    assert window.document.network.stations[0].name == "Harbour"
    assert window.document.picture.spots == before
    assert window.document.network.stations[0].at is None
