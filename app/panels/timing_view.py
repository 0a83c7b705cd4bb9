"""The timing diagram itself: a row a probe, time across, strength up, and a cursor at one tick."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QAbstractScrollArea, QWidget

from app.panels.timing_axis import TimeAxis
from app.panels.timing_keys import KEYS
from app.panels.timing_painting import AXIS, NAMES, ROW, paint_diagram
from app.panels.timing_trace import Trace
from app.translation import tr
from model.grid import Cell

SPARE: Final = 0.1
"""Of the width: as much is free at the right of what was run."""
SHOWN_AFTER_TURN: Final = 0.25
"""Of the width: so much of the past stays when the diagram goes on with the run."""


class TimingView(QAbstractScrollArea):
    """Draws only what is seen; it neither runs nor probes, but says what it is asked for."""

    cursor_moved = Signal()
    """The cursor stands at another tick, or another row is chosen."""
    removal_asked = Signal(object)
    """The cell whose probe is to be taken away."""
    cell_asked = Signal(object)
    """The cell that is to be shown on the plan."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(tr("Timing diagram"))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setProperty("look", "timing")
        self.traces: Sequence[Trace] = ()
        self.unsure: dict[Cell, list[int]] = {}
        """The ticks in which the order of updates decides what comes, by cell."""
        self.now = 0
        """How many ticks are done."""
        self.axis = TimeAxis(100)
        self.row: int = 0
        """The chosen row."""
        self._cursor: int | None = None
        self.verticalScrollBar().setSingleStep(ROW)
        self.verticalScrollBar().valueChanged.connect(self.viewport().update)
        self.horizontalScrollBar().valueChanged.connect(self._scroll_to)

    @property
    def tick(self) -> int:
        """The tick at which the cursor stands: the one chosen, else the last that was run."""
        return max(0, self.now - 1) if self._cursor is None else self._cursor

    @property
    def follows(self) -> bool:
        """Whether the cursor stays with the run."""
        return self._cursor is None

    @property
    def chosen(self) -> Trace | None:
        """The trace of the chosen row."""
        return self.traces[self.row] if self.row < len(self.traces) else None

    def show_traces(self, traces: Sequence[Trace]) -> None:
        """Take over other rows; the chosen one stays chosen where it is still there."""
        chosen = self.chosen
        self.traces = traces
        cells = [trace.cell for trace in traces]
        if chosen is not None and chosen.cell in cells:
            self.row = cells.index(chosen.cell)
        else:
            self.row = max(0, min(self.row, len(traces) - 1))
        self._fit_bars()
        self.cursor_moved.emit()
        self.viewport().update()

    def go_on(self, now: int) -> None:
        """So many ticks are done: show them where the end was in sight and the cursor stays with the run."""
        was_in_sight = self.axis.first <= self.now <= self.axis.last
        self.now = now
        if self.follows and was_in_sight and not self.axis.first <= now <= self.axis.last:
            self.axis = self.axis.begun_at(now - self.axis.shown * SHOWN_AFTER_TURN)
        self._fit_bars()
        self.cursor_moved.emit()
        self.viewport().update()

    def begin_anew(self) -> None:
        """There is nothing to show yet; the cursor stays with the run."""
        self.now, self._cursor = 0, None
        self._look(self.axis.begun_at(0))
        self.cursor_moved.emit()

    def put_cursor(self, tick: int | None) -> None:
        """Put the cursor to a tick and show it; ``None``: it stays with the run."""
        last = max(0, self.now - 1)
        self._cursor = None if tick is None or not self.now else min(max(0, tick), last)
        self._look(self.axis.showing(self.tick))
        self.cursor_moved.emit()

    def choose_row(self, row: int) -> None:
        """Choose a row and bring it into sight."""
        if self.traces:
            self.row = min(max(0, row), len(self.traces) - 1)
            self._show_row()
            self.cursor_moved.emit()
            self.viewport().update()

    def zoom(self, closer: bool) -> None:
        """One step, about the cursor where it is in sight, else about the middle."""
        x = self.axis.middle(self.tick)
        self._look(self.axis.zoomed(closer, x if 0 <= x <= self.axis.width else self.axis.width / 2))

    def show_whole_run(self) -> None:
        """All ticks that were run, in one view."""
        self._look(self.axis.fitted(self.now))

    def scroll_pages(self, pages: float) -> None:
        """Along time, by so much of what is seen."""
        self._look(self.axis.begun_at(self._held(self.axis.first + pages * self.axis.shown)))

    def go_to_change(self, forward: bool) -> None:
        """Put the cursor to the next or last change of the chosen row."""
        trace = self.chosen
        if trace is not None:
            tick = trace.change_after(self.tick) if forward else trace.change_before(self.tick)
            if tick is not None:
                self.put_cursor(tick)

    def ask_removal(self) -> None:
        """Ask that the chosen row's probe be taken away."""
        if self.chosen is not None:
            self.removal_asked.emit(self.chosen.cell)

    def ask_cell(self) -> None:
        """Ask that the chosen row's cell be shown."""
        if self.chosen is not None:
            self.cell_asked.emit(self.chosen.cell)

    def _look(self, axis: TimeAxis) -> None:
        self.axis = axis
        self._fit_bars()
        self.viewport().update()

    def _held(self, first: float) -> float:
        """No farther than that the end of the run is in sight."""
        shown = self.axis.shown
        return max(0.0, min(first, self.now - shown * (1 - SPARE))) if self.now > shown else 0.0

    def _fit_bars(self) -> None:
        size = self.viewport().size()
        down = self.verticalScrollBar()
        down.setPageStep(max(1, size.height() - AXIS))
        down.setRange(0, max(0, len(self.traces) * ROW - (size.height() - AXIS)))
        across, axis = self.horizontalScrollBar(), self.axis
        across.blockSignals(True)
        across.setPageStep(max(1, int(axis.width)))
        across.setSingleStep(max(1, int(axis.width / 10)))
        highest = max(axis.first, self._held(self.now))
        across.setRange(0, int(highest * axis.scale))
        across.setValue(int(axis.first * axis.scale))
        across.blockSignals(False)

    def _scroll_to(self, value: int) -> None:
        self.axis = self.axis.begun_at(value / self.axis.scale)
        self.viewport().update()

    def _show_row(self) -> None:
        bar = self.verticalScrollBar()
        top, room = self.row * ROW, self.viewport().height() - AXIS
        bar.setValue(min(top, max(bar.value(), top + ROW - room)))

    def _row_at(self, y: float) -> int | None:
        row = int((y - AXIS + self.verticalScrollBar().value()) // ROW)
        return row if y >= AXIS and row < len(self.traces) else None

    def paintEvent(self, event: QPaintEvent) -> None:
        paint_diagram(QPainter(self.viewport()), self)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        width = max(1, self.viewport().width() - NAMES)
        self._look(TimeAxis(width, self.axis.first, self.axis.scale))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() is not Qt.MouseButton.LeftButton:
            return
        row = self._row_at(event.position().y())
        if row is not None:
            self.choose_row(row)
        if event.position().x() >= NAMES:
            self._point(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if event.buttons() & Qt.MouseButton.LeftButton and event.position().x() >= NAMES:
            self._point(event)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        row = self._row_at(event.position().y())
        if row is not None and event.button() is Qt.MouseButton.LeftButton and event.position().x() < NAMES:
            self.choose_row(row)
            self.ask_cell()

    def _point(self, event: QMouseEvent) -> None:
        self.put_cursor(self.axis.tick_at(event.position().x() - NAMES))

    def wheelEvent(self, event: QWheelEvent) -> None:
        held, delta = event.modifiers(), event.angleDelta()
        along = delta.x() or (delta.y() if held & Qt.KeyboardModifier.ShiftModifier else 0)
        if held & Qt.KeyboardModifier.ControlModifier:
            if delta.y():
                x = max(0.0, event.position().x() - NAMES)
                self._look(self.axis.zoomed(delta.y() > 0, x))
        elif along:
            self.scroll_pages(-along / 120 / 8)
        else:
            bar = self.verticalScrollBar()
            bar.setValue(bar.value() - round(delta.y() / 120 * ROW))
        event.accept()

    def event(self, event: QEvent) -> bool:
        """The keys of the diagram mean here what they say, also those that are shortcuts of the window."""
        if event.type() is QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent) and _act_of(event):
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        act = _act_of(event)
        if act is None:
            event.ignore()
        else:
            act(self)


def _act_of(event: QKeyEvent) -> Callable[[TimingView], None] | None:
    held = event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier & ~Qt.KeyboardModifier.ShiftModifier
    return KEYS.get((Qt.Key(event.key()), held))
