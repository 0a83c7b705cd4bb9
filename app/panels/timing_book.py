"""What the probes of the dry run read, kept row by row for the timing diagram."""

from __future__ import annotations

from PySide6.QtCore import QObject, Signal

from app.document import Document
from app.dry_run import DryRunner
from app.panels.timing_trace import Trace
from model.grid import Cell


class ProbeBook(QObject):
    """Takes over only what is new after each tick, so that a tick of a long run costs no more."""

    rows_changed = Signal()
    """Other cells are probed, or they have other names."""
    emptied = Signal()
    """A run begins at tick 0; nothing has been read."""
    read = Signal()
    """There are further readings."""

    def __init__(self, document: Document, runner: DryRunner, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self._runner = runner
        self.traces: list[Trace] = []
        self.unsure: dict[Cell, list[int]] = {}
        """The ticks in which the order of updates decides what comes, by cell."""
        self.now = 0
        """How many ticks were done in the run that was read last."""
        self._unsure_seen = 0
        runner.probes_changed.connect(self._take_over_rows)
        runner.started.connect(self._empty)
        runner.rewound.connect(self._empty)
        runner.ticked.connect(self._read)
        document.changed.connect(self._take_over_rows)
        document.junction_updated.connect(self._take_over_rows)
        document.reset.connect(self._forget)

    def _take_over_rows(self) -> None:
        """A probe that stays keeps what it read; the plan may have another piece in its cell now."""
        known = {trace.cell: trace for trace in self.traces}
        junction, engine = self._document.junction, self._runner.engine
        # An edit of a plan with thousands of switches need not wait for names that no probe asks for.
        switches = () if junction is None or not self._runner.watched else junction.switches
        names = {switch.at: switch.name for switch in switches}
        pieces = (self._document.plan if engine is None else engine.plan).pieces
        self.traces = []
        for cell in self._runner.watched:
            trace = known.get(cell) or Trace(cell)
            trace.piece, trace.switch = pieces.get(cell), names.get(cell, "")
            self.traces.append(trace)
        self._take_over_readings()
        self.rows_changed.emit()

    def _empty(self) -> None:
        self.unsure, self._unsure_seen, self.now = {}, 0, 0
        for trace in self.traces:
            trace.forget()
        self._take_over_rows()
        self.emptied.emit()

    def _forget(self) -> None:
        """Another plan is open: nothing of the old one is probed."""
        self._runner.clear_probes()
        self._empty()

    def _read(self) -> None:
        self._take_over_readings()
        self.read.emit()

    def _take_over_readings(self) -> None:
        for trace in self.traces:
            trace.extend(self._runner.readings(trace.cell, len(trace.ticks)))
        engine = self._runner.engine
        if engine is None:
            return
        self.now = engine.tick
        for unsure in engine.unsure[self._unsure_seen :]:
            for cell in unsure.at:
                self.unsure.setdefault(cell, []).append(unsure.tick)
        self._unsure_seen = len(engine.unsure)
