"""The single faults that are looked for, and which of them a finished junction can have.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from enum import StrEnum
from itertools import combinations
from typing import Any

import msgspec

from model.grid import Cell
from model.parts import Part
from model.routing.junction import Junction
from model.track.around import rail_at_end
from model.track.shapes import FLAT, Shape
from model.wording import tr


class Kind(StrEnum):
    """What can be wrong; the words of files."""

    INVERTER_MISSING = "inverter-missing"
    INVERTER_EXTRA = "inverter-extra"
    LINE_DEAD = "line-dead"
    LINE_STUCK = "line-stuck"
    LINE_MISSING = "line-missing"
    RAIL_TURNED = "rail-turned"


class Fault(msgspec.Struct, frozen=True):
    """One thing that is not as designed; what does not belong to its kind is ``None``."""

    kind: Kind
    arm: str | None = None
    """The arm of the reader whose line it is."""
    at: Cell | None = None
    """The switch, or the rail that lies otherwise."""
    shape: Shape | None = None
    """How that rail lies, before any power changes."""

    @property
    def words(self) -> str:
        """The fault for people, as a clause: "the line of Quay is dead"."""
        match self.kind:
            case Kind.INVERTER_MISSING:
                return tr("the inverter of the switch at {place} is missing", place=self.at)
            case Kind.INVERTER_EXTRA:
                return tr("the switch at {place} has an inverter that it should not have", place=self.at)
            case Kind.LINE_DEAD:
                return tr("the line of the reader of {arm} is dead", arm=self.arm)
            case Kind.LINE_STUCK:
                return tr("the line of the reader of {arm} never lets go", arm=self.arm)
            case Kind.LINE_MISSING:
                return tr(
                    "the line of the reader of {arm} does not reach the switch at {place}",
                    arm=self.arm,
                    place=self.at,
                )
            case Kind.RAIL_TURNED:
                return tr(
                    "the rail at {place} lies {shape}",
                    place=self.at,
                    shape=tr(self.shape.word) if self.shape is not None else "",
                )

    def as_json(self) -> dict[str, Any]:
        """The fault with the keys of its kind."""
        shape = None if self.shape is None else self.shape.word
        members = {"kind": self.kind, "arm": self.arm, "at": self.at, "shape": shape}
        return {key: value for key, value in members.items() if value is not None}


def possible_faults(junction: Junction) -> tuple[Fault, ...]:
    """Every single fault that the junction can have, kind by kind; arms by name, cells in file order."""
    choice = junction.choice
    wired = [at for at in junction.switch_states if at in choice.wired]
    throws = {arm: cells for arm, cells in choice.thrown.items() if cells}
    return (
        *(Fault(Kind.INVERTER_MISSING, at=at) for at in wired if at in choice.idle),
        *(Fault(Kind.INVERTER_EXTRA, at=at) for at in wired if at not in choice.idle),
        *(Fault(Kind.LINE_DEAD, arm) for arm in throws),
        *(Fault(Kind.LINE_STUCK, arm) for arm in throws),
        *(Fault(Kind.LINE_MISSING, arm, at) for arm in throws for at in wired if at in throws[arm]),
        *_rails_turned(junction),
    )


def _rails_turned(junction: Junction) -> Iterator[Fault]:
    """Unwired plain rails on wanted routes, in every other flat shape whose two ends both find a rail."""
    passed = {cell for way in junction.ways.values() for cell in way.path} - junction.choice.wired
    for at, built in junction.layout.shapes.items():
        if at in passed and junction.plan.pieces.part_at(at) is Part.RAIL:
            for shape in FLAT:
                found = (rail_at_end(junction.layout, at, end) for end in shape.ends)
                if shape is not built and None not in found:
                    yield Fault(Kind.RAIL_TURNED, at=at, shape=shape)


def go_together(faults: Iterable[Fault]) -> bool:
    """Whether faults can be there at once, and none makes another one meaningless."""
    return not any(_exclude(one, other) for one, other in combinations(faults, 2))


def _exclude(one: Fault, other: Fault) -> bool:
    if one.kind is other.kind is Kind.RAIL_TURNED:
        return one.at == other.at
    dead = {one.kind, other.kind} & {Kind.LINE_DEAD}
    return bool(dead) and one.arm is not None and one.arm == other.arm
