"""What the window has to do with the first sketch: where it begins, and what it is told of."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from app.first_sketch.card import SketchCard
from app.first_sketch.hints import Deed
from app.first_sketch.sketch import FirstSketch

if TYPE_CHECKING:
    from app.window import MainWindow


def bind_first_sketch(window: MainWindow) -> FirstSketch:
    """The first sketch of a window, not begun yet, with its card on the plan view."""
    view, panels = window.view, window.panels
    sketch = FirstSketch(view, window.settings)
    card = SketchCard(sketch, view)
    QWidget.setTabOrder(view, card.skip)
    QWidget.setTabOrder(card.skip, card.enough)
    sketch.status.connect(panels.status.say)
    panels.findings.chosen.connect(lambda _finding: sketch.note(Deed.FINDING_READ))
    panels.switches.switch_chosen.connect(lambda _cell: sketch.note(Deed.SWITCH_READ))
    window.bound["build_sheet"].triggered.connect(lambda _checked: sketch.note(Deed.SHEET_ASKED))
    return sketch


def begin_first_sketch(window: MainWindow) -> None:
    """Goes on where it was put away, else begins in an empty plan."""
    window.view.setFocus()
    if not window.first_sketch.may_go_on and len(window.document.plan.pieces):
        window.files.new()
        if len(window.document.plan.pieces):
            return
    window.first_sketch.begin()
