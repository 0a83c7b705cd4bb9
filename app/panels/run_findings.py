"""What a dry run found, as rows for people: carts that arrived or were lost, and what it is not sure of."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import groupby
from typing import Final

from app.names import part_name
from app.panels.timing_trace import seconds
from app.panels.words import listed
from app.translation import QT_TR_NOOP, tr
from model.dry_run import Arrival, DryRun, Lost, RunFinding, Trouble, Why
from model.grid import Cell
from model.rules import Severity

WAITS: Final = QT_TR_NOOP(
    "No signal comes to the booster on which it is held, and nothing else moves or changes."
)
LOST: Final = {
    Why.LEAVES_TRACK: (
        Severity.ERROR,
        QT_TR_NOOP("left the track"),
        QT_TR_NOOP("There is no rail where it went on from here."),
    ),
    Why.STOPPED: (
        Severity.ERROR,
        QT_TR_NOOP("was stopped by a block"),
        QT_TR_NOOP("A part stands where the track goes on from here."),
    ),
    Why.RUNNING: (Severity.WARNING, QT_TR_NOOP("waits without end"), WAITS),
}


TROUBLES: Final = {
    Trouble.DUST_OUT_OF_REACH: (Severity.WARNING, QT_TR_NOOP("Dust out of reach")),
    Trouble.LINES_TOUCH: (Severity.WARNING, QT_TR_NOOP("Two lines touch")),
    Trouble.BLOCK_FROM_TWO_LINES: (Severity.WARNING, QT_TR_NOOP("A block powered from two lines")),
    Trouble.TORCH_BURNS_OUT: (Severity.ERROR, QT_TR_NOOP("A torch burns out")),
    Trouble.NEVER_SETTLES: (Severity.WARNING, QT_TR_NOOP("A circuit that never settles")),
    Trouble.READER_COUNT: (Severity.ERROR, QT_TR_NOOP("A reader with the wrong count")),
    Trouble.HOLD_TOO_SHORT: (Severity.ERROR, QT_TR_NOOP("A hold that is too short")),
}


@dataclass(frozen=True)
class RunRow:
    """Something that the run found; it is drawn as a finding is."""

    key: tuple[object, ...]
    severity: Severity
    title: str
    message: str
    cells: tuple[Cell, ...]
    tick: int | None
    """``None`` where it holds for the whole run."""
    waived: bool = False
    """What happened cannot be set aside."""

    @property
    def place(self) -> str:
        """When it happened, else where it is."""
        if self.tick is not None:
            return tr("tick {tick}", tick=self.tick)
        return str(self.cells[0]) if self.cells else ""


def rows_of(run: DryRun, findings: Iterable[RunFinding] = ()) -> list[RunRow]:
    """All that a run and who watches it have found so far, the gravest first, then in the order of time."""
    rows = [
        *map(_trouble, findings),
        *_lost(run.lost),
        *_waiting(run),
        *_unsure(run),
    ]
    rows += [_arrived(run, arrival) for arrival in run.arrivals]
    # What comes later must not change the place of what is there already.
    return sorted(rows, key=lambda row: (row.severity.rank, row.tick or 0))


def _trouble(found: RunFinding) -> RunRow:
    severity, title = TROUBLES[found.trouble]
    # What a reader holds is wrong from the start, whatever happens.
    tick = None if found.trouble is Trouble.READER_COUNT else found.tick
    key = (found.trouble, found.cells[0])
    return RunRow(key, severity, tr(title), found.message, found.cells, tick)


def _lost(lost: Iterable[Lost]) -> Iterator[RunRow]:
    """A row a cart, but one row for carts that ran into each other."""
    for (tick, at, why), group in groupby(lost, key=lambda one: (one.tick, one.at, one.why)):
        carts = [one.cart for one in group]
        if why is Why.COLLISION:
            yield RunRow(("collision", tick, at), Severity.ERROR, *_collision(carts, at), (at,), tick)
            continue
        severity, does, message = LOST[why]
        for cart in carts:
            yield RunRow(
                ("lost", cart),
                severity,
                tr("Cart {cart} {does}", cart=cart, does=tr(does)),
                tr(message),
                (at,),
                tick,
            )


def _collision(carts: list[int], at: Cell) -> tuple[str, str]:
    if len(carts) == 1:
        # The other one had stopped there and is listed for that.
        return tr("Cart {cart} ran into a cart", cart=carts[0]), tr(
            "A cart stood at {at}; both are gone.", at=at
        )
    return tr("Carts {carts} collided", carts=listed([*map(str, carts)])), tr(
        "They were in one cell, {at}.", at=at
    )


def _waiting(run: DryRun) -> Iterator[RunRow]:
    """Carts that no one will free: a cart that is only held for now is no finding."""
    if run.is_quiet:
        severity, does, message = LOST[Why.RUNNING]
        for one in run.running:
            key = ("waits", one.cart)
            yield RunRow(
                key,
                severity,
                tr("Cart {cart} {does}", cart=one.cart, does=tr(does)),
                tr(message),
                (one.at,),
                one.tick,
            )


def _unsure(run: DryRun) -> Iterator[RunRow]:
    """A row a pair: with a clock it comes again and again."""
    ticks: dict[tuple[Cell, Cell], list[int]] = {}
    for one in run.unsure:
        ticks.setdefault(one.at, []).append(one.tick)
    for at, found in ticks.items():
        names = listed([_name(run, cell) for cell in at])
        message = tr("{names} change in one tick; the world may take them the other way round.", names=names)
        if len(found) > 1:
            message += " " + tr("So it was {count} times.", count=len(found))
        title = tr("Order within a tick decides")
        yield RunRow(("unsure", at), Severity.WARNING, title, message, at, found[0])


def _name(run: DryRun, cell: Cell) -> str:
    part = run.plan.pieces.part_at(cell)
    return str(cell) if part is None else f"{part_name(part)} {cell}"


def _arrived(run: DryRun, arrival: Arrival) -> RunRow:
    left = [f"{count} {name}" for name, count in arrival.carries if count]
    arm = run.plan.details.arm(arrival.arm)
    cells = (arm.leave.at,) if arm is not None and arm.leave is not None else ()
    time = seconds(arrival.tick)
    message = (
        tr("After {time}, with {load}.", time=time, load=listed(left))
        if left
        else tr("After {time}, empty.", time=time)
    )
    title = tr("Cart {cart} left by {arm}", cart=arrival.cart, arm=arrival.arm)
    return RunRow(("arrived", arrival.cart), Severity.NOTE, title, message, cells, arrival.tick)
