"""What ``tests`` and ``diagnose`` print, and what is refused in a file of observed runs."""

from __future__ import annotations

import json
from pathlib import Path
from random import Random
from typing import Any

import pytest

from model.commissioning import Commissioning, Fault
from model.files.errors import PlanFileError
from model.files.observed_file import RUN_LIMIT, SIZE_LIMIT, parse_observed
from model.files.plan_file import read_plan
from model.routing.junction import Junction
from tests.app.cli.running import OBSERVED, SALTERN, Done, Runner
from tests.app.cli.test_reports import three_way
from tests.model.files.bending import SPOILERS

KEYS = {
    "inverter-missing": ["kind", "at"],
    "inverter-extra": ["kind", "at"],
    "line-dead": ["kind", "arm"],
    "line-stuck": ["kind", "arm"],
    "line-missing": ["kind", "arm", "at"],
    "rail-turned": ["kind", "at", "shape"],
}
"""The keys of each kind of fault."""


@pytest.fixture
def switch_plan(run: Runner) -> str:
    """A single switch: an empty cart from Quay goes to Mill, one with the waybill to Fen."""
    Path("switch.plan.json").write_text(json.dumps(three_way()))
    return "switch.plan.json"


def diagnosed(run: Runner, plan: str | Path, *runs: dict[str, Any] | tuple[str, str | None, str]) -> Done:
    """What ``diagnose --json`` says of these runs."""
    told = [r if isinstance(r, dict) else dict(zip(("from", "waybill", "saw"), r, strict=True)) for r in runs]
    Path("obs.json").write_text(json.dumps({"runs": told}))
    return run("diagnose", plan, "--observed", "obs.json", "--json")


def test_tests_of_a_single_switch(run: Runner, switch_plan: str) -> None:
    """Worked out by hand. The switch lies south-east at rest and north-east when powered, and no other rail
    of the plan has two rails beside it. An inverter too many shows in either run, a line that never lets go
    in the empty one, a dead line, or one that does not reach its only switch, in the other.
    """
    done = run("tests", switch_plan, "--json")
    assert (done.status, done.err) == (0, "")
    assert json.loads(done.out) == {
        "runs": [
            {"run": 1, "from": "Quay", "waybill": None, "expect": "Mill"},
            {"run": 2, "from": "Quay", "waybill": "Quay", "expect": "Fen"},
        ],
        "covers": {"faults": 4, "detected": 4},
        "hidden": [],
        "alike": [
            [{"kind": "line-dead", "arm": "Quay"}, {"kind": "line-missing", "arm": "Quay", "at": [0, 64, 0]}]
        ],
    }


@pytest.mark.parametrize(
    ("seen", "faults", "following"),
    [
        ([(None, "Mill"), ("Quay", "Fen")], [[]], None),
        ([(None, "Mill")], [[]], None),
        ([], [[]], None),
        ([(None, "Fen")], [["inverter-extra"], ["line-stuck"]], {"from": "Quay", "waybill": "Quay"}),
        ([(None, "Fen"), ("Quay", "Mill")], [["inverter-extra"]], None),
        (
            [(None, "Fen"), ("Quay", "Fen")],
            [["line-stuck"], ["inverter-extra", "line-dead"], ["inverter-extra", "line-missing"]],
            None,
        ),
        (
            [("Quay", "Mill"), (None, "Mill")],
            [["line-dead"], ["line-missing"], ["inverter-extra", "line-stuck"]],
            None,
        ),
        ([("Quay", "stays")], [], None),
    ],
)
def test_diagnoses_of_a_single_switch(
    run: Runner, switch_plan: str, seen: list, faults: list[list[str]], following: dict | None
) -> None:
    done = diagnosed(run, switch_plan, *(("Quay", waybill, saw) for waybill, saw in seen))
    said = json.loads(done.out)
    assert done.status == 0
    assert [[fault["kind"] for fault in each["faults"]] for each in said["diagnoses"]] == faults
    assert said["next_run"] == following
    assert list(said)[-2:] == ["diagnoses", "next_run"]


def test_a_single_switch_built_otherwise(run: Runner, switch_plan: str) -> None:
    """Built half round, the switch has rails to the north, south and west, and it rests south-west and lies
    north-west when powered (common practice, no source): it turns to the cell that was the north one, by
    which a cart leaves to Fen, at rest. The mirrored switch sends its carts where the original does.
    """
    done = diagnosed(run, switch_plan, ("Quay", None, "Fen"), ("Quay", "Quay", "Mill"))
    said = json.loads(done.out)
    assert list(said) == ["built_otherwise", "diagnoses", "next_run"]
    turned = {(turn["quarter"], turn["mirror"]) for turn in said["built_otherwise"]}
    assert (2, False) in turned
    assert (0, True) not in turned
    text = run("diagnose", switch_plan, "--observed", "obs.json").out
    assert text.startswith("What was seen fits the junction built otherwise\n  a quarter clockwise\n")
    assert "What may be wrong\n  1  the switch at 0 64 0 has an inverter that it should not have\n" in text


def test_a_fault_prints_just_the_keys_of_its_kind(run: Runner) -> None:
    kinds = set()
    for name in ("saltern-junction", "fen-ring", "beacon-wye"):
        commissioning = Commissioning(Junction(read_plan(SALTERN.with_name(f"{name}.plan.json"))))
        for fault in map(Fault.as_json, commissioning.faults):
            assert list(fault) == KEYS[fault["kind"]]
            kinds.add(fault["kind"])
    assert kinds == KEYS.keys()


def test_text_of_the_tests(run: Runner) -> None:
    lines = run("tests", SALTERN).out.splitlines()
    assert lines[:2] == ["Runs", "  1  Quay  with Salt  expect Mill"]
    assert lines[-1] == "5 runs: 27 of 29 faults shown"
    assert "No run shows that" in lines
    assert "  the rail at 1 64 3 lies south-east" in lines


def test_text_of_a_diagnosis(run: Runner) -> None:
    """An empty cart goes right and a called one as an empty one would: the line does nothing, or it throws S5
    always and an inverter turns that round.
    """
    assert run("diagnose", SALTERN, "--observed", OBSERVED).out == (
        "What may be wrong\n"
        "  1  the line of the reader of Quay is dead\n"
        "  2  the line of the reader of Quay does not reach the switch at 1 64 −1\n"
        "  3  the switch at 1 64 −1 has an inverter that it should not have, and "
        "the line of the reader of Quay never lets go\n"
    )


def test_text_where_nothing_is_wrong(run: Runner, switch_plan: str) -> None:
    diagnosed(run, switch_plan, ("Quay", None, "Mill"))
    done = run("diagnose", switch_plan, "--observed", "obs.json")
    assert done == (0, "Nothing is wrong as far as was seen.\n", "")


def test_a_cart_that_went_two_ways(run: Runner, switch_plan: str) -> None:
    """A waybill that the reader does not take makes no difference."""
    done = diagnosed(run, switch_plan, ("Quay", None, "Mill"), ("Quay", "Reed", "Fen"))
    assert json.loads(done.out) == {"diagnoses": [], "next_run": None}
    assert (done.status, done.err) == (
        0,
        "platelayer: two carts alike from Quay went two ways; no fault that stays does that\n",
    )


def test_what_two_faults_do_not_explain(run: Runner, switch_plan: str) -> None:
    done = diagnosed(run, switch_plan, ("Quay", None, "stays"))
    assert done.err == "platelayer: no fault, and no two faults together, explain what the carts did\n"


def test_an_arm_from_which_no_route_is_wanted(run: Runner) -> None:
    """A cart from Mill, where the plan wants nothing, still tells of the switch that it trails."""
    plan = three_way()
    plan["arms"][1]["in"] = {"at": [0, 64, 1], "heading": "north"}
    Path("switch.plan.json").write_text(json.dumps(plan))
    done = diagnosed(run, "switch.plan.json", ("Mill", None, "Quay"))
    assert json.loads(done.out)["diagnoses"] == [{"faults": []}]
    done = diagnosed(run, "switch.plan.json", ("Mill", "Salt", "Fen"))
    kinds = [fault["kind"] for each in json.loads(done.out)["diagnoses"] for fault in each["faults"]]
    assert kinds == ["inverter-extra", "line-stuck"]


NAME = "a name of 1 to 80 characters without control characters, comma or slash"


@pytest.mark.parametrize(
    ("text", "place", "expected"),
    [
        ('{"runs": [', "line 1, column 11", "JSON (Expecting value)"),
        ("[]", "top level", 'an object with "runs"'),
        ("{}", "top level", 'the key "runs"'),
        ('{"runs": {}}', "runs", f"a list of at most {RUN_LIMIT:,} runs"),
        ('{"runs": [7]}', "runs[0]", 'an object with "from", "waybill" and "saw"'),
        ('{"runs": [{"from": "Quay"}]}', "runs[0]", 'the key "saw"'),
        ('{"runs": [{"saw": "Quay"}]}', "runs[0]", 'the key "from"'),
        ('{"runs": [{"from": 1, "saw": "Fen"}]}', "runs[0].from", NAME),
        ('{"runs": [{"from": "Quay", "saw": "a/b"}]}', "runs[0].saw", NAME),
        ('{"runs": [{"from": "Quay", "saw": null}]}', "runs[0].saw", NAME),
        ('{"runs": [{"from": "Quay", "waybill": "", "saw": "Fen"}]}', "runs[0].waybill", f"null or {NAME}"),
        ('{"runs": [], "runs": []}', "runs", "each key once; this one is doubled"),
        (
            '{"runs": [{"from": "Quay", "from": "Quay", "saw": "Fen"}]}',
            "runs[0].from",
            "each key once; this one is doubled",
        ),
        (
            '{"runs": [{"from": "Quay", "saw": "Fen"}, {"from": "Qay", "saw": "Fen"}]}',
            "runs[1].from",
            "an arm by which carts come in; Qay is none",
        ),
        (
            '{"runs": [{"from": "Quay", "saw": "Sea"}]}',
            "runs[0].saw",
            "an arm by which carts leave, or stays; Sea is none",
        ),
        ('{"runs": [NaN]}', "line 1, column 11", "JSON, which has no NaN"),
        ("[" * 100_000, "top level", "at most 64 lists and objects inside one another"),
    ],
)
def test_a_file_that_is_refused(run: Runner, text: str, place: str, expected: str) -> None:
    Path("obs.json").write_text(text)
    for more in ([], ["--json"]):
        done = run("diagnose", SALTERN, "--observed", "obs.json", *more)
        assert done == (4, "", f"platelayer: obs.json: {place}: expected {expected}\n")


def test_an_arm_of_the_wrong_kind(run: Runner, switch_plan: str) -> None:
    """By Mill carts only leave; an arm where no rail lies lets none in."""
    done = diagnosed(run, switch_plan, ("Mill", None, "Quay"))
    assert done.err == (
        "platelayer: obs.json: runs[0].from: expected an arm by which carts come in; Mill is none\n"
    )
    plan = three_way()
    del plan["arms"][0]["out"]
    plan["arms"][0]["in"]["at"] = [5, 64, 5]
    Path("switch.plan.json").write_text(json.dumps(plan))
    assert diagnosed(run, "switch.plan.json", ("Quay", None, "Mill")).status == 4


def test_a_file_that_is_not_there_or_too_large(run: Runner) -> None:
    done = run("diagnose", SALTERN, "--observed", "none.json")
    assert done == (
        4,
        "",
        "platelayer: none.json: the file itself: expected a file that can be read "
        "(No such file or directory)\n",
    )
    with open("large.json", "wb") as stream:
        stream.truncate(SIZE_LIMIT + 1)  # a hole: takes no room on the disk
    done = run("diagnose", SALTERN, "--observed", "large.json")
    assert done == (4, "", f"platelayer: large.json: top level: expected at most {SIZE_LIMIT:,} bytes\n")
    Path("many.json").write_text(
        json.dumps({"runs": [{"from": "Quay", "waybill": None, "saw": "Fen"}] * (RUN_LIMIT + 1)})
    )
    done = run("diagnose", SALTERN, "--observed", "many.json")
    assert (done.status, done.err) == (
        4,
        f"platelayer: many.json: runs: expected a list of at most {RUN_LIMIT:,} runs\n",
    )


def test_what_may_stand_there_besides(run: Runner) -> None:
    """Keys that are not known, a waybill left out, and spaces."""
    Path("obs.json").write_text('\n{"by": [1.5], "runs": [{"from": "Quay", "saw": "Fen", "tick": 1}]} ')
    done = run("diagnose", SALTERN, "--observed", "obs.json", "--json")
    assert json.loads(done.out) == {"diagnoses": [{"faults": []}], "next_run": None}


@pytest.mark.parametrize("kind", SPOILERS)
def test_spoilt_files(kind: str) -> None:
    """Every one is read or refused with the place and what was expected."""
    commissioning = Commissioning(Junction(read_plan(SALTERN)))
    random = Random(kind)
    refused = 0
    for _ in range(300):
        data = SPOILERS[kind](OBSERVED.read_bytes(), random)
        try:
            runs = parse_observed(data, "obs.json", commissioning)
        except PlanFileError as error:
            refused += 1
            said, wanted = str(error), f"obs.json: {error.place}: expected "
        else:
            said = wanted = ""
            assert all(commissioning.can_send(each.run) for each in runs)
        assert said.startswith(wanted)
    assert refused > 0
