"""Every screen: what takes the focus says what it is and shows it, and Tab leads to all and round again."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QWidget

from app.network.window import NetworkWindow
from app.window import MainWindow
from tests.app.every_screen import every_screen
from tests.app.focus_seen import pixels_that_tell, unseen
from tests.app.network.conftest import make_network, network_window  # noqa: F401
from tests.app.own_signs import foreign_signs
from tests.app.room_for_words import too_narrow
from tests.app.window.test_reach import spoken, unnamed

MOST_STOPS = 150
WALKED = ("plan window", "plan window, dry_run", "plan window, tool_module", "network window")


def tab_stops(root: QWidget) -> list[QWidget]:
    """What Tab comes to, from where the focus is until it is there again."""
    root.activateWindow()
    QApplication.processEvents()
    start = root.focusWidget()
    if start is None:
        root.focusNextChild()
        start = root.focusWidget()
    met: list[QWidget] = []
    while start is not None and len(met) < MOST_STOPS:
        now = root.focusWidget()
        QTest.keyClick(now, Qt.Key.Key_Tab)
        now = root.focusWidget()
        met.append(now)
        if now is start:
            break
    return met


def reachable(root: QWidget) -> set[QWidget]:
    """What can be seen and used, and takes the focus by Tab."""
    return {
        widget
        for widget in root.findChildren(QWidget)
        if widget.window() is root
        and widget.isVisible()
        and widget.isEnabled()
        and widget.focusPolicy() & Qt.FocusPolicy.TabFocus
        and widget.focusProxy() is None
    }


def tab_problems(root: QWidget) -> list[str]:
    """Where Tab goes round in a smaller circle, and what it does not come to."""
    stops = tab_stops(root)
    again = ["Tab comes to something twice before it comes round"] if len(set(stops)) < len(stops) else []
    missed = [widget for widget in reachable(root) if widget not in stops]
    return again + [f"Tab never comes to {type(each).__name__} {spoken(each)}" for each in missed]


def test_all_fits_says_what_it_is_shows_the_focus_and_tab_leads_all_around(
    window: MainWindow,
    network_window: NetworkWindow,  # noqa: F811
) -> None:
    seen, wrong = [], []
    looked_at: set[QWidget] = set()
    for name, screen in every_screen(window, network_window):
        seen.append(name)
        wrong += [f"{name}: {each} says nothing" for each in unnamed(screen)]
        wrong += [f"{name}: {each}" for each in (*too_narrow(screen), *foreign_signs(screen))]
        # A walk round a whole window takes long, and the panels behind its tabs have their place in one ring.
        if isinstance(screen, QDialog) or name in WALKED:
            wrong += [f"{name}: {each}" for each in tab_problems(screen)]
        new = reachable(screen) - looked_at
        looked_at |= new
        wrong += [f"{name}: the focus is not seen on {spoken(each)}" for each in unseen(screen, new)]
    assert "\n".join(wrong) == ""
    assert len(seen) == len(set(seen)) > 40, seen


def test_a_picture_that_differs_too_little_tells_nothing() -> None:
    """The control; the greys have 2.9:1 and 3.1:1 against white (computed by hand from the formula)."""
    white, pale, grey = (QImage(4, 4, QImage.Format.Format_RGB32) for _ in range(3))
    for image, colour in ((white, 0xFFFFFF), (pale, 0x989898), (grey, 0x929292)):
        image.fill(colour)
    assert pixels_that_tell(white, pale) == 0
    assert pixels_that_tell(white, grey) == pixels_that_tell(grey, white) == 16
