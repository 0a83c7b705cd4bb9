"""Wiring one line anew."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from model.dry_run import DryRun, Lever
from model.grid import Cell
from model.parts import Part
from model.plan import Details, Plan, Route
from model.progress import Progress
from model.wiring.lines import rewire as module
from model.wiring.lines.coupling import couplings
from model.wiring.lines.lines import lines
from model.wiring.lines.rewire import LABEL, Rewired, rewire
from model.wiring.proof.proof import Proof
from tests.model.dry_run.building import UP, Bench, E, N, S, cell

LOW = 61
LEVER = Cell(0, LOW, 0)
TARGET = Cell(8, LOW, 0)
TORCH = Cell(8, LOW + 1, 0)


def last(plan: Plan, at: Cell, wired: frozenset[Cell] = frozenset()) -> Rewired:
    line = next(line for line in lines(plan) if at in line.strength)
    steps = list(rewire(plan, line, wired))
    assert all(isinstance(step, Progress) for step in steps[:-1])
    assert isinstance(steps[-1], Rewired)
    return steps[-1]


@pytest.fixture
def bench() -> Bench:
    """A track above, a lever that drives a repeater, and a target block with a torch on it."""
    bench = Bench()
    bench.line(-2, -2, 14, E, Part.RAIL)
    bench.line(-2, 6, 14, E, Part.RAIL)
    bench.put("lever", 0, 0, UP, y=LOW)
    bench.put("repeater", 1, 0, E, y=LOW)
    bench.put("target-block", 8, 0, y=LOW)
    bench.put("torch", 8, 0, UP, y=LOW + 1)
    return bench


def detour(bench: Bench) -> None:
    """From the repeater three cells to the south, along, and back to the target block: 12 dust."""
    bench.line(2, 0, 4, S, y=LOW)
    bench.line(3, 3, 4, E, y=LOW)
    bench.line(7, 3, 4, N, y=LOW)


def torch_follows(plan: Plan, delay: int) -> None:
    """The torch goes out that many ticks after the lever goes on, and its own two."""
    run = DryRun(plan)
    run.step([Lever(LEVER, True)])
    for _ in range(delay + 1):
        run.step()
        assert run.output(TORCH) == 15
    run.step()
    assert run.output(TORCH) == 0


def test_a_detour_is_straightened(bench: Bench) -> None:
    detour(bench)
    plan = bench.plan()
    rewired = last(plan, Cell(2, LOW, 0))
    assert rewired.message == "The line is wired anew: 6 dust instead of 12 dust."
    assert rewired.change is not None
    assert rewired.change.label == LABEL
    after = rewired.change.applied(plan)
    assert sum(piece.part is Part.DUST for piece in after.pieces) == 6
    assert len(after.pieces) == len(plan.pieces) - 12
    torch_follows(plan, 2)
    torch_follows(after, 2)
    assert rewired.change.inverse().applied(after) == plan


def test_a_shortest_line_stays(bench: Bench) -> None:
    bench.line(2, 0, 6, E, y=LOW)
    rewired = last(bench.plan(), Cell(3, LOW, 0))
    assert rewired.change is None
    assert rewired.message == "No shorter way was found; the line keeps its 6 dust."


def test_a_line_that_does_not_reach_its_end_is_wired_anew_though_longer(bench: Bench) -> None:
    """Sixteen dust past the first: the strength is out before the target block, so a repeater has to come."""
    bench.pieces.pop(TARGET), bench.pieces.pop(TORCH)
    bench.line(-2, -2 + 20, 24, E, Part.RAIL)
    bench.put("target-block", 19, 0, y=LOW)
    bench.line(2, 0, 17, E, y=LOW)
    plan = bench.plan()
    assert lines(plan)[0].strength[Cell(18, LOW, 0)] == 0
    rewired = last(plan, Cell(3, LOW, 0))
    assert rewired.message == "The line is wired anew: 16 dust and 1 repeater instead of 17 dust."
    assert rewired.change is not None
    (found,) = lines(rewired.change.applied(plan))
    assert found.strength[Cell(18, LOW, 0)] > 0


def test_other_lines_are_left_alone_and_kept_clear_of(bench: Bench) -> None:
    """A foreign line lies across the straight way: the new one goes round it closer."""
    bench.line(2, 0, 5, S, y=LOW)
    bench.line(3, 4, 4, E, y=LOW)
    bench.line(7, 4, 5, N, y=LOW)
    bench.put("lever", 5, 0, UP, y=LOW)
    bench.line(5, 1, 1, y=LOW)
    plan = bench.plan()
    rewired = last(plan, Cell(2, LOW, 0))
    assert rewired.change is not None
    foreign = {Cell(5, LOW, 0), Cell(5, LOW, 1), Cell(5, LOW - 1, 0), Cell(5, LOW - 1, 1)}
    assert foreign.isdisjoint(rewired.change.cells)
    placed = [entry.piece for entry in rewired.change.placed]
    rest = Plan(plan.pieces.replaced(rewired.change.taken, ()))
    ends = {Cell(1, LOW, 0), TARGET}
    found = couplings(rest, placed)
    assert found
    assert all({each.other, each.through} & ends for each in found)
    torch_follows(rewired.change.applied(plan), 2)


@pytest.mark.parametrize("was_bad", [False, True])
def test_wanted_routes_are_as_good_as_before(
    bench: Bench, monkeypatch: pytest.MonkeyPatch, was_bad: bool
) -> None:
    """Where a run fails with the line led anew, and did not before, the line stays."""
    detour(bench)
    plan = Plan(bench.plan().pieces, Details(routes=(Route("Quay", "Mill"),)))

    def proof(proved: Plan) -> Iterator[Proof]:
        fails = proved != plan or was_bad
        yield Proof(1, 1, int(not fails), ("Quay idle: the cart came to Fen",) if fails else ())

    monkeypatch.setattr(module, "prove", proof)
    rewired = last(plan, Cell(2, LOW, 0))
    assert (rewired.change is not None) is was_bad
    if not was_bad:
        assert rewired.message == (
            "The line stays as it is. Led anew it failed in the dry run: Quay idle: the cart came to Fen."
        )


def test_a_line_from_a_lever_itself(bench: Bench) -> None:
    del bench.pieces[Cell(1, LOW, 0)]
    bench.put("dust", 1, 0, y=LOW)
    detour(bench)
    rewired = last(bench.plan(), Cell(1, LOW, 0))
    assert rewired.message == "The line is wired anew: 7 dust instead of 13 dust."


def test_only_lines_that_end_beside_target_blocks(bench: Bench) -> None:
    bench.line(2, 0, 3, E, y=LOW)
    bench.put("lamp", 5, 0, y=LOW)
    rewired = last(bench.plan(), Cell(2, LOW, 0))
    assert rewired.change is None
    assert rewired.message == (
        "The line acts on the lamp at 5 61 0; only lines that end beside target blocks are wired anew."
    )


def test_a_line_that_acts_on_nothing(bench: Bench) -> None:
    bench.line(2, 0, 3, E, y=LOW)
    assert last(bench.plan(), Cell(2, LOW, 0)).message == (
        "The line acts on nothing, so there is nowhere to lead it to."
    )


def test_without_track_there_is_no_room_below_it() -> None:
    bench = Bench()
    bench.put("lever", 0, 0, UP)
    bench.line(1, 0, 3)
    bench.put("target-block", 4, 0)
    assert (
        last(bench.plan(), cell(1, 0)).message == "Lines are wired below track, and there is no track here."
    )


def test_a_needless_repeater_goes(bench: Bench) -> None:
    bench.line(2, 0, 2, E, y=LOW)
    bench.put("repeater", 4, 0, E, y=LOW)
    bench.line(5, 0, 3, E, y=LOW)
    plan = bench.plan()
    torch_follows(plan, 4)
    rewired = last(plan, Cell(2, LOW, 0))
    assert rewired.message == "The line is wired anew: 6 dust instead of 5 dust and 1 repeater."
    assert rewired.change is not None
    torch_follows(rewired.change.applied(plan), 2)
