"""What a screen reader is told of a box of choices: what is chosen, and what is chosen there."""

from __future__ import annotations

from PySide6.QtGui import QAccessible

from app.panels.choice_box import ChoiceBox
from app.window import MainWindow


def told(box: ChoiceBox) -> list[str]:
    """By the interface that screen readers ask."""
    interface = QAccessible.queryAccessibleInterface(box)
    kinds = (QAccessible.Text.Name, QAccessible.Text.Description, QAccessible.Text.Value)
    return [interface.text(kind) for kind in kinds]


def test_every_box_tells_its_name_and_what_is_chosen(window: MainWindow) -> None:
    boxes = window.findChildren(ChoiceBox)
    assert boxes
    for box in boxes:
        assert box.accessibleName()
        assert box.accessibleName() in told(box)
        assert box.currentText() in told(box)
