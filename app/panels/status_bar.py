"""The line at the bottom: where the cursor is and what lies there, findings, the recovery copy."""

from __future__ import annotations

import time
from collections.abc import Mapping
from typing import Final

from PySide6.QtCore import QRect, QSize, QTimer, Signal
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from app import theme as themes
from app.canvas.symbols import draw_marker
from app.panels.cut_label import CutLabel
from app.panels.look import font, hairline, label, panel
from app.panels.rows import paint_text
from app.panels.words import plain_tip
from app.translation import QT_TR_NOOP, tr
from model.severity import Severity

HEIGHT: Final = 26
COUNTED: Final = {
    Severity.ERROR: QT_TR_NOOP("%n error(s)"),
    Severity.WARNING: QT_TR_NOOP("%n warning(s)"),
    Severity.NOTE: QT_TR_NOOP("%n note(s)"),
}
MESSAGE_MS: Final = 6_000
MARKER_ROOM: Final = 21
"""px from the left of a marker to its figure."""
FIGURE_ROOM: Final = 23
"""px for a figure and what keeps it apart from the next marker, where it has few digits."""
BETWEEN: Final = 8


class StatusBar(QWidget):
    """Messages stand in the place of what lies under the cursor, and go by themselves."""

    said = Signal(str)
    """A message, for those who cannot see it."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        panel(self)
        self.setFixedHeight(HEIGHT)
        self.place = label()
        self.here = CutLabel()
        self.zoom = label()
        self.zoom.setToolTip(tr("How large the drawing is shown"))
        self.chosen = label()
        self.recovery = label("", "second")
        self.counts = SeverityCounts(self)
        self._here = ""
        self._copied: float | None = None
        self._message = QTimer(self, singleShot=True, interval=MESSAGE_MS)
        self._message.timeout.connect(self._show_here)
        self._clock = QTimer(self, interval=1_000)
        self._clock.timeout.connect(self._tell_age)
        row = QHBoxLayout(self)
        row.setContentsMargins(14, 0, 14, 0)
        row.setSpacing(10)
        row.addWidget(self.place)
        row.addWidget(_upright())
        row.addWidget(self.here, 1)
        row.addWidget(_upright())
        row.addWidget(self.zoom)
        row.addWidget(_upright())
        row.addWidget(self.chosen)
        row.addSpacing(16)
        row.addWidget(self.counts)
        row.addWidget(self.recovery)

    def show_here(self, place: str, here: str) -> None:
        """Where the cursor is, and what lies there."""
        self.place.setText(place)
        self._here = here
        if not self._message.isActive():
            self._show_here()

    def show_chosen(self, count: int) -> None:
        """How many pieces are chosen."""
        self.chosen.setText(tr("{count} selected", count=count))

    def show_zoom(self, part: float) -> None:
        """How large the drawing is; 1 is full size."""
        self.zoom.setText(tr("{percent} %", percent=round(100 * part)))

    def show_counts(self, counts: Mapping[Severity, int]) -> None:
        """How many findings are not set aside, by severity."""
        self.counts.show_counts(counts)

    def say(self, text: str) -> None:
        """A message for a while."""
        if text:
            self.here.setText(text)
            self.here.setToolTip(plain_tip(text))
            self._message.start()
            self.said.emit(text)
        else:
            self._message.stop()
            self._show_here()

    def tell_copied(self, seconds: float) -> None:
        """A recovery copy was written at that time, in seconds since 1970."""
        self._copied = seconds
        self._clock.start()
        self._tell_age()

    def tell_saved(self) -> None:
        """The plan is the same as its file: there is no copy."""
        self.tell_unchanged()
        self.recovery.setText(tr("saved"))

    def tell_unchanged(self) -> None:
        """There is nothing to keep a copy of."""
        self._copied = None
        self._clock.stop()
        self.recovery.setText("")

    def tell_copy_failed(self, why: str) -> None:
        """A recovery copy could not be written."""
        self._clock.stop()
        self.recovery.setText(tr("no recovery copy"))
        self.recovery.setToolTip(plain_tip(why))

    def _show_here(self) -> None:
        self.here.setText(self._here)
        self.here.setToolTip(plain_tip(self._here))

    def _tell_age(self) -> None:
        if self._copied is not None:
            self.recovery.setText(tr("recovery copy {age} ago", age=_age(time.time() - self._copied)))
            self.recovery.setToolTip(
                tr("A copy of the plan as it is now, in case this program or the machine fails")
            )


class SeverityCounts(QWidget):
    """A marker and a figure for each severity."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._counts = dict.fromkeys(Severity, 0)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self._say()

    def show_counts(self, counts: Mapping[Severity, int]) -> None:
        """Show how many findings of each severity there are; none of one that is left out."""
        shown = {severity: counts.get(severity, 0) for severity in Severity}
        if shown != self._counts:
            self._counts = shown
            self._say()

    def _say(self) -> None:
        said = ", ".join(tr(COUNTED[severity], "", count) for severity, count in self._counts.items())
        self.setAccessibleName(said)
        self.setToolTip(said)
        self.updateGeometry()
        self.update()

    @property
    def words(self) -> str:
        """The counts in words."""
        return self.accessibleName()

    def paintEvent(self, event: QPaintEvent) -> None:
        theme = themes.current()
        painter = QPainter(self)
        left = 0
        for severity, count in self._counts.items():
            draw_marker(painter, left + 8, HEIGHT / 2, severity, theme)
            room = QRect(left + MARKER_ROOM, 0, _figure_room(count), HEIGHT)
            paint_text(painter, room, str(count), font(11), theme.ink)
            left = room.right() + 1

    def sizeHint(self) -> QSize:
        rooms = (MARKER_ROOM + _figure_room(count) for count in self._counts.values())
        return QSize(sum(rooms), HEIGHT)


def _figure_room(count: int) -> int:
    return max(FIGURE_ROOM, QFontMetrics(font(11)).horizontalAdvance(str(count)) + BETWEEN)


def _upright() -> QWidget:
    line = hairline("upright")
    line.setFixedHeight(14)
    return line


def _age(seconds: float) -> str:
    whole = max(0, int(seconds))
    return f"{whole} s" if whole < 60 else tr("{whole} min", whole=whole // 60)
