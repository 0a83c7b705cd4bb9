"""A network made, read, pinned, exported and saved by keys alone."""

from __future__ import annotations

from pathlib import Path

import pytest
from pypdf import PdfReader
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog

from app.dialogs.details import LinesDialog
from app.network.dialogs import LinkDialog, TripDialog
from app.network.junction_dialog import JunctionDialog
from app.network.leaping import next_spot
from app.network.way_dialog import WayDialog
from app.network.window import NetworkWindow
from model.files.network_file import read_network
from model.grid import Heading
from model.network.network import Link, Trip
from tests.app.by_keys import ALT, CTRL, K, Watcher, answer, answer_by, come_back, press, tab_to, write
from tests.app.windows import example

SHIFT = Qt.KeyboardModifier.ShiftModifier


def leap(*keys: K) -> None:
    """From one station or junction to the next."""
    press(*keys, held=SHIFT)


def place_stations(window: NetworkWindow) -> None:
    """Quay in the west, Mill in the east, Fen in the south."""
    press(K.Key_P)
    for steps, name in (
        ((), "Quay"),
        ([K.Key_Right] * 8, "Mill"),
        ([K.Key_Left] * 4 + [K.Key_Down] * 4, "Fen"),
    ):
        answer(LinesDialog, K.Key_Return, text=name)
        press(*steps, K.Key_Return)
        come_back(window)


def place_junction_by_readers(window: NetworkWindow) -> None:
    """In the middle; each arm leads to both others."""

    def work() -> None:
        write("Wye")
        tab_to("Arms")
        write("Quay, Mill, Fen")
        press(K.Key_Return)
        tab_to("Add junction")
        press(K.Key_Space)

    press(K.Key_J, *[K.Key_Up] * 4)
    answer_by(JunctionDialog, work)
    press(K.Key_Return)
    come_back(window)


def place_junction_from_plan(window: NetworkWindow) -> None:
    """Apart from the others, and taken away again."""

    def work() -> None:
        write("Saltern")
        press(K.Key_Tab, K.Key_Down)
        tab_to("Choose plan…")
        press(K.Key_Space)
        tab_to("Add junction")
        press(K.Key_Space)

    press(*[K.Key_Up] * 4)
    answer_by(JunctionDialog, work)
    press(K.Key_Return)
    come_back(window)


def link(window: NetworkWindow, way: K, length: str) -> None:
    """From the junction to the station that way, and the cursor is at the junction again."""
    back = {K.Key_Left: K.Key_Right, K.Key_Right: K.Key_Left, K.Key_Down: K.Key_Up}[way]
    press(K.Key_Return)
    leap(way)
    answer(LinkDialog, K.Key_Return, text=length)
    press(K.Key_Return)
    come_back(window)
    leap(back)


def test_a_network_is_made_from_beginning_to_end_without_a_mouse(
    network_window: NetworkWindow, no_mouse: Watcher, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    window, document = network_window, network_window.document
    window.activateWindow()
    place_stations(window)
    place_junction_by_readers(window)
    assert [station.at for station in document.network.stations] == [(0, 0), (160, 0), (80, 80)]
    (wye,) = document.network.junctions
    assert next((reader.start, reader.ways) for reader in wye.readers) == ("Quay", ("Mill", "Fen"))

    plan = str(example("saltern-junction"))
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_args: (plan, ""))
    place_junction_from_plan(window)
    assert document.network.junctions[1].plan == plan
    press(K.Key_E, K.Key_Return)
    assert len(document.network.junctions) == 1

    press(K.Key_L, *[K.Key_Down] * 4)
    link(window, K.Key_Left, "64")
    link(window, K.Key_Right, "80")
    link(window, K.Key_Down, "40")
    assert Link("Wye/Fen", "Fen", 40) in document.network.links
    assert Link("Mill", "Wye/Mill", 80) in document.network.links

    # The last length was wrong: the link is chosen half way, and asked about.
    press(K.Key_S, K.Key_Down, K.Key_Down, K.Key_Return)
    answer(LinesDialog, K.Key_Return, text="160")
    press(K.Key_F2)
    come_back(window)
    assert [each.length for each in document.network.links].count(160) == 1

    press(K.Key_T)
    leap(K.Key_Up, K.Key_Left)
    press(K.Key_Return)
    leap(K.Key_Right, K.Key_Right)
    answer(TripDialog, K.Key_Return, text="12")
    press(K.Key_Return)
    come_back(window)
    leap(K.Key_Left)
    assert document.network.trips == (Trip("Quay", "Mill", 12),)

    # The plan's result is read, the number of riders changed, the way pinned, a reader's name given.
    press(K.Key_2, held=ALT)
    press(K.Key_Down)
    trips = window.panels.trips
    assert "144 cells" in trips.facts.text
    assert window.view.lit.title
    press(K.Key_Right, K.Key_Right, K.Key_F2)
    write("20")
    press(K.Key_Return)
    assert document.network.trips == (Trip("Quay", "Mill", 20),)
    come_back(window)
    tab_to("Pin way…")
    answer(WayDialog, K.Key_Return)
    press(K.Key_Space)
    come_back(window)
    assert [way.via for way in document.network.ways] == [("Wye/Quay",)]
    press(K.Key_5, held=ALT)
    press(K.Key_Down)
    tab_to("Name")
    write("Salt")
    press(K.Key_Return)
    come_back(window)
    assert [pin.name for pin in document.network.pins] == ["Salt"]

    for name, key in (("cards.pdf", K.Key_B), ("brine.network.json", K.Key_S)):
        path = str(tmp_path / name)
        monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args, path=path: (path, ""))
        press(key, held=CTRL)
        come_back(window)
    assert "Quay" in PdfReader(tmp_path / "cards.pdf").pages[0].extract_text()
    assert read_network(tmp_path / "brine.network.json") == document.network
    assert no_mouse.seen == []


@pytest.mark.parametrize(
    ("heading", "found"),
    [(Heading.EAST, (4, 1)), (Heading.SOUTH, (1, 3)), (Heading.WEST, None), (Heading.NORTH, (0, -9))],
)
def test_a_leap_goes_to_the_nearest_in_its_quarter(
    heading: Heading, found: tuple[float, float] | None
) -> None:
    """Quarters that begin at 45° share out the plane, so four keys come everywhere (common practice)."""
    spots = [(0.0, 0.0), (4.0, 1.0), (9.0, 0.0), (1.0, 3.0), (0.0, -9.0)]
    assert next_spot(spots, (0.0, 0.0), heading) == found
