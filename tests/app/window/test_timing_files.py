"""What the probes read, written from the window."""

from __future__ import annotations

import io
from pathlib import Path
from xml.etree import ElementTree

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog
from pytestqt.qtbot import QtBot
from vcd.reader import TokenKind, tokenize

from app.window import MainWindow
from tests.app.panels.test_timing import FAR, LEVER, REPEATER, probe, run, wired_plan
from tests.app.windows import settle
from tests.harness.disk import room_for


@pytest.fixture
def read(window: MainWindow) -> MainWindow:
    """Three probes, 60 ticks, the lever on from tick 10 to tick 30."""
    window.document.load(wired_plan(), None)
    settle(window)
    probe(window, LEVER, FAR, REPEATER)
    run(window, 60, {10: True, 30: False})
    return window


@pytest.fixture
def save_as(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Path:
    """Where the user asks for it, without an ending."""
    path = tmp_path / "line"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args, **_options: (str(path), ""))
    return path


def test_waveforms_are_written_for_any_viewer(read: MainWindow, save_as: Path, qtbot: QtBot) -> None:
    """The dump holds what the diagram shows: 14 behind one dust, the repeater 4 ticks late."""
    qtbot.mouseClick(read.panels.timing.vcd_button, Qt.MouseButton.LeftButton)
    tokens = [*tokenize(io.BytesIO(save_as.with_suffix(".vcd").read_bytes()))]
    names = {token.var.id_code: token.var.reference for token in tokens if token.kind is TokenKind.VAR}
    assert [*names.values()] == ["lever_0_64_0", "dust_2_64_0", "repeater_3_64_0"]
    time, found = 0, []
    for token in tokens:
        if token.kind is TokenKind.CHANGE_TIME:
            time = token.time_change
        elif token.kind is TokenKind.CHANGE_VECTOR:
            found.append((time // 50, names[token.vector_change.id_code], token.vector_change.value))
        elif token.kind is TokenKind.CHANGE_SCALAR:
            found.append((time // 50, names[token.scalar_change.id_code], int(token.scalar_change.value)))
    assert found[3:] == [
        (10, "lever_0_64_0", 1),
        (10, "dust_2_64_0", 14),
        (14, "repeater_3_64_0", 1),
        (30, "lever_0_64_0", 0),
        (30, "dust_2_64_0", 0),
        (34, "repeater_3_64_0", 0),
    ]
    assert time == 60 * 50
    assert "line.vcd" in read.panels.status.here.text()


def test_the_drawing_shows_the_ticks_that_are_seen(read: MainWindow, save_as: Path) -> None:
    view = read.panels.timing.view
    view.show_whole_run()
    read.bound["timing_svg"].trigger()
    tree = ElementTree.fromstring(save_as.with_suffix(".svg").read_bytes())
    shown = [element.text for element in tree.iter("{http://www.w3.org/2000/svg}text")]
    assert "Brinepan test line" in shown
    assert "Timing diagram of the dry run, ticks 0 to 59, 0 s to 2.95 s" in shown
    assert {"Lever", "Dust", "Repeater", "14"} <= {*shown}
    assert not read.document.is_dirty


@pytest.mark.parametrize(("action", "ending"), [("timing_svg", ".svg"), ("timing_vcd", ".vcd")])
def test_a_full_disk_is_told_and_the_old_file_stays(
    read: MainWindow, save_as: Path, monkeypatch: pytest.MonkeyPatch, action: str, ending: str
) -> None:
    old = save_as.with_suffix(ending)
    old.write_bytes(b"old")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args, **_options: (str(old), ""))
    with room_for(64):
        read.bound[action].trigger()
    assert "not written" in read.panels.message.text
    assert [path.read_bytes() for path in old.parent.glob("line*")] == [b"old"]
    assert not list(old.parent.glob(".*.tmp")), "nothing half-written is left"


@pytest.mark.parametrize("action", ["timing_svg", "timing_vcd"])
def test_before_a_run_there_is_nothing_to_write(window: MainWindow, save_as: Path, action: str) -> None:
    window.document.load(wired_plan(), None)
    settle(window)
    probe(window, FAR)
    window.bound[action].trigger()
    assert not list(save_as.parent.glob("line*"))
    assert "nothing to write yet" in window.panels.status.here.text()
