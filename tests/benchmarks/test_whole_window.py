"""The whole window with 100,000 pieces: each edit and each frame against a frame of a screen at 60 Hz.

What the window's own thread spends is measured, while the rest is worked out beside it as ever. Medians say
what the hand feels, the 95th percentile what the eye sees.
"""

from __future__ import annotations

import gc
import random
import time
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from statistics import median, quantiles
from typing import Final

import pytest
from PySide6.QtCore import QPointF, QSettings
from PySide6.QtWidgets import QApplication

from app.canvas.geometry import ZOOM_STEPS
from app.settings import Settings
from app.window import MainWindow
from model.edits import erase, place
from model.files.plan_file import read_plan
from model.grid import Cell
from model.parts import RAILS
from model.plan import Change, Plan
from model.progress import result_of
from tests.benchmarks.conftest import AddRow
from tests.benchmarks.measuring import Action
from tests.benchmarks.tracks import carried, side_by_side, winding

pytestmark = pytest.mark.slow

PIECES: Final = 100_000
EXAMPLE: Final = Path(__file__).parents[2] / "resources" / "examples" / "saltern-junction.plan.json"
PLANS: Final[dict[str, Callable[[], Plan]]] = {
    "junctions side by side": lambda: side_by_side(read_plan(EXAMPLE), PIECES),
    "rails without a gap": lambda: carried(PIECES),
    "a finding at each rail": lambda: winding(PIECES),
}
EDITS: Final = 60
FRAMES: Final = 20
"""Of each way to pan, at each zoom step."""
FRAME: Final = "a frame of a screen at 60 Hz"
BETWEEN_FRAMES: Final = 0.005
"""Seconds that a window sleeps while nothing happens in it."""
EDITED_AT: Final = 24
"""px a cell."""
NEAR: Final = 400
"""Rails in the middle of the plan that are erased and laid again."""


class Opened:
    """A window on a plan, all worked out and painted."""

    def __init__(self, name: str, folder: Path) -> None:
        self.plan = PLANS[name]()
        store = QSettings(str(folder / "settings.ini"), QSettings.Format.IniFormat)
        self.window = MainWindow(Settings(store), folder)
        self.window.resize(1920, 1080)
        self.window.show()
        QApplication.processEvents()
        self.opening = [*self._opening()]
        self.taking_over: list[float] = []
        self.work_out()
        self.come_to_rest()

    def _opening(self) -> Iterator[float]:
        """Without what is done beside the window."""
        document = self.window.document
        ready = result_of(document.made_ready(self.plan))
        yield own_seconds(lambda: document.load_ready(ready, None))
        yield own_seconds(QApplication.processEvents)

    def work_out(self) -> None:
        """Lets the window stand as it does before a user who looks on, until all is worked out beside it."""
        while self.window.document.orientations_are_old:
            time.sleep(BETWEEN_FRAMES)
            self.taking_over.append(own_seconds(QApplication.processEvents))

    def come_to_rest(self) -> None:
        """Paints until nothing is missing."""
        while True:
            QApplication.processEvents()
            if self.window.view.scene.is_whole:
                return

    def show_middle(self, scale: int) -> None:
        """Brings the middle of the plan into sight."""
        view, extent = self.window.view, self.window.view.scene.index.extent()
        assert extent is not None
        x, z = (extent.west + extent.east) / 2, (extent.north + extent.south) / 2
        seen = view.navigator.view.zoomed(scale, 0, 0)
        view.navigator.show(seen.centred(x, z, view.width() // 2, view.height() // 2))

    def rails_in_the_middle(self) -> list[Cell]:
        """Those nearest to the middle."""
        x, z = self.window.view.navigator.view.place(*self._middle())
        rails = [piece.at for piece in self.plan.pieces if piece.part in RAILS]
        return sorted(rails, key=lambda cell: abs(cell.x - x) + abs(cell.z - z))[:NEAR]

    def _middle(self) -> tuple[int, int]:
        view = self.window.view
        return view.width() // 2, view.height() // 2

    def edits(self, seed: int) -> Iterator[float]:
        """Rails, drawn by lot, taken away and laid again, each to its picture."""
        self.show_middle(EDITED_AT)
        self.come_to_rest()
        document, chance = self.window.document, random.Random(seed)
        for cell in chance.sample(self.rails_in_the_middle(), EDITS // 2):
            piece = document.plan.pieces.get(cell)
            assert piece is not None
            yield self._edit(erase(document.plan, [cell]))
            yield self._edit(place(document.plan, piece))

    def _edit(self, change: Change) -> float:
        taken = own_seconds(lambda: self.window.document.apply(change))
        taken += own_seconds(QApplication.processEvents)
        self.come_to_rest()
        return taken

    def pans(self) -> Iterator[float]:
        """Slow and fast, at every zoom step; what comes into sight is painted while the plan moves on."""
        navigator = self.window.view.navigator
        for scale in ZOOM_STEPS:
            self.show_middle(scale)
            for step in ((3, 2), (-97, -53)):
                for _ in range(FRAMES):
                    navigator.show(navigator.view.panned(*step))
                    yield own_seconds(QApplication.processEvents)

    def zooms(self) -> Iterator[float]:
        """In and out at places drawn by lot."""
        view, chance = self.window.view, random.Random(1)
        for _ in range(len(ZOOM_STEPS) * FRAMES):
            at = QPointF(chance.randrange(view.width()), chance.randrange(view.height()))
            view.navigator.zoom(chance.choice((-1, 1)), at)
            yield own_seconds(QApplication.processEvents)

    def show_lists(self) -> None:
        """All pieces and the materials in place of the switches and the findings."""
        self.window.side.lower_tabs.bring_forward("Pieces")
        self.window.side.upper_tabs.bring_forward("Materials")
        QApplication.processEvents()
        self.window.panels.materials.wait()
        self.come_to_rest()

    def close(self) -> None:
        """Nobody asks whether to save."""
        self.window.document.undo_stack.setClean()
        self.window.close()
        QApplication.processEvents()


def own_seconds(action: Action) -> float:
    """What this thread spends; what others work out meanwhile does not count."""
    start = time.thread_time()
    action()
    return time.thread_time() - start


@pytest.fixture(scope="module")
def opened(qapp: QApplication, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Callable[[str], Opened]]:
    """Each plan is opened once."""
    windows: list[Opened] = []

    @cache
    def of(name: str) -> Opened:
        windows.append(Opened(name, tmp_path_factory.mktemp("window")))
        return windows[-1]

    yield of
    for window in windows:
        window.close()
    qapp.setStyleSheet("")


def add_rows(add_row: AddRow, what: str, seconds: Iterator[float]) -> None:
    """The median and the 95th percentile in frames."""
    gc.collect()
    taken = list(seconds)
    assert len(taken) > 20
    add_row(f"{what}, median", FRAME, 60 * median(taken), 1)
    add_row(f"{what}, 95th percentile", FRAME, 60 * quantiles(taken, n=20)[-1], 1)


@pytest.mark.parametrize("name", PLANS)
def test_frames_of_panning_and_zooming(opened: Callable[[str], Opened], add_row: AddRow, name: str) -> None:
    window = opened(name)
    add_rows(add_row, f"a frame of panning, {PIECES:,} pieces, {name}", window.pans())
    add_rows(add_row, f"a frame of zooming, {PIECES:,} pieces, {name}", window.zooms())


@pytest.mark.parametrize("name", PLANS)
def test_an_edit_in_the_whole_window(opened: Callable[[str], Opened], add_row: AddRow, name: str) -> None:
    window = opened(name)
    add_rows(add_row, f"an edit in the whole window, {PIECES:,} pieces, {name}", window.edits(1))
    window.show_lists()
    what = f"an edit with pieces and materials shown, {PIECES:,} pieces, {name}"
    add_rows(add_row, what, window.edits(2))


@pytest.mark.parametrize("name", PLANS)
def test_taking_over_and_opening(opened: Callable[[str], Opened], add_row: AddRow, name: str) -> None:
    window = opened(name)
    taken_over = max(window.taking_over)
    add_row(f"taking over what was worked out, {PIECES:,} pieces, {name}", FRAME, 60 * taken_over, 1)
    add_row(f"opening, {PIECES:,} pieces, {name}", FRAME, 60 * max(window.opening), 1)
