"""The dry run of the open plan: it owns the engine, keeps its time, and remembers what was done to it."""

from __future__ import annotations

from collections.abc import KeysView, Mapping
from typing import Final

from PySide6.QtCore import QElapsedTimer, QObject, QTimer, Signal

from model.dry_run import DryRun, Event, EventRefused, Timed, Watch
from model.grid import Cell

TICKS_A_SECOND: Final = 20
SPEEDS: Final = (0.25, 1.0, 2.0, 4.0, 8.0)
"""Times real time."""
FRAME: Final = 16
"""ms between two pictures while it runs."""
BUDGET: Final = 12
"""ms that the ticks of one picture may take; what is not done by then is dropped: the window stays free."""

History = tuple[tuple[int, int], ...]
"""Tick and value, at the first tick that was watched and at each change."""


class DryRunner(QObject):
    """A run of a snapshot of the plan. It touches neither the plan nor the undo stack."""

    started = Signal()
    """A run begins, at tick 0 and paused; ``engine`` is there."""
    rewound = Signal()
    """The run is at tick 0 again."""
    ticked = Signal()
    """One tick or more are done; ``changed`` are the cells that may differ since the last signal."""
    framed = Signal()
    """Time has passed while it runs: what moves between two ticks is a little further."""
    ended = Signal(str)
    """The run is over, and why, in words; empty where the user ended it. ``engine`` is gone."""
    state_changed = Signal()
    """It runs or pauses, or has another speed."""
    given = Signal()
    """Something is to be done in the next tick."""
    refused = Signal(str)
    """Why that could not be done, for the status bar."""
    probes_changed = Signal()
    """Cells are watched that were not before, or the other way round."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.engine: DryRun | None = None
        """``None`` while no dry run is on; so is ``watch``."""
        self.watch: Watch | None = None
        """Keeps what the run finds wrong."""
        self.changed: frozenset[Cell] = frozenset()
        self._speed = 1.0
        self._events: list[Timed] = []
        self._to_come: dict[int, list[Event]] = {}
        """What is still to be done, by its tick."""
        self._probes: dict[Cell, list[tuple[int, int]]] = {}
        self._owed = 0.0
        self._clock = QElapsedTimer()
        self._passed = 0
        """ns on that clock at the last picture."""
        self._timer = QTimer(self)
        self._timer.setInterval(FRAME)
        self._timer.timeout.connect(self._on_frame)

    @property
    def is_on(self) -> bool:
        """Whether a dry run is on, running or paused."""
        return self.engine is not None

    @property
    def is_running(self) -> bool:
        """Whether the time goes on by itself."""
        return self._timer.isActive()

    @property
    def tick(self) -> int:
        """How many ticks are done; the number of the next one."""
        return 0 if self.engine is None else self.engine.tick

    @property
    def seconds(self) -> float:
        """The time of the run, not that of the clock on the wall."""
        return self.tick / TICKS_A_SECOND

    @property
    def fraction(self) -> float:
        """How much of the next tick has passed, from 0 to 1; 0 while it is paused."""
        return min(self._owed, 1.0) if self.is_running else 0.0

    @property
    def speed(self) -> float:
        """Times real time, one of SPEEDS."""
        return self._speed

    @speed.setter
    def speed(self, speed: float) -> None:
        if speed != self._speed:
            self._speed = speed
            self.state_changed.emit()

    @property
    def events(self) -> tuple[Timed, ...]:
        """What was done in this run so far, each in its tick; a script of these gives the same run."""
        return tuple(self._events)

    @property
    def pending(self) -> tuple[Event, ...]:
        """What is to be done in the next tick."""
        return tuple(self._to_come.get(self.tick, ()))

    @property
    def probes(self) -> Mapping[Cell, History]:
        """The watched cells in the order in which they were added, with what was read there so far."""
        return {cell: tuple(noted) for cell, noted in self._probes.items()}

    @property
    def watched(self) -> KeysView[Cell]:
        """The watched cells in the order in which they were added."""
        return self._probes.keys()

    def readings(self, cell: Cell, first: int) -> list[tuple[int, int]]:
        """What was read at a watched cell, tick and value each, from that reading on. Raises KeyError."""
        return self._probes[cell][first:]

    def start(self, engine: DryRun) -> None:
        """Begin at tick 0, paused, with an engine that nobody has used yet; a run that is on ends."""
        if self.is_on:
            self.stop()
        self.engine = engine
        self._begin(())
        self.started.emit()

    def run(self) -> None:
        """Let the time go on by itself."""
        if self.is_on and not self.is_running:
            self._owed = 0.0
            self._passed = 0
            self._clock.start()
            self._timer.start()
            self.state_changed.emit()

    def pause(self) -> None:
        """Let the time stand still."""
        if self.is_running:
            self._timer.stop()
            self.state_changed.emit()

    def step(self) -> None:
        """Do one tick, and pause."""
        self.pause()
        if self.is_on:
            self._tell(self._tick())

    def advance(self, milliseconds: float) -> None:
        """So much time has passed on the clock on the wall: do the ticks that are due by now."""
        self._owed += milliseconds / 1000 * TICKS_A_SECOND * self._speed
        changed: set[Cell] = set()
        spent = QElapsedTimer()
        spent.start()
        due = int(self._owed)
        for _ in range(due):
            changed |= self._tick()
            self._owed -= 1
            if spent.elapsed() > BUDGET:
                self._owed %= 1
                break
        if due:
            self._tell(changed)
        self.framed.emit()

    def rewind(self, repeat: bool = False) -> None:
        """Back to tick 0, paused. With ``repeat`` what was done so far comes again, each in its tick."""
        if self.engine is None:
            return
        self.pause()
        self.engine.reset()
        self._begin(self._events if repeat else ())
        self.rewound.emit()

    def stop(self, why: str = "") -> None:
        """End the run. What the probes read stays until the next one."""
        if self.engine is None:
            return
        self.pause()
        self.engine = self.watch = None
        self._to_come = {}
        self.ended.emit(why)

    def give(self, event: Event, after: int = 0) -> bool:
        """Have something done in the next tick, or so many ticks after that.

        Says why not, where the plan has nothing for it.
        """
        if self.engine is None:
            return False
        try:
            self.engine.check(event)
        except EventRefused as error:
            self.refused.emit(f"{str(error)[:1].upper()}{str(error)[1:]}.")
            return False
        self._to_come.setdefault(self.engine.tick + after, []).append(event)
        self.given.emit()
        return True

    def add_probe(self, cell: Cell) -> None:
        """Watch a cell from now on."""
        if cell not in self._probes:
            self._probes[cell] = []
            if self.tick:
                self._note(cell)
            self.probes_changed.emit()

    def remove_probe(self, cell: Cell) -> None:
        """Watch a cell no more."""
        if self._probes.pop(cell, None) is not None:
            self.probes_changed.emit()

    def clear_probes(self) -> None:
        """Watch nothing any more."""
        if self._probes:
            self._probes.clear()
            self.probes_changed.emit()

    def _begin(self, script: tuple[Timed, ...] | list[Timed]) -> None:
        self._to_come = {}
        for timed in script:
            self._to_come.setdefault(timed.tick, []).append(timed.event)
        self._events = []
        self._owed = 0.0
        self.changed = frozenset()
        assert self.engine is not None
        self.watch = Watch(self.engine)
        for noted in self._probes.values():
            noted.clear()

    def _tick(self) -> frozenset[Cell]:
        engine, watch = self.engine, self.watch
        assert engine is not None
        assert watch is not None
        now = engine.tick
        events = self._to_come.pop(now, [])
        engine.step(events)
        watch.note()
        self._events += [Timed(now, event) for event in events]
        for cell in self._probes:
            self._note(cell)
        return engine.changed

    def _note(self, cell: Cell) -> None:
        assert self.engine is not None
        noted, value = self._probes[cell], self.engine.output(cell)
        if not noted or noted[-1][1] != value:
            noted.append((self.engine.tick - 1, value))

    def _tell(self, changed: set[Cell] | frozenset[Cell]) -> None:
        self.changed = frozenset(changed)
        self.ticked.emit()

    def _on_frame(self) -> None:
        try:
            # Whole milliseconds would lose half of one with each picture, and the run a tick in forty.
            passed, self._passed = self._passed, self._clock.nsecsElapsed()
            self.advance((self._passed - passed) / 1e6)
        except Exception:
            # A mistake is told once, not with each picture from now on.
            self.pause()
            raise
