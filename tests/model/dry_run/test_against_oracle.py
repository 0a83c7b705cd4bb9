"""The dry run against a plain second implementation, on random small plans, tick by tick.

Both are held against each other after every tick: what a probe reads at every piece, shapes, contents, the
cells of carts, arrivals, the lost, and the unsure pairs. Rules: common practice of the trade, no source.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest

from model.dry_run import DryRun as Engine
from model.dry_run import Script, Timed, run
from model.grid import Cell
from tests.oracle.dry_run import DryRun
from tests.oracle.dry_run_adapter import first_difference, model_event, model_plan, shown_by_model, told
from tests.oracle.dry_run_cases import Case, blinking_case, random_case, script_as_file
from tests.oracle.shapes import Place

AFTER_QUIET = 40


def drawing(seed: int, case: Case) -> str:
    """The case to read when a comparison fails."""
    return f"seed {seed}\n{script_as_file(case)}"


def compare(seeds: range, make: Callable[[int], Case] = random_case) -> None:
    for seed in seeds:
        case = make(seed)
        difference = first_difference(case)
        assert difference is None, f"{difference}\n{drawing(seed, case)}"


def test_against_a_plain_dry_run() -> None:
    compare(range(160))


def test_torches_that_burn_out_against_a_plain_dry_run() -> None:
    compare(range(16), blinking_case)


@pytest.mark.slow
@pytest.mark.timeout(3600)
def test_many_against_a_plain_dry_run() -> None:
    compare(range(160, 5000))


def quiet_runs(seeds: range) -> int:
    """How many runs become quiet; what is quiet stays as it is."""
    quiet = 0
    for seed in seeds:
        case = random_case(seed)
        engine = Engine(model_plan(case))
        for tick in range(case.ticks):
            engine.step([model_event(event) for event in case.events_at(tick)])
        if not engine.is_quiet:
            continue
        quiet += 1
        before = shown_by_model(engine, case)
        for _ in range(AFTER_QUIET):
            engine.step()
        assert shown_by_model(engine, case) == before, (
            f"{told(shown_by_model(engine, case), before)}\n{drawing(seed, case)}"
        )
    return quiet


def test_what_is_quiet_stays_as_it_is() -> None:
    assert quiet_runs(range(120)) > 40


def test_back_at_the_start_a_run_goes_as_before() -> None:
    for seed in range(60):
        case = random_case(seed)
        engine = Engine(model_plan(case))
        shown = []
        for _ in range(2):
            for tick in range(case.ticks):
                engine.step([model_event(event) for event in case.events_at(tick)])
            shown.append(shown_by_model(engine, case))
            engine.reset()
        assert shown[0] == shown[1], drawing(seed, case)


def changes(case: Case) -> dict[Place, list[tuple[int, int]]]:
    """What the plain dry run shows at each piece: (tick, strength) at tick 0 and at each change."""
    run = DryRun(case.pieces, case.arms)
    seen: dict[Place, list[tuple[int, int]]] = {at: [] for at in run.pieces}
    for tick in range(case.ticks):
        run.step(case.events_at(tick))
        for at, found in seen.items():
            strength = run.probe(at)
            if not found or found[-1][1] != strength:
                found.append((tick, strength))
    return seen


def test_what_probes_write_down() -> None:
    for seed in range(1000, 1050):
        case = random_case(seed)
        events = tuple(Timed(event["tick"], model_event(event)) for event in case.events)
        script = Script(events, tuple(Cell(*piece.at) for piece in case.pieces))
        result = run(model_plan(case), script, case.ticks)
        assert result.ticks == case.ticks
        written = {tuple(at): [tuple(entry) for entry in found] for at, found in result.probes.items()}
        assert written == changes(case), drawing(seed, case)
