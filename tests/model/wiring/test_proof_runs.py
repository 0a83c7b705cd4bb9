"""Which runs prove a junction: nothing that the proof promises to try is left out."""

from __future__ import annotations

from collections import Counter
from itertools import product

import pytest

from model.files.plan_file import read_plan
from model.plan import Arm, Details, Route, plan_of
from model.routing.control import WantedRoute
from model.routing.junction import Junction
from model.wiring.proof_runs import BLOCKS, GAPS, REPEATS, SIZES, Drive, Run, runs_of
from tests.app.cli.running import EXAMPLES

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
    """One of a reader that is on no track of theirs, and one that nobody takes."""
    junction = junction_of(
        Route("Quay", "Fen", "Mill", "Salt"),
        Route("Mill", "Orchard", "Quay", "Reed"),
        Route("Fen", "Quay", "Mill", "Salt"),
    )
    loads = {
        (drive.route.start, drive.route.called): [name for name, _ in drive.send.loads[0]]
        for run in runs_of(junction)
        for drive in run.drives
        if "for others" in drive.words
    }
    assert loads == {
        ("Quay", True): ["Elsewhere", "Salt"],
        ("Quay", False): ["Reed", "Elsewhere"],
        ("Mill", True): ["Elsewhere", "Reed"],
        ("Mill", False): ["Salt", "Elsewhere"],
        ("Fen", True): ["Elsewhere", "Salt"],
        ("Fen", False): ["Reed", "Elsewhere"],
    }


def test_a_cart_may_run_over_two_readers_of_one_waybill() -> None:
    junction = junction_of(
        Route("Quay", "Fen", "Mill", "Salt"), Route("Mill", "Fen", "Quay", "Salt"), Route("Fen", "Quay")
    )
    takers = {drive.route: drive.takers for run in runs_of(junction) for drive in run.drives}
    assert {(route.start, route.called): count for route, count in takers.items() if route.called} == {
        ("Quay", True): 2,
        ("Mill", True): 2,
    }


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
