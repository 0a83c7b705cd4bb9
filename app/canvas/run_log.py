"""What came of a dry run, in words: carts that left or were lost, what is unsure or wrong. No Qt here."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, NamedTuple

from app.translation import QT_TR_NOOP, tr
from model.dry_run import Arrival, DryRun, Load, Lost, Unsure, Watch, Why
from model.grid import Cell
from model.plan import Plan

KEPT: Final = 200
"""Lines that are kept; the oldest go."""
REASONS: Final = {
    Why.LEAVES_TRACK: QT_TR_NOOP("Cart {cart} left the track at {place}"),
    Why.STOPPED: QT_TR_NOOP("Cart {cart} was stopped by a block at {place}"),
    Why.COLLISION: QT_TR_NOOP("Cart {cart} collided at {place}"),
}


class Entry(NamedTuple):
    """A line of the log, which ends without a full stop, and the cells to look at."""

    tick: int
    words: str
    cells: tuple[Cell, ...]

    @property
    def line(self) -> str:
        """With its tick."""
        return tr("Tick {tick}: {words}", tick=self.tick, words=self.words)


class RunLog:
    """Reads what the engine, and who watches it, add to their lists."""

    def __init__(self, engine: DryRun, watch: Watch) -> None:
        self._engine = engine
        self._watch = watch
        self.entries: list[Entry] = []
        self._known = (0, 0, 0)
        self._pairs: set[tuple[Cell, Cell]] = set()
        """Those that are listed as unsure; they may come again with every turn of a clock."""
        self._troubles: set[str] = set()

    def follow(self) -> list[Entry]:
        """What is new, by tick."""
        engine = self._engine
        arrivals, lost, unsure = self._known
        new = [
            *(arrived(engine.plan, each) for each in engine.arrivals[arrivals:]),
            *(was_lost(each) for each in engine.lost[lost:]),
            *(is_unsure(each) for each in self._new_pairs(engine.unsure[unsure:])),
            *self._new_troubles(),
        ]
        self._known = (len(engine.arrivals), len(engine.lost), len(engine.unsure))
        new.sort(key=lambda entry: entry.tick)
        self.entries = [*self.entries, *new][-KEPT:]
        return new

    def _new_troubles(self) -> Iterator[Entry]:
        for found in self._watch.findings():
            if found.message not in self._troubles:
                self._troubles.add(found.message)
                yield Entry(found.tick, found.message.removesuffix("."), found.cells)

    def _new_pairs(self, unsure: list[Unsure]) -> Iterator[Unsure]:
        for each in unsure:
            if each.at not in self._pairs:
                self._pairs.add(each.at)
                yield each


def arrived(plan: Plan, arrival: Arrival) -> Entry:
    """A cart has left by an arm."""
    arm = plan.details.arm(arrival.arm)
    cells = (arm.leave.at,) if arm is not None and arm.leave is not None else ()
    said = tr("Cart {cart} leaves by {arm}", cart=arrival.cart, arm=arrival.arm)
    return Entry(arrival.tick, with_load(said, arrival.carries), cells)


def was_lost(lost: Lost) -> Entry:
    """A cart has stopped, left the track or met another."""
    return Entry(
        lost.tick,
        tr(REASONS[lost.why], cart=lost.cart, place=lost.at),
        (lost.at,),
    )


def is_unsure(unsure: Unsure) -> Entry:
    """Two cells whose order within the tick matters."""
    one, other = unsure.at
    return Entry(unsure.tick, tr("Unsure: {one} or {other} may come first", one=one, other=other), unsure.at)


def with_load(cart: str, load: Load) -> str:
    """What is said of a cart, with the waybills that it carries: ``cart 2 with 3 Salt``."""
    held = ", ".join(f"{count} {name}" for name, count in load if count)
    return tr("{cart} with {held}", cart=cart, held=held) if held else cart
