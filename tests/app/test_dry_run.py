"""The runner of the dry run: its time, what it is given, and what is watched."""

from __future__ import annotations

import pytest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.dry_run import DryRunner
from model.dry_run import Drop, DryRun, Lever, Press, Send
from model.grid import Cell, Heading
from tests.app.circuits import LAMP, LEVER, at, dust_line, line_with_switch, ring


@pytest.fixture
def runner(qapp: QApplication) -> DryRunner:
    return DryRunner()


def test_it_starts_paused_at_tick_0_and_does_one_tick_at_a_time(runner: DryRunner, qtbot: QtBot) -> None:
    with qtbot.waitSignal(runner.started):
        runner.start(DryRun(dust_line()))
    assert runner.is_on
    assert not runner.is_running
    assert runner.tick == 0
    with qtbot.waitSignal(runner.ticked):
        runner.step()
    assert runner.tick == 1
    assert runner.seconds == pytest.approx(0.05)


@pytest.mark.parametrize(("speed", "ticks"), [(0.25, 5), (1.0, 20), (2.0, 40), (8.0, 160)])
def test_a_second_is_20_ticks_times_the_speed(runner: DryRunner, speed: float, ticks: int) -> None:
    """20 ticks a second: common practice, no source."""
    runner.start(DryRun(dust_line()))
    runner.speed = speed
    for _ in range(100):
        runner.advance(10)
    assert ticks - 1 <= runner.tick <= ticks


def test_what_moves_is_between_two_ticks_only_while_it_runs(runner: DryRunner) -> None:
    runner.start(DryRun(dust_line()))
    runner.run()
    runner.advance(25)
    assert 0.4 < runner.fraction < 0.7
    runner.pause()
    assert runner.fraction == 0.0


def test_a_lever_pulled_while_it_is_paused_waits_for_the_next_tick(runner: DryRunner) -> None:
    runner.start(DryRun(dust_line()))
    assert runner.give(Lever(LEVER, True))
    assert runner.pending == (Lever(LEVER, True),)
    assert runner.engine is not None
    assert runner.engine.strength(at(1, 0)) == 0
    runner.step()
    assert runner.engine.strength(at(1, 0)) == 15
    assert runner.changed >= {LEVER, at(1, 0), at(15, 0)}
    assert LAMP not in runner.changed


def test_it_says_why_it_can_not_do_what_the_plan_has_nothing_for(runner: DryRunner, qtbot: QtBot) -> None:
    runner.start(DryRun(dust_line()))
    with qtbot.waitSignal(runner.refused) as said:
        assert not runner.give(Press(LEVER))
    assert said.args is not None
    assert said.args[0] == f"There is no button at {LEVER}."
    assert runner.pending == ()


def test_what_was_done_comes_again_each_in_its_tick(runner: DryRunner) -> None:
    runner.start(DryRun(ring()))
    runner.add_probe(at(0, 1))
    for tick in range(60):
        if tick in (3, 30):
            runner.give(Press(at(-1, 0)))
        runner.step()
    events, read = runner.events, runner.probes
    assert [timed.tick for timed in events] == [3, 30]
    assert len(read[at(0, 1)]) > 2
    runner.rewind(repeat=True)
    assert runner.tick == 0
    for _ in range(60):
        runner.step()
    assert runner.events == events
    assert runner.probes == read


def test_back_at_the_start_nothing_comes_by_itself(runner: DryRunner) -> None:
    runner.start(DryRun(ring()))
    runner.give(Press(at(-1, 0)))
    runner.step()
    runner.rewind()
    for _ in range(40):
        runner.step()
    assert runner.events == ()
    assert runner.engine is not None
    assert runner.engine.is_quiet


def test_an_event_may_wait_for_its_tick(runner: DryRunner) -> None:
    runner.start(DryRun(line_with_switch()))
    runner.give(Drop(at(5, 0), Heading.EAST), after=3)
    counts = []
    for _ in range(5):
        runner.step()
        assert runner.engine is not None
        counts.append(len(runner.engine.carts))
    assert counts == [0, 0, 0, 1, 1]


def test_a_run_ends_with_a_reason_and_keeps_what_the_probes_read(runner: DryRunner, qtbot: QtBot) -> None:
    runner.start(DryRun(dust_line()))
    runner.add_probe(at(1, 0))
    runner.give(Lever(LEVER, True))
    runner.step()
    with qtbot.waitSignal(runner.ended) as ended:
        runner.stop("Enough.")
    assert ended.args == ["Enough."]
    assert not runner.is_on
    assert runner.probes == {at(1, 0): ((0, 15),)}
    assert not runner.give(Send("Quay"))


def test_a_late_probe_is_read_from_then_on(runner: DryRunner) -> None:
    runner.start(DryRun(dust_line()))
    for _ in range(4):
        runner.step()
    runner.add_probe(LEVER)
    assert runner.probes == {LEVER: ((3, 0),)}
    runner.remove_probe(LEVER)
    assert runner.probes == {}


def test_it_runs_by_itself_until_it_is_paused(runner: DryRunner, qtbot: QtBot) -> None:
    runner.start(DryRun(dust_line()))
    runner.run()
    qtbot.waitUntil(lambda: runner.tick >= 3)
    runner.pause()
    done = runner.tick
    qtbot.wait(120)
    assert runner.tick == done


def test_ticks_that_take_too_long_are_dropped_so_that_the_window_stays_free(
    runner: DryRunner, monkeypatch: pytest.MonkeyPatch
) -> None:
    """With no time to spare, a picture gets one tick, and what is owed does not pile up."""
    monkeypatch.setattr("app.dry_run.BUDGET", -1)
    runner.start(DryRun(dust_line()))
    runner.speed = 8.0
    for _ in range(10):
        runner.advance(100)
    assert runner.tick == 10


def test_cells_of_no_piece_read_nothing(runner: DryRunner) -> None:
    runner.start(DryRun(dust_line()))
    runner.add_probe(Cell(99, 64, 99))
    runner.step()
    assert runner.probes == {Cell(99, 64, 99): ((0, 0),)}


def test_a_mistake_pauses_it_and_is_told_once(
    runner: DryRunner, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    runner.start(DryRun(dust_line()))

    def fail(_events: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr(runner.engine, "step", fail)
    with qtbot.captureExceptions() as raised:
        runner.run()
        qtbot.waitUntil(lambda: not runner.is_running)
        qtbot.wait(60)
    assert [kind for kind, _, _ in raised] == [ZeroDivisionError]
