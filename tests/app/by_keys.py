"""Working by keys alone: what has the focus gets them, and a watcher sees whether a mouse was used."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QWidget

from app.network.window import NetworkWindow
from app.window import MainWindow

K = Qt.Key
CTRL, ALT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.AltModifier
PLAIN = Qt.KeyboardModifier.NoModifier
OF_A_MOUSE = {
    QEvent.Type.MouseButtonPress,
    QEvent.Type.MouseButtonRelease,
    QEvent.Type.MouseButtonDblClick,
    QEvent.Type.MouseMove,
    QEvent.Type.Wheel,
    QEvent.Type.HoverMove,
    QEvent.Type.TabletPress,
    QEvent.Type.TouchBegin,
}


class Watcher(QObject):
    """Notes every event of a mouse that the program is given."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self.seen: list[QEvent.Type] = []

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() in OF_A_MOUSE:
            self.seen.append(event.type())
        return False


def focus() -> QWidget:
    """What gets the keys now."""
    popup = QApplication.activePopupWidget()
    found = (popup.focusWidget() or popup) if popup is not None else QApplication.focusWidget()
    assert found is not None
    return found


def press(*keys: K, held: Qt.KeyboardModifier = PLAIN) -> None:
    for key in keys:
        QTest.keyClick(focus(), key, held)


def write(text: str) -> None:
    QTest.keyClicks(focus(), text)


def answer(kind: type[QDialog], *keys: K, text: str = "") -> None:
    """What will be typed and pressed in the dialog that is asked next."""

    def now() -> None:
        write(text)
        press(*keys)

    answer_by(kind, now)


def answer_by(kind: type[QDialog], work: Callable[[], object]) -> None:
    """What will be done in the dialog that is asked next, where the focus then is."""

    def now() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, kind)
        dialog.activateWindow()
        QApplication.processEvents()
        work()

    QTimer.singleShot(0, now)


def come_back(window: MainWindow | NetworkWindow) -> None:
    """Offscreen nobody brings the window to the front again when a dialog is gone."""
    window.activateWindow()
    window.document.wait()
    for _ in range(3):
        QApplication.processEvents()


def tab_to(name: str) -> None:
    """Tab on until what is called so has the focus."""
    for _ in range(60):
        widget = focus()
        if name in (widget.accessibleName(), getattr(widget, "text", str)()):
            return
        press(K.Key_Tab)
    raise AssertionError(f"Tab never comes to {name}")
