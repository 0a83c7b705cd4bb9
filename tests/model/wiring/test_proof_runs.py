"""Which runs prove a junction: nothing that the proof promises to try is left out."""

from __future__ import annotations

from collections import Counter
from itertools import product

import pytest

from model.dry_run import DryRun, Send
from model.files.plan_file import read_plan
from model.grid import Cell, Facing, Heading
from model.parts import Part
from model.pieces import Held, Piece
from model.plan import Arm, Details, Plan, Route, plan_of
from model.routing.control import WantedRoute
from model.routing.junction import Junction
from model.track.carts import Outcome, Way
from model.wiring.proof.runs import BLOCKS, GAPS, REPEATS, SIZES, Drive, Run, runs_of
from model.wiring.proof.ways import meets_itself
from tests.app.cli.running import EXAMPLES
from tests.model.dry_run.building import Bench, E, N, cell
from tests.model.wiring.readers import ReaderLine

PLANS = sorted(EXAMPLES.glob("*.plan.json"))
TRAINS = set(product(SIZES, GAPS))


def junction_of(*routes: Route) -> Junction:
    """Routes alone: where they run to does not bear on the runs."""
    names = dict.fromkeys(
        name for route in routes for name in (route.start, route.idle, route.called) if name
    )
    return Junction(plan_of([], Details(arms=tuple(map(Arm, names)), routes=routes)))


@pytest.fixture(params=PLANS, ids=lambda path: path.name)
def junction(request: pytest.FixtureRequest) -> Junction:
    """Each example."""
    return Junction(read_plan(request.param))


def train(drive: Drive) -> tuple[int, int]:
    return len(drive.send.loads), drive.send.gap


def is_plain(drive: Drive) -> bool:
    """Whether all its carts carry what the route wants, and nothing else."""
    return "waybill" not in drive.words


def fresh_trains(junction: Junction, route: WantedRoute) -> list[tuple[int, int]]:
    fresh = [run.drives[0] for run in runs_of(junction) if run.is_fresh]
    return [train(drive) for drive in fresh if drive.route == route and is_plain(drive)]


def one_after_another(junction: Junction) -> list[Run]:
    return [run for run in runs_of(junction) if len(run.drives) == 2]


def test_a_block_has_every_size_and_every_gap_once() -> None:
    for block in BLOCKS:
        assert {size for size, _ in block} == set(SIZES) == {2, 3, 4, 5}
        assert {gap for _, gap in block} == set(GAPS) == {0, 1, 2, 3}
    assert {pair for block in BLOCKS for pair in block} == TRAINS


def test_a_called_route_is_tried_with_one_cart_and_with_all_trains(junction: Junction) -> None:
    called = [route for route in junction.wanted if route.called]
    assert len(called) == 3
    for route in called:
        assert sorted(fresh_trains(junction, route)) == sorted([(1, 0), *TRAINS])


@pytest.mark.parametrize("count", [1, 2, 3, 4, 5, 9])
def test_idle_routes_share_all_trains(count: int) -> None:
    junction = junction_of(*(Route(f"from {at}", "to") for at in range(count)))
    tried = [fresh_trains(junction, route) for route in junction.wanted]
    assert {train for each in tried for train in each} == {(1, 0), *TRAINS}
    for each in tried:
        assert {size for size, _ in each} == {1, *SIZES}
        assert {gap for size, gap in each if size > 1} == set(GAPS)


def test_each_reader_follows_each_and_an_idle_cart_follows_each(junction: Junction) -> None:
    followed = Counter(tuple(drive.route for drive in run.drives) for run in one_after_another(junction))
    called = [route for route in junction.wanted if route.called]
    assert followed == Counter(product(called, junction.wanted))
    assert len({train(run.drives[0]) for run in one_after_another(junction)}) == len(TRAINS)


def test_all_that_follows_the_fresh_runs_goes_on_from_the_state_before(junction: Junction) -> None:
    kinds = [run.is_fresh for run in runs_of(junction)]
    assert kinds == sorted(kinds, reverse=True)
    last = runs_of(junction)[-len(junction.wanted) :]
    assert [run.drives[0].route for run in last] == list(junction.wanted)


def test_each_reader_is_called_several_times(junction: Junction) -> None:
    repeated = [run for run in runs_of(junction) if len(run.drives) == REPEATS == 6]
    assert [{drive.route for drive in run.drives} for run in repeated] == [
        {route} for route in junction.wanted if route.called
    ]


def test_loads_name_the_waybill_of_the_arm_and_of_nobody_else() -> None:
    junction = junction_of(Route("Quay", "Fen", "Mill", "Salt"), Route("Mill", "Fen", "Quay"))
    names = {
        drive.route.start: {name for load in drive.send.loads for name, _ in load}
        for run in runs_of(junction)
        for drive in run.drives
        if drive.route.called and is_plain(drive)
    }
    assert names == {"Quay": {"Salt"}, "Mill": {"Mill"}}


def test_carts_with_the_waybills_of_others_are_tried_called_and_idle() -> None:
    """One that is read elsewhere, and one that nobody reads; a name that two arms share is no foreign one."""
    junction = junction_of(
        Route("Quay", "Fen", "Mill", "Salt"),
        Route("Mill", "Orchard", "Quay", "Reed"),
        Route("Fen", "Quay", "Mill", "Salt"),
    )
    assert foreign_loads(junction) == {
        ("Quay", True): ["Reed", "Elsewhere", "Salt"],
        ("Quay", False): ["Reed", "Elsewhere"],
        ("Mill", True): ["Salt", "Elsewhere", "Reed"],
        ("Mill", False): ["Salt", "Elsewhere"],
        ("Fen", True): ["Reed", "Elsewhere", "Salt"],
        ("Fen", False): ["Reed", "Elsewhere"],
    }


def foreign_loads(junction: Junction) -> dict[tuple[str, bool], list[str]]:
    return {
        (drive.route.start, drive.route.called): [name for name, _ in drive.send.loads[0]]
        for run in runs_of(junction)
        for drive in run.drives
        if "for others" in drive.words
    }


def with_reader_on_the_way(waybill: str) -> Junction:
    """A second reader, that of Beacon, lies under the track to Mill but not under that to Fen."""
    line = ReaderLine()
    at = Cell(14, 63, 2)
    reader = Piece(Part.HOPPER, at, Facing.EAST, holds=(Held(f"waybill:{waybill}", 22),))
    plan = line.plan(at, more=(reader,))
    routes = (*line.routes, Route("Beacon", "Fen", "Mill", waybill))
    return Junction(Plan(plan.pieces, plan.details.replace(routes=routes)))


def test_waybills_that_are_read_on_the_way_are_no_foreign_ones() -> None:
    loads = foreign_loads(with_reader_on_the_way("Reed"))
    assert loads["Quay", True] == ["Elsewhere", "Salt"]
    assert loads["Quay", False] == ["Reed", "Elsewhere"]


@pytest.mark.parametrize(("waybill", "takers"), [("Salt", 2), ("Reed", 1)])
def test_a_cart_may_run_over_two_readers_of_one_waybill(waybill: str, takers: int) -> None:
    runs = runs_of(with_reader_on_the_way(waybill))
    drives = [drive for run in runs for drive in run.drives if drive.route.start == "Quay"]
    assert {drive.takers for drive in drives if drive.route.called} == {takers}
    assert {drive.takers for drive in drives if not drive.route.called} == {0}


def loop_at_the_end() -> tuple[Plan, list[Cell]]:
    """One track from Quay into a loop and back by the same track; with the way of a cart, counted by hand."""
    bench = Bench()
    bench.track(-3, 0, 6)
    for x, z, facing in [(3, 1, E), (4, 1, E), (4, 0, N), (3, 0, E)]:
        bench.put("rail", x, z, facing)
    bench.put("torch", 3, -1)
    bench.arm("Quay", (cell(-3, 0), Heading.EAST), (cell(-3, 0), Heading.WEST))
    there = [cell(x, 0) for x in range(-3, 3)]
    return bench.plan(), [*there, cell(3, 0), cell(3, 1), cell(4, 1), cell(4, 0), cell(3, 0), *there[::-1]]


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("gap", GAPS)
def test_a_train_meets_itself_just_where_it_does_in_the_dry_run(size: int, gap: int) -> None:
    plan, path = loop_at_the_end()
    run = DryRun(plan)
    run.step([Send("Quay", ((),) * size, gap)])
    while not run.is_quiet:
        run.step()
    assert len(run.arrivals) + len(run.lost) == size
    assert bool(run.lost) == meets_itself(path, size, gap)


def ring(turns: int) -> list[Cell]:
    """A way round a square of four cells, that many times."""
    return [cell(0, 0), cell(1, 0), cell(1, 1), cell(0, 1)] * turns


def test_trains_that_meet_themselves_are_left_out() -> None:
    """Round a ring of four rails twice: there is room for two carts with no gap, and so on."""
    junction = junction_of(Route("Quay", "Fen", "Mill", "Salt"))
    route = junction.wanted[1]
    junction.ways = {route: Way(tuple(ring(2)), Outcome.ARM, "Mill", Heading.EAST)}
    kept = {pair for pair in TRAINS if not meets_itself(ring(2), *pair)}
    assert set(fresh_trains(junction, route)) == {(1, 0), *kept}
    assert kept == {(size, gap) for size, gap in TRAINS if 4 not in [(gap + 1) * k for k in range(1, size)]}
    assert {train(run.drives[0]) for run in one_after_another(junction)} <= kept
    alone = [drive for run in runs_of(junction) for drive in run.drives if "alone" in drive.words]
    assert [train(drive) for drive in alone] == [(5, 2)]


def test_a_waybill_that_is_called_as_the_one_nobody_takes() -> None:
    junction = junction_of(Route("Quay", "Fen", "Mill", "Elsewhere"))
    foreign = [drive for run in runs_of(junction) for drive in run.drives if "for others" in drive.words]
    assert [[name for name, _ in drive.send.loads[0]] for drive in foreign] == [
        ["Elsewhere-", "Elsewhere"],
        ["Elsewhere-"],
    ]


def test_without_readers_there_is_nothing_to_call() -> None:
    runs = runs_of(junction_of(Route("Quay", "Fen")))
    assert len(runs) == 1 + len(TRAINS) + 1
    assert not any(drive.route.called for run in runs for drive in run.drives)
    assert runs_of(junction_of()) == ()


def test_how_many_runs_there_are(junction: Junction) -> None:
    """Three arms, each with an idle and a called route: 6 carts, 3·16 and 16 trains, 9 loads, 18 pairs, …"""
    assert len(runs_of(junction)) == 6 + 48 + 16 + 9 + 18 + 3 + 6


@pytest.mark.parametrize(
    ("number", "words"),
    [
        (0, "Quay idle"),
        (1, "Quay called"),
        (2, "Quay called, 2 carts with gap 0"),
        (34, "Quay called, 5 carts with gap 3, the first alone with the waybill"),
        (35, "Quay called, with waybills for others"),
        (36, "Quay idle, with waybills for others"),
        (37, "Quay called, 2 carts with gap 0, then Quay called"),
        (38, "Quay called, 3 carts with gap 1, then Quay idle"),
        (39, "Quay called, 6 times"),
    ],
)
def test_a_run_in_words(number: int, words: str) -> None:
    assert runs_of(junction_of(Route("Quay", "Fen", "Mill", "Salt")))[number].words == words
