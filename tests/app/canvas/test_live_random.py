"""What a dry run shows after each tick, looking at what changed, is what a fresh look at all shows."""

from __future__ import annotations

import random
from dataclasses import replace

import pytest

from app.canvas.live import Live
from app.canvas.looks import Looks
from app.canvas.symbols import Look
from model.dry_run import Drop, DryRun, Event, Lever, Press
from model.grid import Cell, Facing, Heading
from model.parts import RAILS, TRAITS, Part
from model.pieces import Held, Piece, new_piece
from model.plan import Plan, plan_of
from model.track.layout import Layout

SIDE, LEVELS = 6, (64, 65)
PARTS = (
    *([Part.DUST] * 6),
    *([Part.RAIL] * 6),
    *([Part.SOLID_BLOCK] * 8),
    *([Part.REPEATER, Part.TORCH, Part.LEVER, Part.HOPPER, Part.COMPARATOR] * 3),
    *(part for part in Part if part is not Part.SLAB),
)
LEVEL_FACINGS = (Facing.NORTH, Facing.EAST, Facing.SOUTH, Facing.WEST)


def random_plan(dice: random.Random) -> Plan:
    """Parts thrown into a small space, facing anywhere they can."""
    cells = [Cell(x, y, z) for y in LEVELS for x in range(SIDE) for z in range(SIDE)]
    return plan_of([random_piece(dice, cell) for cell in cells if dice.random() < 0.7])


def random_piece(dice: random.Random, cell: Cell) -> Piece:
    part = dice.choice(PARTS)
    facing = dice.choice(LEVEL_FACINGS) if part in RAILS else dice.choice(tuple(TRAITS[part].facings))
    holds = (Held("nugget", dice.randrange(1, 60)),) if TRAITS[part].slots else ()
    made = Piece(part, cell, facing, holds=holds)
    return replace_delay(dice, made) if part is Part.REPEATER else made


def replace_delay(dice: random.Random, piece: Piece) -> Piece:
    return Piece(piece.part, piece.at, piece.facing, delay=dice.choice((2, 4, 6, 8)))


def random_events(dice: random.Random, plan: Plan) -> list[Event]:
    piece = dice.choice([*plan.pieces])
    if piece.part is Part.LEVER:
        return [Lever(piece.at, dice.random() < 0.5)]
    if piece.part is Part.BUTTON:
        return [Press(piece.at)]
    return [Drop(piece.at, dice.choice(tuple(Heading)))] if piece.part in RAILS else []


def plain(looks: dict[Cell, Look], plan: Plan, rest: Looks) -> dict[Cell, Look]:
    """The look of every piece, without marks: a fresh look does not know what was unsure."""
    return {piece.at: replace(looks.get(piece.at, rest.look(piece)), mark=None) for piece in plan.pieces}


@pytest.mark.parametrize("seed", range(40))
def test_incremental_looks_are_those_of_a_fresh_view(seed: int) -> None:
    dice = random.Random(seed)
    plan = random_plan(dice)
    layout = Layout(plan)
    rest = Looks(layout, {}, {})
    engine = DryRun(plan, layout)
    # So slowly that nothing changes too often to be drawn.
    live = Live(engine, rest, lambda: 2.0 * engine.tick)
    for _ in range(60):
        engine.step(random_events(dice, plan))
        live.follow(engine.changed)
        fresh = Live(engine, rest, lambda: 0.0)
        assert plain(live.looks, plan, rest) == plain(fresh.looks, plan, rest)


def test_the_plans_are_not_dull() -> None:
    """Control: in the random plans dust, torches, rails and items do change."""
    changed: set[Part] = set()
    for seed in range(40):
        dice = random.Random(seed)
        plan = random_plan(dice)
        engine = DryRun(plan)
        for _ in range(40):
            engine.step(random_events(dice, plan))
            changed |= {part for cell in engine.changed if (part := plan.pieces.part_at(cell)) is not None}
    assert changed >= {Part.DUST, Part.TORCH, Part.RAIL, Part.HOPPER, Part.REPEATER, Part.SOLID_BLOCK}


def test_a_new_piece_is_drawn_at_rest() -> None:
    """Control: a piece that no signal reaches is left to the tiles."""
    plan = plan_of([new_piece(Part.SOLID_BLOCK, Cell(0, 64, 0)), new_piece(Part.GLASS, Cell(1, 64, 0))])
    layout = Layout(plan)
    assert Live(DryRun(plan, layout), Looks(layout, {}, {}), lambda: 0.0).looks == {}
