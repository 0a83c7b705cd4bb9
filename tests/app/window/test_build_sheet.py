"""The question for the build sheet: its pages before they are written, presets, printing."""

from __future__ import annotations

from collections.abc import Generator
from pathlib import Path

import pypdf
import pytest
from PySide6.QtCore import QSettings, Qt, QTimer
from PySide6.QtGui import QImage, QPixmap
from PySide6.QtPrintSupport import QPrinter, QPrinterInfo
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog, QInputDialog, QMessageBox
from pytestqt.qtbot import QtBot

from app.background import Begun
from app.dialogs.build_sheet import BuildSheetDialog
from app.dialogs.sheet_options import ANOTHER
from app.export import working_out
from app.export.devices import DrawPage
from app.export.papers import PAPERS
from app.export.printing import print_pages, set_up
from app.export.sheet import Worked, sheet_pages
from app.settings import Settings
from app.sheet_presets import LAST, MOST, Preset, SheetChoice, SheetPresets
from app.window import MainWindow
from model.files.plan_file import read_plan
from model.progress import result_of
from tests.app.windows import example, settle


@pytest.fixture(scope="module")
def worked() -> Worked:
    """The smallest example."""
    return result_of(working_out(read_plan(example("beacon-wye"))))


@pytest.fixture
def presets(settings: Settings) -> SheetPresets:
    return SheetPresets(settings)


@pytest.fixture
def dialog(qtbot: QtBot, presets: SheetPresets, worked: Worked) -> BuildSheetDialog:
    def known() -> Generator[None, None, Worked]:
        yield
        return worked

    made = BuildSheetDialog(None, SheetChoice(), presets)
    qtbot.addWidget(made)
    made.show()
    made.take(Begun(made, known))
    qtbot.waitUntil(lambda: made.preview.said.text() != "")
    return made


def pages_of(worked: Worked, steps: bool) -> list[DrawPage]:
    return result_of(sheet_pages(worked, "A4", colour=False, steps=steps))


def picture(dialog: BuildSheetDialog) -> QImage:
    pixmap = dialog.preview.page.widget().property("pixmap")
    assert isinstance(pixmap, QPixmap)
    return pixmap.toImage()


def test_presets_outlive_the_program(tmp_path: Path) -> None:
    def opened() -> SheetPresets:
        return SheetPresets(Settings(QSettings(str(tmp_path / "s.ini"), QSettings.Format.IniFormat)))

    office = Preset("Office", SheetChoice("A3", "SVG", True, False), str(tmp_path))
    opened().keep(office)
    opened().keep(Preset("abroad"))
    opened().remember(SheetChoice("A4", "PNG"), "")
    assert opened().kept == {"abroad": Preset("abroad"), "Office": office}
    assert opened().last.choice.format == "PNG"
    opened().forget("abroad")
    assert [*opened().kept] == ["Office"]


def test_settings_that_cannot_be_understood_are_no_presets(settings: Settings, presets: SheetPresets) -> None:
    for spoiled in ("{", '[{"name": 1}]', '[{"name": "x", "choice": ["A9", "PDF", false, true]}]'):
        settings.choose("sheet-presets", spoiled)
        assert presets.kept == {}
        assert presets.last == Preset(LAST)
    for number in range(MOST + 5):
        presets.keep(Preset(f"{number:02}"))
    assert [*presets.kept] == [f"{number:02}" for number in range(5, MOST + 5)]


def test_a_preset_fills_the_fields_and_changing_one_leaves_it(
    dialog: BuildSheetDialog, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    options = dialog.options
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(tmp_path))
    options.folders.setCurrentIndex(options.folders.findData(ANOTHER))
    options.folders.activated.emit(options.folders.currentIndex())
    assert options.folder == str(tmp_path)
    options.colour.click()
    monkeypatch.setattr(QInputDialog, "getText", lambda *_, **__: (" Site ", True))
    options.keep.click()
    assert options.presets.currentText() == "Site"
    options.colour.click()
    assert options.presets.currentIndex() == 0, "what is chosen is no preset any more"
    assert not options.forget.isEnabled()
    options.presets.setCurrentIndex(1)
    options.presets.activated.emit(1)
    assert dialog.choice == SheetChoice(colour=True)
    options.forget.click()
    assert options.presets.count() == 1


def test_the_preview_shows_the_pages_that_are_written(
    dialog: BuildSheetDialog, worked: Worked, qtbot: QtBot
) -> None:
    count = len(pages_of(worked, steps=True))
    preview = dialog.preview
    assert preview.said.text() == f"Page 1 of {count}"
    first = picture(dialog)
    assert first.width() / first.height() == pytest.approx(210 / 297, abs=0.01), "ISO 216"
    QTest.keyClick(preview.page, Qt.Key.Key_PageDown)
    assert picture(dialog) != first
    QTest.keyClick(preview.page, Qt.Key.Key_PageUp)
    assert picture(dialog) == first
    assert not preview.before.isEnabled()
    preview.larger.click()
    assert picture(dialog).width() == pytest.approx(1.5 * first.width(), abs=2)
    dialog.options.steps.click()
    fewer = len(pages_of(worked, steps=False))
    qtbot.waitUntil(lambda: preview.said.text() == f"Page 1 of {fewer}")
    assert fewer < count
    for _ in range(count):
        preview.after.click()
    assert preview.said.text() == f"Page {fewer} of {fewer}"


def test_only_the_page_that_is_seen_is_drawn(dialog: BuildSheetDialog) -> None:
    drawn: list[int] = []
    pages = [lambda _painter, number=number: drawn.append(number) for number in range(500)]
    dialog.preview.show_pages(pages, PAPERS["A4"], Qt.GlobalColor.white)  # type: ignore[arg-type]
    dialog.preview.turn(300)
    assert drawn == [0, 300]


def test_the_window_works_the_pages_out_while_it_asks(window: MainWindow, qtbot: QtBot) -> None:
    window.document.load(read_plan(example("beacon-wye")), None)
    settle(window)
    seen: list[str] = []

    def look() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, BuildSheetDialog)
        seen.append(dialog.preview.said.text())
        qtbot.waitUntil(lambda: dialog.preview.said.text() != "", timeout=20_000)
        seen.append(dialog.preview.said.text())
        dialog.reject()

    QTimer.singleShot(0, look)
    window.bound["build_sheet"].trigger()
    assert seen[0] == ""
    assert seen[1].startswith("Page 1 of ")


def test_printing_without_a_printer_says_what_to_do(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(QPrinterInfo, "availablePrinterNames", list)
    said: list[str] = []
    monkeypatch.setattr(QMessageBox, "exec", lambda box: said.append(box.text()))

    def answer() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, BuildSheetDialog)
        dialog.print.click()

    QTimer.singleShot(0, answer)
    window.bound["build_sheet"].trigger()
    assert said == ["The system knows no printer."]


@pytest.mark.usefixtures("qapp")
def test_what_a_printer_gets_is_true_to_scale(worked: Worked, tmp_path: Path) -> None:
    """Qt's printer into a file stands for one of metal: A4 is 210 × 297 mm (ISO 216), 595 × 842 points."""
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(tmp_path / "printed.pdf"))
    set_up(printer, PAPERS["A4"], "Beacon Wye")
    pages = pages_of(worked, steps=False)
    print_pages(printer, pages, PAPERS["A4"])
    printed = pypdf.PdfReader(tmp_path / "printed.pdf").pages
    assert len(printed) == len(pages)
    box = printed[0].mediabox
    assert (float(box.width), float(box.height)) == pytest.approx((595.3, 841.9), abs=1)
    assert "Beacon Wye" in " ".join(printed[0].extract_text().split())
