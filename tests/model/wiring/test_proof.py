"""The proof of wired plans: a sound one passes, and each way of being wrong is found and named.

Common practice, no source: readers, holds and what breaks them.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import islice

import pytest

from model.dry_run import DryRun, Send
from model.edits import turn_plan
from model.grid import Cell, Facing, Turn
from model.parts import Part
from model.pieces import Piece
from model.plan import Plan, Route, plan_of
from model.wiring.modules import modules
from model.wiring.proof.proof import Proof, prove
from tests.model.dry_run.building import UP, Bench, E, N, S, W
from tests.model.wiring.readers import CHAIN, READER, RELOCK, ReaderLine

RUNS = 42
"""One arm with an idle and a called route: 2 carts, 2·16 trains, 3 loads, 2 pairs, 1 repeat, 2 at the end."""


def last(steps: Iterable[Proof]) -> Proof:
    """The result of a proof, of which every step tells one more run."""
    seen = list(steps)
    assert [proof.runs for proof in seen] == list(range(seen[0].of + 1))
    return seen[-1]


def proof_of(plan: Plan) -> Proof:
    return last(prove(plan))


def failed(plan: Plan) -> dict[str, str]:
    """What went wrong, by run."""
    proof = proof_of(plan)
    assert proof.runs == proof.passed + len(proof.failed)
    assert not proof.holds
    return dict(said.split(": ", 1) for said in proof.failed)


def first_failed(plan: Plan) -> str:
    """What goes wrong in the first run, which is idle; the others are not made."""
    (said,) = next(islice(prove(plan), 1, None)).failed
    assert said.startswith("Quay idle: ")
    return said.removeprefix("Quay idle: ")


def two_readers() -> Plan:
    """Side by side, with nothing between them."""
    one = ReaderLine()
    other = ReaderLine(40, ("Beacon", "Orchard", "Saltern"), "Reed")
    arms = (*one.plan().arms, *other.plan().arms)
    details = one.plan().details.replace(arms=arms, routes=(*one.routes, *other.routes))
    return plan_of([*one.plan().pieces, *other.plan().pieces], details)


def test_a_sound_reader_passes() -> None:
    proof = proof_of(ReaderLine().plan())
    assert (proof.runs, proof.passed, proof.failed) == (RUNS, RUNS, ())
    assert proof.holds


def test_two_sound_readers_pass_one_after_another() -> None:
    proof = proof_of(two_readers())
    assert (proof.passed, proof.failed) == (4 + 32 + 16 + 6 + 8 + 2 + 4, ())
    assert [headway.arm for headway in proof.headways] == ["Quay", "Beacon"]


@pytest.mark.parametrize("turn", [Turn(), Turn(2, mirror=True)], ids=str)
def test_the_reader_of_the_program_passes(turn: Turn) -> None:
    """On a straight, where idle and called lead to one arm."""
    trial = modules.trial_plan("reader")
    routes = (Route("Quay", "Mill", "Mill", "Salt"),)
    plan = Plan(trial.pieces, trial.details.replace(routes=routes))
    proof = proof_of(turn_plan(plan, turn).applied(plan))
    assert (proof.passed, proof.failed) == (RUNS, ())


def test_a_called_cart_that_goes_the_way_of_an_idle_one_needs_no_reader() -> None:
    trial = modules.trial_plan("reader")
    track = [
        Piece(Part.RAIL, piece.at, piece.facing) if piece.part is Part.DETECTOR_RAIL else piece
        for piece in trial.pieces
        if piece.at.y == 0
    ]
    routes = (Route("Quay", "Mill", "Mill", "Salt"),)
    proof = proof_of(plan_of(track, trial.details.replace(routes=routes)))
    assert (proof.passed, proof.failed) == (RUNS, ())


def test_the_headway_is_the_time_until_the_next_train_may_come() -> None:
    """A chain that is 4 ticks shorter holds 4 ticks less, and is empty again 4 ticks earlier after that."""
    (long,) = proof_of(ReaderLine().plan()).headways
    (short,) = proof_of(ReaderLine(chain=(8,) * 7 + (4,)).plan()).headways
    assert long.arm == short.arm == "Quay"
    assert long.ticks - short.ticks == 2 * 4


def test_without_routes_nothing_is_run() -> None:
    plan = ReaderLine().plan()
    proof = proof_of(Plan(plan.pieces, plan.details.replace(routes=())))
    assert proof == Proof(0)
    assert proof.holds


def test_without_readers_there_is_no_headway() -> None:
    plan = ReaderLine().plan()
    proof = proof_of(Plan(plan.pieces, plan.details.replace(routes=(Route("Quay", "Fen"),))))
    assert (proof.passed, proof.of, proof.headways) == (18, 18, ())


def test_a_caller_may_stop_between_two_runs() -> None:
    steps = prove(ReaderLine().plan())
    assert next(steps) == Proof(RUNS)
    assert next(steps).runs == 1
    steps.close()


def test_a_hold_that_ends_before_the_last_cart() -> None:
    """Long enough for one cart, and for a train of two; not where only the first cart calls a long one."""
    found = failed(ReaderLine(chain=(4,) * 8).plan())
    assert "Quay called" not in found
    assert "Quay called, 2 carts with gap 0" not in found
    alone = "Quay called, 5 carts with gap 3, the first alone with the waybill"
    assert found[alone].startswith("carts ")
    assert found[alone].endswith(" and 5 came to Fen, not to Mill")


def test_a_hold_that_ends_before_the_first_cart_is_there() -> None:
    found = failed(ReaderLine(chain=(2,) * 8).plan())
    assert found["Quay called"] == "the cart came to Fen, not to Mill"
    assert "Quay idle" not in found


def test_a_line_that_is_cut() -> None:
    found = failed(ReaderLine().plan(Cell(10, 63, -5)))
    assert found["Quay called"] == "the cart came to Fen, not to Mill"
    assert found["Quay called, 3 carts with gap 1"] == "carts 1, 2 and 3 came to Fen, not to Mill"
    assert not any(run.startswith("Quay idle") for run in found)


def test_a_reader_that_loses_items() -> None:
    """Nothing stops the hopper below it before its next item, and the next."""
    found = failed(ReaderLine().plan(RELOCK))
    assert found["Quay called"] == f"the reader at {READER} has 14 items, and had 22"


def test_a_reader_that_gains_an_item_with_each_call() -> None:
    """Nothing takes the waybill out again, and the line stays on."""
    found = failed(ReaderLine().plan(Cell(2, 62, 0)))
    comparator = Cell(2, 63, -1)
    assert found["Quay called"] == (
        f"the signal at {comparator} stays at 2, and was 1; the reader at {READER} has 23 items, and had 22"
    )


@pytest.mark.parametrize("count", [21, 23])
def test_a_reader_with_the_wrong_count(count: int) -> None:
    """With 22 it reads 1, and 2 with one more: common practice of the trade."""
    assert f"has 22 items, and had {count}" in failed(ReaderLine(count=count).plan())["Quay called"]


def test_a_line_that_is_on_all_the_time() -> None:
    torch = Piece(Part.TORCH, Cell(8, 63, -5), Facing.UP)
    found = failed(ReaderLine().plan(torch.at, *CHAIN, more=(torch,)))
    assert found["Quay idle"] == "the cart came to Mill, not to Fen"


def test_carts_that_are_lost() -> None:
    block = Piece(Part.SOLID_BLOCK, Cell(18, 64, 0))
    found = failed(ReaderLine().plan(more=(block,)))
    assert found["Quay idle"] == "the cart was stopped by a block at 17 64 0"
    assert found["Quay idle, 2 carts with gap 0"] == (
        "cart 1 was stopped by a block at 17 64 0; cart 2 ran into another at 17 64 0"
    )
    found = failed(ReaderLine().plan(Cell(16, 64, 0)))
    assert found["Quay idle"] == "the cart left the track at 15 64 0"


def test_a_cart_that_waits_on_a_booster() -> None:
    booster = Piece(Part.BOOSTER_RAIL, Cell(6, 64, 0), E)
    found = failed(ReaderLine().plan(booster.at, more=(booster,)))
    assert found["Quay idle"] == "the cart got no further at 6 64 0"


def test_carts_that_cannot_come_in() -> None:
    plan = ReaderLine().plan()
    routes = (Route("Nowhere", "Fen"), Route("Fen", "Quay"))
    found = failed(Plan(plan.pieces, plan.details.replace(routes=routes)))
    assert found["Nowhere idle"] == "there is no arm 'Nowhere'"
    assert found["Fen idle"] == "the arm Fen has no way in"


def test_a_cart_that_goes_round_for_ever() -> None:
    """In a ring of rails at the end, from which it does not come out again."""
    bench = Bench()
    for x, z, facing in [(18, 0, E), (19, 0, E), (19, 1, S), (18, 1, W)]:
        bench.put("rail", x, z, facing)
    plan = ReaderLine().plan()
    arms = tuple(arm for arm in plan.arms if arm.name != "Fen")
    ringed = plan_of([*bench.pieces.values(), *plan.pieces], plan.details.replace(arms=arms))
    assert first_failed(ringed).startswith("the cart got no further at 1")


def blinker(x: int, z: int) -> list[Piece]:
    """A torch that the line frees, and that puts itself out by a repeater until it burns out."""
    bench = Bench()
    bench.put("solid-block", x, z, y=63)
    bench.put("torch", x + 1, z, E, y=63)
    for at in [(x + 1, z - 1), (x + 1, z - 2), (x, z - 2)]:
        bench.put("dust", *at, y=63)
    bench.put("repeater", x, z - 1, S, y=63)
    return list(bench.pieces.values())


def test_a_torch_that_burns_out() -> None:
    said = first_failed(ReaderLine().plan(more=blinker(30, 20)))
    assert "the torch at 31 63 20 burns out" in said
    assert "it is not at rest " in said


def locker(bench: Bench) -> list[Piece]:
    """It is due in the same tick as the repeater of the line, which it locks."""
    for at in [(7, -4), (7, -3), (8, -3)]:
        bench.put("dust", *at, y=63)
    bench.put("repeater", 8, -4, N, y=63)
    return list(bench.pieces.values())


def test_an_order_within_a_tick_that_decides_where_carts_go() -> None:
    """In file order the line goes on before it is locked; in the other order it is locked before."""
    found = failed(ReaderLine().plan(more=locker(Bench())))
    there, here = Cell(8, 63, -4), Cell(8, 63, -5)
    assert (
        found["Quay called"]
        == f"where {there} comes before {here} within a tick, the cart came to Fen, not to Mill"
    )
    assert "Quay idle" not in found


def test_an_order_within_a_tick_that_decides_nothing_of_note() -> None:
    """A hopper that clears the barrel takes an item in the tick in which it comes, or in the next."""
    bench = Bench()
    bench.put("hopper", 1, 0, W, y=61)
    bench.put("barrel", 0, 0, y=61)
    plan = ReaderLine().plan(more=tuple(bench.pieces.values()))
    run = DryRun(plan)
    for _ in range(2):  # the lower hopper gives each item away when it is free for the next
        run.step([Send("Quay", ((("Salt", 1),),))])
        while not run.is_quiet:
            run.step()
    assert run.unsure
    assert proof_of(plan).holds


def test_rails_whose_order_of_notice_decides_something() -> None:
    """Two switches beside each other that one line throws in one tick; how they come to lie is not sure."""
    bench = Bench()
    for x in range(15, 21):
        bench.put("dust", x, -5, y=63)
    bench.put("solid-block", 21, -5, y=63)
    bench.put("torch", 21, -5, UP, y=64)
    bench.put("solid-block", 21, -5, y=65)
    for x, z, facing in [
        (2, 0, N),
        (0, 2, E),
        (3, 1, N),
        (1, 3, E),
        (1, 2, E),
        (1, 1, E),
        (0, 1, N),
        (2, 1, E),
        (2, 3, E),
    ]:
        bench.put("rail", x + 19, z - 7, facing, y=65)
    found = failed(ReaderLine().plan(more=tuple(bench.pieces.values())))
    said = f"which of the rails at {Cell(20, 65, -5)} and {Cell(21, 65, -6)} turns first decides something"
    assert found["Quay called"] == said
    assert "Quay idle" not in found
