"""What the tests of the network window have in common: a small network, and acting on the map."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path

from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog

from app.network.dialogs import Question
from app.network.window import NetworkWindow
from model.network.network import JunctionSpec, Link, Network, ReaderSpec, Station, Trip

TRIES = 2_000
EXAMPLE = Path(str(files("resources"))) / "examples" / "brinepan.network.json"


def both(a: str, b: str, length: int) -> tuple[Link, Link]:
    """A link each way."""
    return Link(a, b, length), Link(b, a, length)


def small_network() -> Network:
    """Quay, Mill and Fen about one junction; 20 squares of the map between the stations."""
    arms = ("Quay", "Mill", "Fen")
    readers = tuple(ReaderSpec(arm, tuple(other for other in arms if other != arm)) for arm in arms)
    links = (
        *both("Quay", "Wye/Quay", 64),
        *both("Mill", "Wye/Mill", 80),
        *both("Fen", "Wye/Fen", 160),
    )
    return Network(
        "Small",
        (Station("Quay", (0.0, 0.0)), Station("Mill", (160.0, 0.0)), Station("Fen", (80.0, 80.0))),
        (JunctionSpec("Wye", readers=readers, at=(80.0, 0.0)),),
        links,
        (Trip("Quay", "Mill", 10), Trip("Quay", "Fen", 3)),
    )


def settle(window: NetworkWindow) -> None:
    """Let the background finish, and what it found arrive."""
    window.document.wait()
    for _ in range(3):
        QApplication.processEvents()


def load(window: NetworkWindow, network: Network | None = None) -> None:
    """Open a network and wait for its plan."""
    window.document.load(small_network() if network is None else network, None)
    settle(window)


def pixel(window: NetworkWindow, x: float, y: float) -> QPoint:
    """Where a crossing of the map's grid lies on the map."""
    view = window.view.navigator.view
    return QPoint(view.origin_x + round(x * view.scale), view.origin_y + round(y * view.scale))


def click(window: NetworkWindow, x: float, y: float, held: Qt.KeyboardModifier | None = None) -> None:
    """Click on a crossing of the map's grid."""
    held = Qt.KeyboardModifier.NoModifier if held is None else held
    QTest.mouseMove(window.view, pixel(window, x, y))
    QTest.mouseClick(window.view, Qt.MouseButton.LeftButton, held, pixel(window, x, y))


def drag(window: NetworkWindow, start: tuple[float, float], end: tuple[float, float]) -> None:
    """Drag from a crossing to another one."""
    a, b = pixel(window, *start), pixel(window, *end)
    QTest.mousePress(window.view, Qt.MouseButton.LeftButton, pos=a)
    for part in (0.25, 0.5, 0.75, 1.0):
        at = QPoint(round(a.x() + (b.x() - a.x()) * part), round(a.y() + (b.y() - a.y()) * part))
        QTest.mouseMove(window.view, at)
    QTest.mouseRelease(window.view, Qt.MouseButton.LeftButton, pos=b)


def keys(window: NetworkWindow, *pressed: Qt.Key, held: Qt.KeyboardModifier | None = None) -> None:
    """Press keys on the map; a window that a question stood before must be in front for its own keys."""
    window.activateWindow()
    QApplication.processEvents()
    for key in pressed:
        QTest.keyClick(window.view, key, Qt.KeyboardModifier.NoModifier if held is None else held)


def answer(fill: dict[str, object] | None, *, accept: bool = True) -> list[str]:
    """Answer the next question: set fields by the name that a screen reader hears, then accept or drop it.

    What the question says is wrong is added to the list that is given back, where it is asked again.
    """
    problems: list[str] = []
    tries = [0]

    def act() -> None:
        dialog = QApplication.activeModalWidget()
        if not isinstance(dialog, QDialog):
            # The gesture that asks may still be under way.
            tries[0] += 1
            assert tries[0] < TRIES, "nothing was asked"
            QTimer.singleShot(1, act)
            return
        for name, value in (fill or {}).items():
            field = next(w for w in dialog.findChildren(object) if _name(w) == name)
            if hasattr(field, "setValue"):
                field.setValue(value)
            elif hasattr(field, "setChecked"):
                field.setChecked(value)
            elif hasattr(field, "setCurrentText"):
                field.setCurrentText(value)
            else:
                field.setText(value)
        if accept:
            QTimer.singleShot(0, lambda: note_problem(dialog))
            dialog.accept()
        else:
            dialog.reject()

    def note_problem(dialog: QDialog) -> None:
        if QApplication.activeModalWidget() is dialog and isinstance(dialog, Question):
            problems.append(dialog.problem)
            dialog.reject()

    QTimer.singleShot(0, act)
    return problems


def _name(widget: object) -> str:
    named = getattr(widget, "accessibleName", None)
    text = getattr(widget, "text", None)
    said = named() if callable(named) else ""
    return said or (text() if callable(text) and hasattr(widget, "setChecked") else "")
