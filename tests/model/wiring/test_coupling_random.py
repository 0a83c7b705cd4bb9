"""Random pieces in random plans: where no coupling is found the old parts do what they did, tick for tick."""

from __future__ import annotations

from itertools import product
from random import Random

import pytest

from model.dry_run import DryRun, Event, Lever, Press
from model.grid import Cell
from model.parts import RAILS, TRAITS, Part
from model.pieces import Piece
from model.plan import Plan, plan_of
from model.track.layout import Layout
from model.track.switches import three_way
from model.wiring.lines.coupling import couplings
from tests.oracle.dry_run_adapter import model_piece
from tests.oracle.dry_run_plans import WIRING, random_box, random_piece

TICKS = 45
NEW = {**WIRING, "dust": 14, "hopper": 2, "barrel": 2}
GATES = {"solid-block": 8, "dust": 5, "torch": 4, "repeater": 6, "comparator": 5, "lever": 5}
GATES |= {"barrel": 2, "lamp": 2}
BLOCKS = frozenset({Part.SOLID_BLOCK, Part.TARGET_BLOCK, Part.BARREL})
"""Parts that heed no power of their own, though a probe shows it."""


def random_case(random: Random) -> tuple[Plan, list[Piece]]:
    """A plan and new pieces: torn out of a dense box half of the time, else put down in and about one."""
    pieces = random_gates(random) if random.random() < 0.5 else list(map(model_piece, random_box(random)))
    if random.random() < 0.7 and len(pieces) > 3:
        new = [
            piece
            for piece in random.sample(pieces, random.choice((1, 1, 1, 2, 3)))
            if piece.part not in RAILS
        ]
        return plan_of([piece for piece in pieces if piece not in new]), new
    return plan_of(pieces), random_pieces(random, pieces)


def random_gates(random: Random) -> list[Piece]:
    """A dense box of parts that act on each other."""
    found = []
    for y, x, z in product((64, 65), range(4), range(4)):
        if random.random() < 0.75:
            part = random.choices(tuple(GATES), tuple(GATES.values()))[0]
            found.append(model_piece(random_piece(random, part, (x, y, z))))
    return found


def random_pieces(random: Random, pieces: list[Piece]) -> list[Piece]:
    """One to five parts in free cells in and about a box."""
    filled = {piece.at for piece in pieces} or {Cell(0, 64, 0)}
    found: dict[Cell, Piece] = {}
    near = random.choice(sorted(filled))
    while len(found) < random.randint(1, 5):
        at = near.moved(random.randint(-2, 2), random.randint(-1, 1), random.randint(-2, 2))
        if at not in filled:
            part = random.choices(tuple(NEW), tuple(NEW.values()))[0]
            found[at] = model_piece(random_piece(random, part, tuple(at)))
    return list(found.values())


def shown(run: DryRun, plan: Plan, layout: Layout) -> dict[Cell, object]:
    """What each part of the plan does; the power of what does not heed it is left out."""
    seen: dict[Cell, object] = {}
    for piece in plan.pieces:
        at, part = piece.at, piece.part
        heeds = part not in BLOCKS and (part is not Part.RAIL or three_way(layout, at))
        output = run.output(at) if heeds else None
        shape = run.shape(at) if part in RAILS else None
        content = run.contents(at) if TRAITS[part].slots else ()
        seen[at] = (output, shape, content, run.is_burnt_out(at), run.is_locked(at))
    return seen


def random_events(random: Random, plan: Plan) -> list[list[Event]]:
    """Levers are pulled and buttons pressed now and then."""
    levers = [piece.at for piece in plan.pieces if piece.part is Part.LEVER]
    buttons = [piece.at for piece in plan.pieces if piece.part is Part.BUTTON]
    ticks: list[list[Event]] = [[] for _ in range(TICKS)]
    for events in ticks:
        if random.random() < 0.5:
            events += [Lever(at, random.random() < 0.5) for at in levers if random.random() < 0.6]
            events += [Press(at) for at in buttons if random.random() < 0.3]
    return ticks


def both_runs(plan: Plan, whole: Plan, own: set[Cell], random: Random) -> bool:
    """Whether the old parts do the same with the new ones, levers among the new ones being pulled too."""
    layout = Layout(plan)
    alone, together = DryRun(plan), DryRun(whole)
    levers = [piece.at for piece in whole.pieces if piece.part is Part.LEVER and piece.at in own]
    for events in random_events(random, plan):
        alone.step(events)
        more = [Lever(at, random.random() < 0.5) for at in levers if random.random() < 0.2]
        together.step([*events, *more])
        if shown(alone, plan, layout) != shown(together, plan, layout):
            return False
    unsure = [found for found in together.unsure if not own & set(found.at)]
    return alone.unsure == unsure


def compare(seeds: range) -> tuple[int, int]:
    """How many pairs were found without couplings, and how many with one that showed in the run."""
    quiet = loud = 0
    for seed in seeds:
        random = Random(seed)
        plan, new = random_case(random)
        found = couplings(plan, new)
        whole = plan_of([*plan.pieces, *new])
        same = both_runs(plan, whole, {piece.at for piece in new}, random)
        if not found:
            assert same, f"seed {seed}: no coupling is found, but the old parts do otherwise"
            quiet += 1
        elif not same:
            loud += 1
    return quiet, loud


def test_without_couplings_the_old_parts_do_what_they_did() -> None:
    quiet, loud = compare(range(250))
    assert quiet > 100
    assert loud > 20


@pytest.mark.slow
@pytest.mark.timeout(600)
@pytest.mark.parametrize("first", range(10_000, 26_000, 2_000))
def test_without_couplings_the_old_parts_do_what_they_did_in_many_plans(first: int) -> None:
    quiet, loud = compare(range(first, first + 2_000))
    assert quiet > 900
    assert loud > 200
