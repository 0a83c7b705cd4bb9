"""Every export on a failing system: the old file stays, and the error says which file.

The disk is full at eight sizes; and each call that asks the system for something fails once.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtGui import QPainter, QPdfWriter

from app.export import devices
from model.files.writer import WriteError
from tests.app.export.exports import EXPORTS
from tests.harness.calls import FailingSystem, every_call_fails_once
from tests.harness.disk import OLD, contents, refuses_when_full

pytestmark = pytest.mark.usefixtures("qapp", "small_pictures")


@pytest.fixture
def small_pictures(monkeypatch: pytest.MonkeyPatch) -> None:
    """Pictures of the usual size would take a minute."""
    monkeypatch.setattr(devices, "PNG_DPI", 20)


@pytest.mark.parametrize("name", EXPORTS)
def test_a_full_disk_is_told_and_the_old_file_stays(name: str, tmp_path: Path) -> None:
    refuses_when_full(lambda: EXPORTS[name](tmp_path), tmp_path)


@pytest.mark.parametrize("name", EXPORTS)
def test_with_every_call_failing_once_the_old_files_stay(name: str, tmp_path: Path) -> None:
    EXPORTS[name](tmp_path)
    for path in tmp_path.iterdir():
        path.write_bytes(OLD)
    old = contents(tmp_path)
    refused: list[str] = []

    def export() -> None:
        try:
            EXPORTS[name](tmp_path)
        except WriteError as error:
            refused.append(error.file)
        else:
            refused.append("")

    def then(system: FailingSystem) -> None:
        if system.failed == "unlink":  # what could not be tidied away may stay, hidden
            for path in tmp_path.glob(".*.tmp"):
                path.unlink()
        now = contents(tmp_path)
        assert now.keys() == old.keys(), f"{system.failed}: nothing half-written is left"
        if refused[-1]:
            assert refused[-1] in map(str, old)
            assert now == old, system.failed
        else:
            assert OLD not in now.values(), system.failed
        for path in old:
            path.write_bytes(OLD)

    assert every_call_fails_once(export, then) >= 5
    assert any(refused)
    assert not refused[-1]


def test_an_export_by_the_writers_of_qt_is_seen(tmp_path: Path) -> None:
    """The control that must fail: Qt writes the file itself, and tells nobody of the full disk."""

    def write() -> None:
        writer = QPdfWriter(str(tmp_path / "out.pdf"))
        painter = QPainter(writer)
        for _ in range(400):
            painter.drawEllipse(0, 0, 100, 100)
        painter.end()

    with pytest.raises(pytest.fail.Exception, match="DID NOT RAISE"):
        refuses_when_full(write, tmp_path)
