"""Makes the screenshots of the README with the program itself, without a screen.

Run from the checkout after ``.run/demo`` or ``.run/tests``: ``.venv/bin/python .run/screenshots.py``
"""

import os
import tempfile
from pathlib import Path

os.environ["QT_QPA_PLATFORM"] = "offscreen"
os.environ["XDG_CONFIG_HOME"] = os.environ["XDG_DATA_HOME"] = tempfile.mkdtemp()

from PySide6.QtCore import QSize
from PySide6.QtGui import QImage, QPainter, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from app.export import export_sheet
from app.window import MainWindow
from model.files.plan_file import read_plan

EXAMPLE = Path("resources/examples/saltern-junction.plan.json")
OUT = Path("resources/screenshots")
PAGES = (0, 2, 7, -1)
PAGE_WIDTH = 560


def shoot_window(name: str, scheme: str) -> None:
    """The window with the example, while the Quay reader holds and a cart with its waybill runs."""
    window = MainWindow()
    window.use_scheme(scheme)
    window.resize(1440, 900)
    window.show()
    window.files.open_path(EXAMPLE)
    QTest.qWait(1500)
    window.view.preview_reader("Quay")
    window.view.run_cart("Quay", True)
    QTest.qWait(1500)
    window.grab().save(str(OUT / name))


def shoot_sheets(name: str) -> None:
    """Four pages of the build sheet side by side."""
    with tempfile.TemporaryDirectory() as folder:
        pages = export_sheet(read_plan(EXAMPLE), Path(folder) / "sheet.png")
        images = [
            QImage(str(pages[page])).scaledToWidth(PAGE_WIDTH, Qt.TransformationMode.SmoothTransformation)
            for page in PAGES
        ]
    gap = 12
    size = QSize(len(images) * (PAGE_WIDTH + gap) + gap, images[0].height() + 2 * gap)
    sheet = QImage(size, QImage.Format.Format_RGB32)
    sheet.fill(Qt.GlobalColor.lightGray)
    painter = QPainter(sheet)
    for index, image in enumerate(images):
        painter.drawImage(gap + index * (PAGE_WIDTH + gap), gap, image)
    painter.end()
    sheet.save(str(OUT / name))


if __name__ == "__main__":
    application = QApplication([])
    OUT.mkdir(exist_ok=True)
    shoot_window("window-light.png", "light")
    shoot_window("window-dark.png", "dark")
    shoot_sheets("sheets.png")
