"""A whole run of a script over a plan."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from model.dry_run.dry_run import DryRun, Unsure
from model.dry_run.findings import RunFinding
from model.dry_run.outcomes import Arrival, Lost
from model.dry_run.script import TICK_LIMIT, Event, Script
from model.dry_run.watch import Watch
from model.grid import Cell
from model.plan import Plan
from model.track.layout import Layout

Watched = tuple[tuple[int, int], ...]
"""Tick and strength, at tick 0 and at each change."""


class Result(Struct, frozen=True):
    """What came of a run."""

    ticks: int
    arrivals: tuple[Arrival, ...]
    lost: tuple[Lost, ...]
    probes: dict[Cell, Watched]
    unsure: tuple[Unsure, ...]
    findings: tuple[RunFinding, ...]


def run(plan: Plan, script: Script, ticks: int | None = None, layout: Layout | None = None) -> Result:
    """Runs that many ticks; without a number, until nothing moves or changes, 12,000 at most.

    Raises EventRefused for an event that the plan has nothing for, before the first tick.
    """
    dry_run = DryRun(plan, layout)
    by_tick = _by_tick(script)
    for timed in script.events:
        dry_run.check(timed.event)
    probes, watch = Probes(script.probes), Watch(dry_run)
    last_event = max(by_tick, default=-1)
    while dry_run.tick < (TICK_LIMIT if ticks is None else ticks):
        tick = dry_run.tick
        dry_run.step(by_tick.get(tick, ()))
        probes.note(dry_run, tick)
        watch.note()
        if ticks is None and tick >= last_event and dry_run.is_quiet:
            ticks = dry_run.active_ticks
            break
    return Result(
        ticks=TICK_LIMIT if ticks is None else ticks,
        arrivals=tuple(dry_run.arrivals),
        lost=(*dry_run.lost, *dry_run.running),
        probes=probes.watched,
        unsure=tuple(dry_run.unsure),
        findings=watch.findings(),
    )


class Probes:
    """Writes down what is read at some cells, at tick 0 and at each change."""

    def __init__(self, cells: Sequence[Cell]) -> None:
        self._noted: dict[Cell, list[tuple[int, int]]] = {cell: [] for cell in cells}

    @property
    def watched(self) -> dict[Cell, Watched]:
        """What was read so far."""
        return {cell: tuple(noted) for cell, noted in self._noted.items()}

    def note(self, dry_run: DryRun, tick: int) -> None:
        """Reads after a tick."""
        for cell, noted in self._noted.items():
            strength = dry_run.output(cell)
            if not noted or noted[-1][1] != strength:
                noted.append((tick, strength))


def _by_tick(script: Script) -> dict[int, list[Event]]:
    by_tick: dict[int, list[Event]] = {}
    for timed in script.events:
        by_tick.setdefault(timed.tick, []).append(timed.event)
    return by_tick
