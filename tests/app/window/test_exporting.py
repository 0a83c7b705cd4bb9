"""Build sheet and materials, written from the window."""

from __future__ import annotations

import csv
import threading
from collections import Counter
from pathlib import Path

import pypdf
import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QFileDialog, QMessageBox
from pytestqt.qtbot import QtBot

from app.dialogs.build_sheet import BuildSheetDialog
from app.dialogs.working import WorkingDialog
from app.window import MainWindow
from model.files.plan_file import read_plan
from model.sheet import build_sheet
from tests.app.windows import example, settle
from tests.app.working import hear
from tests.harness.disk import room_for

A3_POINTS = (1190.55, 841.89)
"""420 × 297 mm (ISO 216) at 72 points an inch."""


@pytest.fixture
def wye(window: MainWindow) -> MainWindow:
    """A window with the smallest example."""
    window.document.load(read_plan(example("beacon-wye")), None)
    settle(window)
    return window


def answer_with(*words: str) -> None:
    """Choose these in the dialog that comes next, and go on."""

    def run() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, BuildSheetDialog)
        for button in dialog.findChildren(QAbstractButton):
            if button.text() in words:
                button.click()
        dialog.accept()

    QTimer.singleShot(0, run)


def save_as(monkeypatch: pytest.MonkeyPatch, path: Path) -> None:
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args, **_options: (str(path), ""))


def test_the_build_sheet_is_written_on_the_paper_that_was_chosen(
    wye: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    answer_with("A3", "PDF")
    save_as(monkeypatch, tmp_path / "wye")
    wye.bound["build_sheet"].trigger()
    reader = pypdf.PdfReader(tmp_path / "wye.pdf")
    assert len(reader.pages) >= 3, "a cover, a page a level, a control table"
    box = reader.pages[0].mediabox
    assert (float(box.width), float(box.height)) == pytest.approx(A3_POINTS, abs=1)
    assert "Beacon Wye" in " ".join(reader.pages[0].extract_text().split())
    assert "wye.pdf" in wye.panels.status.here.text()
    assert not wye.document.is_dirty


@pytest.mark.parametrize(
    ("form", "ending", "there"),
    [("PDF", "", "wye.pdf"), ("SVG", "", "wye-02.svg"), ("PNG", ".png", "wye-001.png")],
)
def test_no_sheet_is_written_over_that_the_dialog_did_not_ask_about(
    wye: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, form: str, ending: str, there: str
) -> None:
    asked: list[str] = []

    def say_no(box: QMessageBox) -> int:
        asked.append(box.text())
        return QMessageBox.StandardButton.Cancel

    monkeypatch.setattr(QMessageBox, "exec", say_no)
    (tmp_path / there).write_bytes(b"before")
    answer_with("A4", form)
    save_as(monkeypatch, tmp_path / f"wye{ending}")
    wye.bound["build_sheet"].trigger()
    assert [there in words for words in asked] == [True]
    assert {path.name for path in tmp_path.glob("wye*")} == {there}
    assert (tmp_path / there).read_bytes() == b"before"


def test_choices_are_remembered(wye: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    answer_with("A3", "SVG")
    save_as(monkeypatch, tmp_path / "wye.svg")
    wye.bound["build_sheet"].trigger()
    assert len(list(tmp_path.glob("wye-*.svg"))) >= 3
    seen: list[object] = []

    def look() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, BuildSheetDialog)
        seen.append(dialog.choice)
        dialog.reject()

    QTimer.singleShot(0, look)
    wye.bound["build_sheet"].trigger()
    assert seen == [("A3", "SVG", False, True)]


def test_steps_may_be_left_out_and_stay_out(
    wye: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    save_as(monkeypatch, tmp_path / "wye.pdf")
    found = []
    for press in (False, True, False):
        answer_with(*(["Steps, with pictures"] if press else []))
        wye.bound["build_sheet"].trigger()
        pages = pypdf.PdfReader(tmp_path / "wye.pdf").pages
        found.append(any("You should now see" in " ".join(page.extract_text().split()) for page in pages))
    assert found == [True, False, False]


def test_the_materials_are_written_as_a_table(
    wye: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    save_as(monkeypatch, tmp_path / "carry.csv")
    wye.bound["materials_csv"].trigger()
    with open(tmp_path / "carry.csv", encoding="utf-8", newline="") as stream:
        rows = [*csv.reader(stream)]
    assert rows[0] == ["part", "level", "pieces"]
    counted = Counter((str(piece.part), str(piece.at.y)) for piece in wye.document.plan.pieces)
    assert {(part, level): int(pieces) for part, level, pieces in rows[1:]} == counted


def test_a_folder_that_is_not_there_is_told_of(
    wye: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    save_as(monkeypatch, tmp_path / "gone" / "carry.csv")
    wye.bound["materials_csv"].trigger()
    assert "not written" in wye.panels.message.text
    answer_with("PDF")
    save_as(monkeypatch, tmp_path / "gone" / "wye.pdf")
    wye.bound["build_sheet"].trigger()
    assert "build sheet was not written" in wye.panels.message.text
    assert QApplication.overrideCursor() is None


def test_pages_that_a_longer_sheet_left_are_told_of(
    wye: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "wye-98.png").write_bytes(b"of an older one")
    answer_with("A4", "PNG")
    save_as(monkeypatch, tmp_path / "wye.png")
    monkeypatch.setattr("app.commands.asking_file.may_write_over", lambda *_: True)
    wye.bound["build_sheet"].trigger()
    assert wye.panels.status.here.text().endswith("Pages of an older sheet are still there: wye-98.png.")


A4_PIXELS = (round(210 / 25.4 * 200), round(297 / 25.4 * 200))
"""210 × 297 mm (ISO 216) at 200 dots an inch."""


def test_a_picture_a_page_is_written(
    wye: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    answer_with("A4", "PNG")
    save_as(monkeypatch, tmp_path / "wye.png")
    wye.bound["build_sheet"].trigger()
    pictures = [QImage(str(path)) for path in sorted(tmp_path.glob("wye-*.png"))]
    assert len(pictures) >= 3, "a cover, a page a level, a control table"
    for picture in pictures:
        assert (picture.width(), picture.height()) == A4_PIXELS
        greys = {
            QImage.pixel(picture, x, y) & 0xFF for x in range(0, picture.width(), 7) for y in (400, 1200)
        }
        assert len(greys) > 1, "something is drawn"
    assert not (tmp_path / "wye.png").exists()
    assert "wye-01.png" in wye.panels.status.here.text()


@pytest.mark.parametrize("format_", ["PDF", "SVG", "PNG"])
@pytest.mark.parametrize("when", ["Working out", "Laying out the steps", "Drawing page 2 of "])
def test_cancelling_leaves_the_old_sheet_and_a_window_that_goes_on(
    wye: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, format_: str, when: str
) -> None:
    """Esc while the sheet is worked out, while it is laid out, or between two pages."""
    old = tmp_path / "sheets" / f"wye.{format_.lower()}"
    old.parent.mkdir()
    old.write_bytes(b"old")

    def press_escape(dialog: WorkingDialog, words: str) -> None:
        if words.startswith(when):
            QTimer.singleShot(0, dialog, lambda: QTest.keyClick(dialog, Qt.Key.Key_Escape))
        else:
            may_end.set()

    said = hear(monkeypatch, press_escape)
    # However quick the machine is, the pages are not there yet when it is said where they go.
    may_end = threading.Event()
    monkeypatch.setattr(
        "app.export.sheet.build_sheet", lambda *found: may_end.wait(20) and build_sheet(*found)
    )
    answer_with("A4", format_)
    save_as(monkeypatch, old)
    wye.bound["build_sheet"].trigger()
    assert said[-1].startswith(when), "no page is drawn after it"
    assert [path.read_bytes() for path in old.parent.iterdir()] == [b"old"]
    assert wye.panels.status.here.text() == "Cancelled: no build sheet was written."
    assert QApplication.activeModalWidget() is None
    answer_with("A4", format_)
    may_end.set()
    when = "never"
    wye.bound["build_sheet"].trigger()
    assert "Wrote" in wye.panels.status.here.text()
    assert said[-1].startswith("Drawing page ")


@pytest.mark.parametrize("format_", ["PDF", "SVG", "PNG"])
def test_on_a_full_disk_old_sheets_stay_and_one_message_says_why(
    wye: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, format_: str
) -> None:
    ending = format_.lower()
    old = [tmp_path / f"wye.{ending}", tmp_path / f"wye-01.{ending}", tmp_path / f"wye-02.{ending}"]
    for path in old:
        path.write_bytes(b"old")
    said: list[str] = []
    monkeypatch.setattr(wye.exports, "_tell", said.append)
    answer_with("A4", format_)
    save_as(monkeypatch, old[0])
    monkeypatch.setattr(QMessageBox, "exec", lambda _box: QMessageBox.StandardButton.Yes)
    with room_for(64):
        wye.bound["build_sheet"].trigger()
    assert len(said) == 1
    assert "build sheet was not written" in said[0]
    assert str(tmp_path) in said[0]
    assert [path.read_bytes() for path in old] == [b"old"] * 3
    assert sorted(tmp_path.glob("*wye*")) == sorted(old)
    assert not list(tmp_path.glob(".*.tmp")), "nothing half-written is left"
