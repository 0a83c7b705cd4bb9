"""The dry run on the plan view: what is shown of it, and what the user's hand does to it."""

from __future__ import annotations

import time
from collections.abc import Generator, Iterable
from dataclasses import replace
from typing import Final

from PySide6.QtCore import QObject, Qt, QTimer, Signal
from PySide6.QtWidgets import QWidget

from app.background import CancelledError, at_once
from app.canvas.live import Live
from app.canvas.live_carts import LiveCarts, PlacedCart
from app.canvas.run_log import Entry, RunLog
from app.canvas.scene import Scene
from app.canvas.trains import Train, drops, send, waybills_of
from app.document import BESIDE_FROM, Document
from app.dry_run import SPEEDS, DryRunner
from app.motion import is_reduced
from app.translation import QT_TR_NOOP, tr
from model.dry_run import DryRun, Event, Lever, Press
from model.grid import Cell, Heading
from model.parts import Part
from model.progress import Progress

EDITED: Final = QT_TR_NOOP("The plan has changed, so the dry run has ended.")
BEGUN: Final = QT_TR_NOOP("The dry run is on: a click works a lever or a button, Test cart sends carts.")
PREVIEWED: Final = QT_TR_NOOP("The dry run has ended, to show the preview.")
SETTLE_MS: Final = 200
"""How often it is looked whether what changed too often has become calm."""
BOTH: Final = frozenset({Part.LEVER, Part.BUTTON})


class DryRunning(QObject):
    """Owns the runner, and keeps the looks and the carts of its run for the canvas."""

    changed = Signal()
    """A run has begun or ended."""
    repaint = Signal(object, object)
    """Cells that look otherwise, and carts where they were and where they are."""
    told = Signal(object)
    """What is new in the log, a list of entries; also when the log is begun anew."""
    train_changed = Signal()
    calming_changed = Signal()
    """Something changes too often to be drawn each time, or nothing does any more."""
    status = Signal(str)

    def __init__(self, document: Document, scene: Scene, widget: QWidget) -> None:
        super().__init__(widget)
        self._document = document
        self._scene = scene
        self._widget = widget
        self.runner = DryRunner(self)
        self.carts: tuple[PlacedCart, ...] = ()
        self._train = Train()
        self._live: Live | None = None
        """Of the run that is about to begin."""
        self._placer: LiveCarts | None = None
        self._log: RunLog | None = None
        self._calm = QTimer(self, interval=SETTLE_MS)
        self._calm.timeout.connect(self._settle)
        self._connect()

    def _connect(self) -> None:
        runner, document = self.runner, self._document
        runner.started.connect(self._begin)
        runner.rewound.connect(self._begin_again)
        runner.ticked.connect(self._follow)
        runner.framed.connect(self._move)
        runner.state_changed.connect(self._move)
        runner.given.connect(self._show_given)
        runner.refused.connect(self.status)
        runner.ended.connect(self._end)
        # What is said of an edit clears the line, so this is said after it.
        runner.ended.connect(self.status, Qt.ConnectionType.QueuedConnection)
        document.changed.connect(lambda *_: runner.stop(tr(EDITED)))
        document.reset.connect(runner.stop)

    @property
    def is_on(self) -> bool:
        """Whether a dry run is on."""
        return self.runner.is_on

    @property
    def is_calming(self) -> bool:
        """Whether something changes too often to be drawn each time."""
        return self._calm.isActive()

    @property
    def waybills(self) -> tuple[str, ...]:
        """The waybills that the plan names."""
        return waybills_of(self._document.plan)

    @property
    def log(self) -> list[Entry]:
        """What came of the run so far."""
        return [] if self._log is None else self._log.entries

    @property
    def train(self) -> Train:
        """What the test cart tool sends next."""
        return self._train

    @train.setter
    def train(self, train: Train) -> None:
        if train != self._train:
            self._train = train
            self.train_changed.emit()

    def show_loaded(self, loaded: bool) -> None:
        """The next cart carries its waybill, or does not."""
        self.train = replace(self._train, loaded=loaded)

    def start(self) -> None:
        """Begin, or go on where it is paused."""
        if not self.is_on:
            if not len(self._document.plan.pieces):
                self.status.emit(tr("There is nothing to run: the plan is empty."))
                return
            ready = self._made_ready()
            if ready is None:
                return
            engine, self._live = ready
            self.runner.start(engine)
            self.status.emit(tr(BEGUN))
        self.runner.run()

    def _made_ready(self) -> tuple[DryRun, Live] | None:
        """The engine of the plan as it is now; ``None`` where the user thought better of it."""
        document, looks = self._document, self._scene.looks
        plan, layout = document.plan, document.layout.copy()

        def work() -> Generator[Progress, None, tuple[DryRun, Live]]:
            engine = yield from DryRun.of(plan, layout)
            return engine, Live(engine, looks, time.monotonic)

        do = document.beside if len(plan.pieces) >= BESIDE_FROM else at_once
        try:
            ready = do(tr("Beginning the dry run…"), work)
        except CancelledError:
            self.status.emit(tr("Cancelled: no dry run was begun."))
            return None
        # An edit that a search made meanwhile is no part of this run.
        return ready if document.plan is plan else None

    def run_or_pause(self) -> None:
        """Let the time go on, or stand still."""
        if self.runner.is_running:
            self.runner.pause()
        else:
            self.runner.run()

    def repeat(self) -> None:
        """Begin at tick 0; what was done comes again, each in its tick."""
        self.runner.rewind(repeat=True)
        self.runner.run()

    def change_speed(self, steps: int) -> None:
        """So many steps faster, or slower where negative."""
        at = SPEEDS.index(self.runner.speed) + steps
        self.runner.speed = SPEEDS[max(0, min(len(SPEEDS) - 1, at))]

    def can_work(self, cell: Cell) -> bool:
        """Whether a dry run is on and there is a lever or a button."""
        return self.is_on and self._document.plan.pieces.part_at(cell) in BOTH

    def work(self, cell: Cell) -> None:
        """Pull the lever or press the button in a cell."""
        part, live = self._document.plan.pieces.part_at(cell), self._scene.live
        if live is None or not self.can_work(cell):
            return
        event: Event = Press(cell)
        if part is Part.LEVER:
            event = Lever(cell, not live.looks[cell].on)
        self.runner.give(event)

    def send(self, arm: str, loaded: bool) -> None:
        """The train comes in by an arm."""
        self.runner.give(send(self._train, self._document.plan, arm, loaded))

    def drop(self, cell: Cell, heading: Heading, loaded: bool) -> None:
        """The train starts on a rail."""
        for after, event in drops(self._train, self._document.plan, cell, heading, loaded):
            if not self.runner.give(event, after):
                return

    def _begin(self) -> None:
        engine, live, self._live = self.runner.engine, self._live, None
        assert engine is not None
        assert live is not None
        # The names of switches may have come while this was made ready.
        live.forget_rest()
        self._scene.show_run(live)
        self._placer = LiveCarts(engine, self._document.layout)
        self._begin_log(engine)
        self.carts = ()
        self.changed.emit()

    def _begin_again(self) -> None:
        engine, live = self.runner.engine, self._scene.live
        assert engine is not None
        assert live is not None
        self._begin_log(engine)
        self._show(live.see_all())
        self._move()

    def _end(self) -> None:
        self._scene.show_run(None)
        self._placer = self._log = None
        self._calm.stop()
        self.carts = ()
        self.changed.emit()

    def _follow(self) -> None:
        live, log = self._scene.live, self._log
        assert live is not None
        assert log is not None
        self._show(live.follow(self.runner.changed))
        self._move()
        self._tell(log.follow())

    def _show_given(self) -> None:
        live = self._scene.live
        assert live is not None
        for event in self.runner.pending:
            if isinstance(event, Lever | Press):
                self._show(live.pull(event.at, not isinstance(event, Lever) or event.on))
        self._move()
        if not self.runner.is_running:
            self.status.emit(tr("This is done in the next tick; the dry run is paused."))

    def _settle(self) -> None:
        live = self._scene.live
        if live is not None:
            self._show(live.settle())

    def _show(self, cells: Iterable[Cell]) -> None:
        live = self._scene.live
        assert live is not None
        self._scene.follow_run()
        if bool(live.wavering) != self.is_calming:
            if live.wavering:
                self._calm.start()
            else:
                self._calm.stop()
            self.calming_changed.emit()
        self.repaint.emit(cells, ())

    def _move(self) -> None:
        if self._placer is None:
            return
        now = self.runner.tick - 1 + self.runner.fraction
        before = self.carts
        self.carts = self._placer.placed(now, self.runner.pending, is_reduced(self._widget))
        if self.carts != before:
            self.repaint.emit((), (*before, *self.carts))

    def _begin_log(self, engine: DryRun) -> None:
        assert self.runner.watch is not None
        self._log = RunLog(engine, self.runner.watch)
        self.told.emit([])

    def _tell(self, new: list[Entry]) -> None:
        if new:
            self.told.emit(new)
            others = [tr("{count} more in the list.", count=len(new) - 1)] if len(new) > 1 else []
            self.status.emit(" ".join([f"{new[-1].line}.", *others]))
