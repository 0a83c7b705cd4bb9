"""What the tests of the window have in common: plans, and waiting for the background."""

from __future__ import annotations

from collections.abc import Sequence
from importlib.resources import files
from pathlib import Path

from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication, QWidget

from app.window import MainWindow
from model.grid import Cell, Facing, Heading
from model.parts import Part
from model.pieces import Piece, new_piece
from model.plan import Arm, ArmEnd, Details, Plan, Route, plan_of

WEST_END, EAST_END = Cell(0, 64, 0), Cell(2, 64, 0)


def example(name: str) -> Path:
    """The file of an example plan."""
    return Path(str(files("resources"))) / "examples" / f"{name}.plan.json"


def settle(window: MainWindow) -> None:
    """Let the background finish, and what it found arrive."""
    window.document.wait()
    for _ in range(3):
        QApplication.processEvents()


def drop(target: QWidget, paths: Sequence[Path]) -> Qt.DropAction:
    """Drop files as a program does that would move them, if it may; what was done with them."""
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path)) for path in paths])
    at, actions = QPointF(target.rect().center()), Qt.DropAction.CopyAction | Qt.DropAction.MoveAction
    left, shift = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.ShiftModifier
    entering = QDragEnterEvent(at.toPoint(), actions, data, left, shift)
    QApplication.sendEvent(target, entering)
    if not entering.isAccepted():
        return Qt.DropAction.IgnoreAction
    dropped = QDropEvent(at, actions, data, left, shift)
    QApplication.sendEvent(target, dropped)
    return dropped.dropAction() if dropped.isAccepted() else Qt.DropAction.IgnoreAction


def track(*cells: tuple[int, int], level: int = 64) -> list[Piece]:
    """Rails facing east in these (x, z), each on a solid block."""
    blocks = [new_piece(Part.SOLID_BLOCK, Cell(x, level - 1, z)) for x, z in cells]
    rails = [Piece(Part.RAIL, Cell(x, level, z), Facing.EAST) for x, z in cells]
    return blocks + rails


def straight_plan() -> Plan:
    """Three rails from Quay in the west to Fen in the east, and one wanted route."""
    arms = (
        Arm("Quay", enter=ArmEnd(WEST_END, Heading.EAST), leave=ArmEnd(WEST_END, Heading.WEST)),
        Arm("Fen", enter=ArmEnd(EAST_END, Heading.WEST), leave=ArmEnd(EAST_END, Heading.EAST)),
    )
    details = Details("Straight", arms=arms, routes=(Route("Quay", "Fen"),))
    return plan_of(track((0, 0), (1, 0), (2, 0)), details)
