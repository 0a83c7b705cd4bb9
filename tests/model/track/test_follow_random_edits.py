"""A layout that follows random edits equals the replay of the whole plan, by both implementations."""

from __future__ import annotations

from random import Random

import pytest

from model.pieces import Piece, Placed
from model.plan import Change, Plan
from model.track.layout import Layout
from tests.oracle.adapter import drawing, piece_of, pieces_from, plan_from, shapes_in
from tests.oracle.random_plans import WAYS, random_part, random_pieces
from tests.oracle.shapes import build


def random_piece(random: Random, plan: Plan) -> Piece:
    """A piece in or beside the plan's own box."""
    cells = [piece.at for piece in plan.pieces] or [(0, 0, 0)]
    x, y, z = random.choice(cells)
    at = (x + random.randint(-1, 1), y + random.choice((0, 0, 0, 1, -1)), z + random.randint(-1, 1))
    return piece_of(random_part(random, 0.8), at, random.choice(WAYS))


def placing(random: Random, plan: Plan) -> Change:
    """New pieces at the end of the order, in the place of what stands there."""
    new = {piece.at: piece for piece in (random_piece(random, plan) for _ in range(random.randint(1, 4)))}
    taken = tuple(entry for at in new if (entry := plan.pieces.placed(at)) is not None)
    first = plan.pieces.next_rank
    return Change("place", taken, tuple(Placed(first + i, piece) for i, piece in enumerate(new.values())))


def erasing(random: Random, plan: Plan) -> Change:
    """A few pieces taken away."""
    entries = plan.pieces.in_order()
    return Change("erase", tuple(random.sample(entries, min(len(entries), random.randint(1, 4)))))


def turning_in_place(random: Random, plan: Plan) -> Change:
    """A piece that keeps its rank, but is another part or faces otherwise."""
    taken = tuple(random.sample(plan.pieces.in_order(), 1))
    rank, piece = taken[0]
    part, facing = random_part(random, 0.7), random.choice(WAYS)
    return Change("set", taken, (Placed(rank, piece_of(part, tuple(piece.at), facing)),))


def moving(random: Random, plan: Plan) -> Change:
    """Some pieces one cell on, in their ranks, where that is free."""
    entries = plan.pieces.in_order()
    taken = random.sample(entries, min(len(entries), random.randint(1, 5)))
    going = {entry.piece.at for entry in taken}
    dx, dy, dz = random.choice(((1, 0, 0), (-1, 0, 0), (0, 0, 1), (0, 0, -1), (0, 1, 0)))
    placed = []
    for rank, piece in taken:
        at = piece.at.moved(dx, dy, dz)
        if at not in plan.pieces or at in going:
            placed.append(Placed(rank, piece_of(str(piece.part), tuple(at), str(piece.facing))))
    return Change("move", tuple(taken), tuple(placed))


def swapping_ranks(random: Random, plan: Plan) -> Change:
    """Two pieces change places in the order."""
    taken = tuple(random.sample(plan.pieces.in_order(), 2))
    (first, one), (second, other) = taken
    return Change("reorder", taken, (Placed(first, other), Placed(second, one)))


def random_change(random: Random, plan: Plan, done: list[Change]) -> Change:
    """Any edit; sometimes the last one taken back, which puts pieces into the midst of the order."""
    if done and random.random() < 0.3:
        return done.pop().inverse()
    if len(plan.pieces) < 2:
        change = placing(random, plan)
    else:
        edits = (placing, placing, erasing, turning_in_place, moving, swapping_ranks)
        change = random.choice(edits)(random, plan)
    done.append(change)
    return change


def follow_and_compare(seed: int, steps: int) -> None:
    """Follows random edits of one random plan; previews each one first."""
    random = Random(seed)
    layout = Layout(plan_from(random_pieces(random)))
    done: list[Change] = []
    for _ in range(steps):
        before = dict(layout.shapes)
        change = random_change(random, layout.plan, done)
        plan = change.applied(layout.plan)
        after = dict(Layout(plan).shapes)
        changed = {cell for cell in before.keys() | after.keys() if before.get(cell) != after.get(cell)}
        told = f"seed {seed}\n{drawing(pieces_from(layout.plan))}\n{change}"

        assert layout.preview(change) == {cell: after.get(cell) for cell in changed}, told
        assert layout.shapes == before, told
        assert list(layout.plan.pieces) == list(change.inverse().applied(plan).pieces), told

        assert layout.follow(change) == changed, told
        assert layout.plan == plan, told
        assert list(layout.shapes.items()) == list(after.items()), told
        assert shapes_in(layout) == build(pieces_from(plan)).shape, told


@pytest.mark.timeout(300)
def test_following_random_edits_equals_the_whole_replay() -> None:
    for seed in range(300):
        follow_and_compare(seed, 30)


@pytest.mark.slow
@pytest.mark.timeout(3600)
def test_following_many_random_edits_equals_the_whole_replay() -> None:
    for seed in range(1_000, 6_000):
        follow_and_compare(seed, 50)
