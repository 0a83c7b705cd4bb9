"""Random plans that cost next to nothing to make, for where very many are wanted.

They hold what files can hold, as those of ``tests.strategies`` do, which shrink to the least that fails but
cost a hundred times as much. Cells come from a small box so that pieces meet.
"""

from __future__ import annotations

from random import Random
from typing import Final

from model.grid import Cell, Heading
from model.parts import DELAYS, RAILS, STACK, TRAITS, Mode, Part
from model.pieces import Held, Piece
from model.plan import Arm, ArmEnd, Details, Plan, Route, SheetData, Side, Waiver, plan_of
from tests.harness.names import hostile_names
from tests.strategies import REACH, STATIONS

PARTS: Final = (*Part, *sorted(RAILS) * 3, *[Part.RAIL] * 10)
NAMES: Final = (*STATIONS, *hostile_names(20, 7, as_arms=True))
ITEMS: Final = ("ingot", "nugget", "salt", "waybill:Salt", "waybill:日本")


def random_cell(random: Random) -> Cell:
    """One of the box."""
    return Cell(random.randint(-REACH, REACH), random.randint(63, 65), random.randint(-REACH, REACH))


def random_piece(random: Random, at: Cell) -> Piece:
    """Of any part, with what only that part may have."""
    part = random.choice(PARTS)
    slots = min(TRAITS[part].slots, 3)
    return Piece(
        part,
        at,
        random.choice(TRAITS[part].facings),
        delay=random.choice(DELAYS) if part is Part.REPEATER else DELAYS[0],
        mode=random.choice([*Mode]) if part is Part.COMPARATOR else Mode.COMPARE,
        wooden=part is Part.BUTTON and random.random() < 0.5,
        holds=tuple(
            Held(random.choice(ITEMS), random.randint(1, STACK)) for _ in range(random.randint(0, slots))
        ),
    )


def random_plan(random: Random, most: int = 20) -> Plan:
    """At least one piece, one arm, one route and one waiver, so that every edit finds something to change."""
    cells = {random_cell(random): None for _ in range(random.randint(1, most))}
    return plan_of([random_piece(random, cell) for cell in cells], _details(random))


def _details(random: Random) -> Details:
    names = random.sample(NAMES, random.randint(1, 4))
    starts = random.sample([*names, "Nowhere"], random.randint(1, len(names)))
    return Details(
        random.choice(NAMES),
        random.choice([None, *Side]),
        tuple(_arm(random, name) for name in names),
        tuple(_route(random, start, names) for start in starts),
        tuple(_waiver(random, names) for _ in range(random.randint(1, 2))),
        SheetData(*(random.choice(NAMES) for _ in range(6))),
    )


def _arm(random: Random, name: str) -> Arm:
    ends = [ArmEnd(random_cell(random), random.choice([*Heading])) for _ in range(2)]
    has = random.choice(((True, True), (True, False), (False, True)))
    return Arm(name, ends[0] if has[0] else None, ends[1] if has[1] else None)


def _route(random: Random, start: str, names: list[str]) -> Route:
    called = random.choice([None, *names])
    return Route(start, random.choice(names), called, None if called is None else random.choice(NAMES))


def _waiver(random: Random, names: list[str]) -> Waiver:
    cells = tuple({random_cell(random): None for _ in range(random.randint(0, 3))})
    arms = tuple(random.sample(names, random.randint(0, min(2, len(names)))))
    rule = random.choice(("running-side", "loose-end", "unreached", "unsupported"))
    return Waiver(rule, cells, arms, random.choice(NAMES))
