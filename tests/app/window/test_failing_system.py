"""Both windows on a full disk, and on a system whose N-th call fails, for every N: nothing is lost.

Opening, saving, the recovery copy, taking one up, and an export.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtWidgets import QFileDialog

from app.materials_csv import materials_csv
from app.network.window import NetworkWindow
from app.window import MainWindow
from model.edits import lay_track
from model.files.network_file import network_bytes, parse_network
from model.files.plan_file import parse_plan, plan_bytes
from model.grid import Cell
from model.network.edits import add_station
from model.sheet import materials
from tests.app.conftest import MakeWindow
from tests.app.network.conftest import MakeWindow as MakeNetwork
from tests.app.network.conftest import make_network
from tests.app.network.networks import small_network
from tests.app.windows import straight_plan
from tests.harness.calls import FailingSystem, every_call_fails_once
from tests.harness.disk import room_for

__all__ = ["make_network"]

SIZES = 64
Window = MainWindow | NetworkWindow


class Case:
    """One of the two windows, with a file of its kind, opened and changed."""

    def __init__(self, window: Window, folder: Path) -> None:
        self.window = window
        self.is_plan = isinstance(window, MainWindow)
        self.path = folder / ("some.plan.json" if self.is_plan else "some.network.json")
        self.old = plan_bytes(straight_plan()) if self.is_plan else network_bytes(small_network())
        self.path.write_bytes(self.old)

    def open(self) -> bool:
        return self.window.files.open_path(self.path)

    def change(self, times: int = 1) -> None:
        """An edit, another one each time."""
        document: Any = self.window.document
        if self.is_plan:
            document.edit(lay_track, [Cell(0, 64, 3 + 2 * times), Cell(1, 64, 3 + 2 * times)])
        else:
            document.apply(add_station(document.network, "Beacon" * times, (200.0, 200.0)))

    @property
    def told(self) -> str:
        return self.window.panels.message.text

    @property
    def bytes(self) -> bytes:
        """What the file of the document as it is now would hold."""
        return self.window.document.bytes_of(self.window.document.value, self.path)

    def read(self, data: bytes) -> object:
        return parse_plan(data, "read back") if self.is_plan else parse_network(data, "read back")

    @property
    def left_over(self) -> list[Path]:
        return sorted(self.path.parent.glob(".*.tmp"))


@pytest.fixture(params=["plan", "network"])
def case(
    request: pytest.FixtureRequest, make_window: MakeWindow, make_network: MakeNetwork, tmp_path: Path
) -> Case:
    """Each test in both windows."""
    folder = tmp_path / "files"
    folder.mkdir()
    return Case(make_window() if request.param == "plan" else make_network(), folder)


def test_saving_on_a_disk_that_is_full_at_64_sizes(case: Case) -> None:
    case.open()
    case.change()
    size = len(case.bytes)
    for number in range(SIZES):
        with room_for(number * size // SIZES):
            assert not case.window.files.save()
        assert "was not saved" in case.told
        assert case.path.name in case.told
        assert case.window.document.is_dirty
        assert case.path.read_bytes() == case.old
        assert case.left_over == []
    assert case.window.files.save()
    assert case.path.read_bytes() == case.bytes
    assert not case.window.document.is_dirty


def test_the_recovery_copy_on_a_full_disk_is_missed_and_the_old_one_kept(case: Case) -> None:
    case.open()
    case.change()
    recovery = case.window.recovery
    recovery.write_now()
    before = recovery.copy.read_bytes()
    told: list[str] = []
    recovery.failed.connect(told.append)
    case.change(2)
    for number in range(8):
        with room_for(number * len(before) // 8):
            recovery.write_now()
        assert len(told) == number + 1
        assert "could not be written" in told[-1]
        assert recovery.copy.read_bytes() == before
        assert case.window.document.is_dirty
    assert case.path.read_bytes() == case.old


def test_without_a_place_for_recovery_copies_the_window_opens_and_tells(
    make_window: MakeWindow, tmp_path: Path
) -> None:
    (tmp_path / "recovery").write_bytes(b"a file where the folder should be")
    window = make_window()
    told: list[str] = []
    window.recovery.failed.connect(told.append)
    window.document.edit(lay_track, [Cell(0, 64, 5), Cell(1, 64, 5)])
    window.recovery.write_now()
    assert len(told) == 1
    assert window.recovery.left_over() == []


def test_opening_with_every_call_failing_once(case: Case) -> None:
    """It is opened, or it is told why not and the document that was open stays."""
    opened: list[bool] = []

    def then(system: FailingSystem) -> None:
        if opened[-1]:
            assert case.bytes == case.old
        else:
            assert case.path.name in case.told, system.failed
            assert "was not opened" in case.told
            assert case.window.document.path is None
        case.window.files.new()

    asked = every_call_fails_once(lambda: opened.append(case.open()), then)
    assert asked >= 2
    assert not all(opened)
    assert opened[-1]


def test_saving_with_every_call_failing_once(case: Case) -> None:
    """The file is exactly the old or the new one; where it is the old, the document counts as changed."""
    saved: list[bool] = []

    def begin() -> None:
        case.path.write_bytes(case.old)
        case.open()
        case.change()

    def then(system: FailingSystem) -> None:
        if saved[-1]:
            assert case.path.read_bytes() == case.bytes
            assert not case.window.document.is_dirty
        else:
            assert case.path.read_bytes() == case.old, system.failed
            assert case.window.document.is_dirty
            assert "was not saved" in case.told
        case.window.document.undo_stack.setClean()
        begin()

    begin()
    asked = every_call_fails_once(lambda: saved.append(case.window.files.save()), then)
    assert asked > 6
    assert not all(saved)
    assert saved[-1]
    case.window.document.undo_stack.setClean()


def test_the_recovery_copy_with_every_call_failing_once(case: Case) -> None:
    """The copy on the disk can be read at every moment, and a failure is told."""
    case.open()
    case.change()
    recovery = case.window.recovery
    told: list[str] = []
    written: list[float] = []
    recovery.failed.connect(told.append)
    recovery.written.connect(written.append)

    def then(system: FailingSystem) -> None:
        assert len(told) + len(written) > 0
        if recovery.copy.exists():
            assert case.read(recovery.copy.read_bytes()) == case.window.document.value
        told.clear()
        kept.append(bool(written))
        written.clear()

    kept: list[bool] = []
    every_call_fails_once(recovery.write_now, then)
    assert not all(kept)
    assert kept[-1]


def test_taking_up_a_copy_with_every_call_failing_once(case: Case) -> None:
    """Whatever fails, the copy is not lost before what it holds is safe in another one."""
    case.open()
    case.change()
    wanted = case.window.document.value
    data = case.bytes
    folder = case.window.recovery.folder
    taken: list[bool] = []

    def begin() -> None:
        case.window.document.undo_stack.setClean()
        case.window.files.new()
        (folder / f"old{case.window.document.ending}").write_bytes(data)
        (folder / "old.about.json").write_bytes(b'{"title": "Old", "original": null, "seconds": 1}')

    def work() -> None:
        found = [entry for entry in case.window.recovery.left_over() if entry.copy.name.startswith("old.")]
        taken.append(bool(found) and case.window.files.take_up(found[0]))

    def then(system: FailingSystem) -> None:
        assert (folder / f"old{case.window.document.ending}").read_bytes() == data
        if taken[-1]:
            assert case.window.document.value == wanted
            assert case.window.document.is_dirty
        begin()

    begin()
    asked = every_call_fails_once(work, then)
    assert asked >= 4
    assert taken[-1]


def test_an_export_with_every_call_failing_once(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    window.document.load(straight_plan(), None)
    path = tmp_path / "carry.csv"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args, **_options: (str(path), ""))
    whole = materials_csv(materials(straight_plan())).encode()
    told: list[bool] = []

    def then(system: FailingSystem) -> None:
        told.append("not written" in window.panels.message.text)
        if path.exists():
            assert path.read_bytes() == whole
        else:
            assert told[-1], system.failed
        path.unlink(missing_ok=True)
        window.panels.message.say("")

    trigger: Callable[[], object] = window.bound["materials_csv"].trigger
    asked = every_call_fails_once(trigger, then)
    assert asked > 6
    assert any(told)
    assert not told[-1]
