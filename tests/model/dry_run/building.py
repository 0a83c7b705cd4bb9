"""Small circuits and tracks for tests: pieces put down one by one, and runs that are looked at."""

from __future__ import annotations

from typing import Any

import msgspec

from model.dry_run import DryRun, Event, Lever, Result, Script, Timed, run
from model.grid import Cell, Facing, Heading
from model.parts import Part
from model.pieces import Held, Piece, new_piece, rests_on
from model.plan import Arm, ArmEnd, Details, Plan, plan_of

N, E, S, W, UP, DOWN = Facing
LEVEL = 64


def cell(x: int, z: int, y: int = LEVEL) -> Cell:
    """A cell on the level of the circuit, or another."""
    return Cell(x, y, z)


class Bench:
    """Pieces in the order in which they are put down."""

    def __init__(self) -> None:
        self.pieces: dict[Cell, Piece] = {}
        self.arms: list[Arm] = []

    def put(
        self, part: Part | str, x: int, z: int, facing: Facing | None = None, y: int = LEVEL, **more: Any
    ) -> Cell:
        """A part; a solid block comes under it, or behind it, where it needs one and there is none."""
        piece = msgspec.structs.replace(new_piece(Part(part), Cell(x, y, z), facing), **more)
        holder = rests_on(piece)
        if holder is not None and holder not in self.pieces:
            self.pieces[holder] = Piece(Part.SOLID_BLOCK, holder)
        assert piece.at not in self.pieces, piece.at
        self.pieces[piece.at] = piece
        return piece.at

    def line(
        self, x: int, z: int, length: int, facing: Facing = E, part: Part | str = Part.DUST, y: int = LEVEL
    ) -> list[Cell]:
        """So many of a part, one behind another."""
        heading = facing.heading
        assert heading is not None
        cells = [Cell(x, y, z)]
        while len(cells) < length:
            cells.append(cells[-1].step(heading))
        return [self.put(part, at.x, at.z, facing, y) for at in cells]

    def track(
        self, x: int, z: int, length: int, facing: Facing = E, part: Part | str = Part.RAIL
    ) -> list[Cell]:
        """So many rails."""
        return self.line(x, z, length, facing, part)

    def arm(
        self, name: str, into: tuple[Cell, Heading] | None = None, out: tuple[Cell, Heading] | None = None
    ) -> None:
        """An arm by which carts come in, or leave, or both."""
        self.arms.append(
            Arm(name, None if into is None else ArmEnd(*into), None if out is None else ArmEnd(*out))
        )

    def plan(self) -> Plan:
        """The plan."""
        return plan_of(list(self.pieces.values()), Details(arms=tuple(self.arms)))

    def dry_run(self) -> DryRun:
        """Started, before tick 0."""
        return DryRun(self.plan())

    def watch(self, cells: list[Cell], events: list[tuple[int, Event]], ticks: int | None = None) -> Result:
        """What comes of these events."""
        return run(self.plan(), Script(tuple(Timed(*event) for event in events), tuple(cells)), ticks)


def changes(
    bench: Bench, at: Cell, events: list[tuple[int, Event]], ticks: int | None = None
) -> list[tuple[int, int]]:
    """What a probe lists."""
    return list(bench.watch([at], events, ticks).probes[at])


def on(lever: Cell, tick: int = 0) -> tuple[int, Event]:
    """A lever is put on."""
    return tick, Lever(lever, True)


def off(lever: Cell, tick: int = 0) -> tuple[int, Event]:
    """A lever is put off."""
    return tick, Lever(lever, False)


def pulse(lever: Cell, tick: int, length: int) -> list[tuple[int, Event]]:
    """A lever on for so many ticks."""
    return [on(lever, tick), off(lever, tick + length)]


def holding(*stacks: tuple[str, int]) -> dict[str, tuple[Held, ...]]:
    """What a container holds, for ``put``."""
    return {"holds": tuple(Held(item, count) for item, count in stacks)}


def settle(dry_run: DryRun, events: list[Event], ticks: int = 40) -> None:
    """Some events in one tick, and then some ticks."""
    dry_run.step(events)
    for _ in range(ticks):
        dry_run.step()
