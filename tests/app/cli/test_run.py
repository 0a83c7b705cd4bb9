"""What ``run`` prints, and what is refused in a script."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from model.files.script_file import CART_LIMIT, EVENT_LIMIT, SIZE_LIMIT
from tests.app.cli.running import Done, Runner


def line_with_reader() -> dict[str, Any]:
    """Ten rails from west to east, a reader under the fifth, a lever, dust and a lamp beside them."""
    pieces: list[dict[str, Any]] = []
    for x in range(10):
        pieces.append({"part": "solid-block", "at": [x, 63, 0]})
        pieces.append({"part": "rail", "at": [x, 64, 0], "facing": "east"})
    pieces[8] = {"part": "hopper", "at": [4, 63, 0], "holds": [{"item": "waybill:Salt", "count": 22}]}
    pieces += [{"part": "solid-block", "at": [x, 63, 5]} for x in range(3)]
    pieces += [
        {"part": "lever", "at": [0, 64, 5]},
        {"part": "dust", "at": [1, 64, 5]},
        {"part": "lamp", "at": [2, 64, 5]},
        {"part": "button", "at": [0, 64, 6], "facing": "south"},
    ]
    arms = [
        {"name": "Quay", "in": {"at": [0, 64, 0], "heading": "east"}},
        {"name": "Mill", "out": {"at": [9, 64, 0], "heading": "east"}},
        {"name": "Fen", "in": {"at": [0, 64, 9], "heading": "east"}},
    ]
    return {"format": "platelayer-plan", "version": 1, "pieces": pieces, "arms": arms}


@pytest.fixture
def plan(run: Runner) -> str:
    Path("line.plan.json").write_text(json.dumps(line_with_reader()))
    return "line.plan.json"


def ran(run: Runner, plan: str, script: Any, *more: str) -> Done:
    Path("s.json").write_text(script if isinstance(script, str) else json.dumps(script))
    return run("run", plan, "--script", "s.json", *more)


SEND = {"tick": 0, "do": "send", "arm": "Quay", "carts": 2, "gap": 2, "waybills": {"Salt": 1}}


def test_all_that_is_printed(run: Runner, plan: str) -> None:
    """Worked out by hand: 10 cells are 25 ticks, and a gap of 2 puts the second cart 8 ticks (7.5) behind.

    The carts are over the reader in ticks 10 to 12 and 18 to 19, and it takes a waybill in ticks 11 and 19.
    """
    events = [SEND, {"tick": 3, "do": "lever", "at": [0, 64, 5], "on": True}]
    script = {"probes": [[1, 64, 5], [2, 64, 5], [9, 9, 9]], "events": events}
    done = ran(run, plan, script, "--json")
    assert (done.status, done.err) == (0, "")
    assert json.loads(done.out) == {
        "ticks": 34,
        "arrivals": [
            {"cart": 1, "tick": 25, "arm": "Mill", "carries": {"Salt": 0}},
            {"cart": 2, "tick": 33, "arm": "Mill", "carries": {"Salt": 0}},
        ],
        "lost": [],
        "probes": {"1,64,5": [[0, 0], [3, 15]], "2,64,5": [[0, 0], [3, 15]], "9,9,9": [[0, 0]]},
        "unsure": [],
    }


def test_so_many_ticks_and_carts_that_still_run(run: Runner, plan: str) -> None:
    said = json.loads(ran(run, plan, {"events": [SEND]}, "--ticks", "6", "--json").out)
    assert said["ticks"] == 6
    assert said["lost"] == [
        {"cart": 1, "at": [2, 64, 0], "why": "running"},
        {"cart": 2, "at": [0, 64, 0], "why": "running"},
    ]


def test_each_cart_can_have_its_own_waybills(run: Runner, plan: str) -> None:
    send = {**SEND, "gap": 9, "waybills": [{}, {"Peat": 2, "Salt": 3}]}
    said = json.loads(ran(run, plan, {"events": [send]}, "--json").out)
    assert [each["carries"] for each in said["arrivals"]] == [{}, {"Peat": 2, "Salt": 2}]


def test_buttons_and_fills(run: Runner, plan: str) -> None:
    """A reader that is filled with something else in one slot has room for a waybill in the others."""
    script = {
        "probes": [[0, 64, 6]],
        "events": [
            {"tick": 0, "do": "fill", "at": [4, 63, 0], "holds": [{"item": "peat", "count": 1}]},
            {"tick": 2, "do": "button", "at": [0, 64, 6]},
            SEND,
        ],
    }
    said = json.loads(ran(run, plan, script, "--json").out)
    assert said["probes"] == {"0,64,6": [[0, 0], [2, 15], [22, 0]]}
    assert [each["carries"] for each in said["arrivals"]] == [{"Salt": 0}, {"Salt": 0}]


def test_in_words(run: Runner, plan: str) -> None:
    script = {"probes": [[1, 64, 5]], "events": [{**SEND, "carts": 1}, {**SEND, "tick": 90}]}
    assert ran(run, plan, script, "--ticks", "92").out == (
        "Carts that arrived\n"
        "  cart 1  tick 25  Mill  0 Salt\n"
        "Carts that did not\n"
        "  cart 2  0 64 0  running\n"
        "  cart 3  0 64 0  running\n"
        "Probes (tick:strength)\n"
        "  1 64 5  0:0\n"
        "92 ticks: 4.6 s\n"
    )


def test_an_empty_script_runs_one_tick(run: Runner, plan: str) -> None:
    done = ran(run, plan, "{}", "--json")
    empty = {"ticks": 1, "arrivals": [], "lost": [], "probes": {}, "unsure": []}
    assert json.loads(done.out) == empty


def event(**keys: Any) -> dict[str, Any]:
    return {"events": [{"tick": 0, **keys}]}


@pytest.mark.parametrize(
    ("script", "said"),
    [
        (event(do="send", arm="Sea"), "there is no arm 'Sea'"),
        (event(do="send", arm="Mill"), "the arm Mill has no way in"),
        (event(do="send", arm="Fen"), "no rail lies where the arm Fen comes in"),
        (event(do="lever", at=[1, 64, 5], on=True), "there is no lever at 1 64 5"),
        (event(do="button", at=[0, 64, 5]), "there is no button at 0 64 5"),
        (event(do="fill", at=[2, 64, 5], holds=[]), "there is no container at 2 64 5"),
    ],
)
def test_what_the_plan_does_not_have_is_wrong_use(run: Runner, plan: str, script: Any, said: str) -> None:
    done = ran(run, plan, script, "--json")
    assert (done.status, done.out) == (2, "")
    assert said in done.err


@pytest.mark.parametrize("more", [["--ticks", "0"], ["--ticks", "x"], ["--ticks", "1.5"]])
def test_numbers_of_ticks_that_are_wrong_use(run: Runner, plan: str, more: list[str]) -> None:
    assert ran(run, plan, "{}", *more).status == 2


def test_a_script_must_be_named(run: Runner, plan: str) -> None:
    assert run("run", plan).status == 2


NAME = "a name of 1 to 80 characters without control characters, comma or slash"
COUNT = "a whole number from 0 to 1,728"
CELL = "three whole numbers [x, y, z], x and z from -10,000,000 to 10,000,000, y from -1,024 to 1,023"
DOUBLED = "each key once; this one is doubled"


@pytest.mark.parametrize(
    ("script", "place", "expected"),
    [
        ('{"events": [', "line 1, column 13", "JSON (Expecting value)"),
        ("[]", "top level", 'an object with "events" and "probes"'),
        ('{"events": {}}', "events", f"a list of at most {EVENT_LIMIT:,} events"),
        ('{"events": [7]}', "events[0]", 'an object with "tick" and "do"'),
        ('{"events": [{"tick": 0}]}', "events[0]", 'the key "do"'),
        ('{"events": [{"do": "send", "arm": "Quay"}]}', "events[0]", 'the key "tick"'),
        ('{"events": [], "events": []}', "events", DOUBLED),
        ('{"events": [{"tick": 0, "do": "button", "at": [0, 0, 0], "do": "x"}]}', "events[0].do", DOUBLED),
        ('{"probes": [[0, 64]]}', "probes[0]", CELL),
        ('{"probes": [[0, 64, 0.5]]}', "probes[0][2]", CELL),
        ('{"probes": [[0, 2000, 0]]}', "probes[0][1]", CELL),
        (event(do="wait"), "events[0].do", "send, lever, button or fill"),
        (event(do="send"), "events[0]", 'the key "arm"'),
        (event(do="send", arm="a/b"), "events[0].arm", NAME),
        (event(do="send", arm="Quay", tick=-1), "events[0].tick", "a whole number from 0 to 1,000,000"),
        (event(do="send", arm="Quay", tick=True), "events[0].tick", "a whole number from 0 to 1,000,000"),
        (event(do="send", arm="Quay", carts=0), "events[0].carts", "a whole number from 1 to 1,000"),
        (event(do="send", arm="Quay", gap=-1), "events[0].gap", "a whole number from 0 to 1,000"),
        (event(do="send", arm="Quay", waybills={"a,b": 1}), "events[0].waybills", f"waybills, each {NAME}"),
        (event(do="send", arm="Quay", waybills={"Salt": "1"}), "events[0].waybills[...]", COUNT),
        (
            event(do="send", arm="Quay", carts=2, waybills=[{}]),
            "events[0].waybills",
            "one entry a cart; the train has 2 carts",
        ),
        (
            event(do="send", arm="Quay", waybills=[]),
            "events[0].waybills",
            "one entry a cart; the train has 1 cart",
        ),
        (
            event(do="send", arm="Quay", waybills={"Salt": 1_700, "Peat": 65}),
            "events[0].waybills",
            "what the 27 slots of a cart can hold",
        ),
        (event(do="lever", at=[0, 64, 5]), "events[0]", 'the key "on"'),
        (event(do="lever", at=[0, 64, 5], on=1), "events[0].on", "true or false"),
        (
            event(do="fill", at=[4, 63, 0], holds=[{"item": "salt", "count": 65}] * 3),
            "events[0].holds",
            "what 5 slots can hold",
        ),
        (
            event(do="fill", at=[4, 63, 0], holds=[{"item": "salt", "count": 0}]),
            "events[0].holds[0].count",
            "a whole number from 1 to 1,728",
        ),
    ],
)
def test_a_script_that_is_refused(run: Runner, plan: str, script: Any, place: str, expected: str) -> None:
    done = ran(run, plan, script, "--json")
    assert done == (4, "", f"platelayer: s.json: {place}: expected {expected}\n")


def test_scripts_that_are_not_there_or_too_large(run: Runner, plan: str) -> None:
    done = run("run", plan, "--script", "none.json")
    assert (done.status, done.err[:33]) == (4, "platelayer: none.json: the file i")
    with open("large.json", "wb") as stream:
        stream.truncate(SIZE_LIMIT + 1)  # a hole: takes no room on the disk
    done = run("run", plan, "--script", "large.json")
    assert done == (4, "", f"platelayer: large.json: top level: expected at most {SIZE_LIMIT:,} bytes\n")
    assert ran(run, plan, event(do="send", arm="Quay", carts=CART_LIMIT + 1)).status == 4
    assert ran(run, plan, {"events": [SEND] * (EVENT_LIMIT + 1)}).status == 4


def test_whole_numbers_with_a_point_and_keys_that_are_not_known(run: Runner, plan: str) -> None:
    script = '\n{"by": [1.5], "events": [{"tick": 3.0, "do": "send", "arm": "Quay", "why": null}]} '
    said = json.loads(ran(run, plan, script, "--json").out)
    assert said["arrivals"] == [{"cart": 1, "tick": 28, "arm": "Mill", "carries": {}}]
