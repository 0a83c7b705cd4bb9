"""What the test checklist says of the runs, and of what they cannot show."""

from __future__ import annotations

from model.commissioning import Commissioning
from model.edits import set_route
from model.plan import EMPTY_PLAN, Plan, Route
from model.routing.junction import Junction
from model.sheet.checklist import NAMED, Checklist, checklist
from model.text_drawing import plan_from_drawing
from tests.model.sheet.test_routes import WYE


def checklist_of(plan: Plan) -> tuple[Commissioning, Checklist]:
    commissioning = Commissioning(Junction(plan))
    return commissioning, checklist(commissioning)


def test_runs_are_the_fewest_tests_in_their_order() -> None:
    commissioning, listed = checklist_of(plan_from_drawing(WYE))
    assert listed.runs
    assert [run.number for run in listed.runs] == [*range(1, len(listed.runs) + 1)]
    assert [(run.start, run.waybill) for run in listed.runs] == [
        (run.start, run.waybill) for run in commissioning.tests
    ]


def test_the_arm_to_leave_by_is_the_wanted_one() -> None:
    """Fen's reader throws the one switch: idle to Mill, with Salt to Quay."""
    goals = {("Fen", None): "Mill", ("Fen", "Salt"): "Quay", ("Quay", None): "Mill"}
    _, listed = checklist_of(plan_from_drawing(WYE))
    assert {run.expect for run in listed.runs} >= {"Mill"}
    for run in listed.runs:
        assert run.expect == goals[run.start, run.waybill]


def test_no_cart_is_pushed_in_where_none_comes_in() -> None:
    plan = plan_from_drawing(WYE)
    _, listed = checklist_of(set_route(plan, Route("Beacon", "Fen")).applied(plan))
    assert "Beacon" not in {run.start for run in listed.runs}


def test_where_nothing_can_be_wrong_no_run_is_asked_for() -> None:
    _, listed = checklist_of(EMPTY_PLAN)
    assert not listed.runs
    assert "no run is needed" in listed.verdict


def test_the_verdict_counts_what_is_shown() -> None:
    def verdict(runs: int, faults: int, hidden: int) -> str:
        _, listed = checklist_of(plan_from_drawing(WYE))
        return Checklist(listed.runs[:1] * runs, faults, ("a fault",) * hidden, ()).verdict

    assert verdict(3, 9, 2) == "These 3 runs show 7 of 9 single faults."
    assert verdict(1, 1, 0) == "This run shows 1 of 1 single fault."
    assert verdict(0, 2, 2) == "No run can show any of 2 faults."


def test_hidden_faults_and_groups_stand_as_clauses() -> None:
    commissioning, listed = checklist_of(plan_from_drawing(WYE))
    assert listed.faults == len(commissioning.faults)
    assert listed.hidden == tuple(fault.words for fault in commissioning.hidden)
    assert len(listed.alike) == len(commissioning.alike)
    for group, words in zip(commissioning.alike, listed.alike, strict=True):
        assert all((fault.words in words) is (place < NAMED) for place, fault in enumerate(group))
