"""One plan, one byte string; what was read is written back, with the keys that nobody knows."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings

from model.edits import move_plan
from model.files.plan_file import parse_plan, plan_bytes
from model.plan import Plan
from tests.model.files.documents import FULL, document, one_piece, read
from tests.strategies import plans

ROOT = Path(__file__).parents[3]
EXAMPLES = sorted((ROOT / "resources" / "examples").glob("*.plan.json"))

FULL_TEXT = """\
{
  "format": "platelayer-plan",
  "version": 1,
  "title": "Beacon Wye",
  "running_side": "left",
  "pieces": [
    {"part":"solid-block","at":[0,63,0]},
    {"part":"rail","at":[0,64,0],"facing":"east"},
    {"part":"booster-rail","at":[0,64,1],"facing":"north"},
    {"part":"repeater","at":[2,62,0],"facing":"east","delay":4},
    {"part":"comparator","at":[3,62,0],"facing":"west","mode":"subtract"},
    {"part":"torch","at":[3,62,1],"facing":"up"},
    {"part":"lever","at":[3,62,2],"facing":"down"},
    {"part":"button","at":[3,62,3],"facing":"up","wooden":true},
    {"part":"hopper","at":[4,63,0],"facing":"down","holds":[{"item":"waybill:Salt","count":22}]},
    {"part":"barrel","at":[4,62,0],"facing":"south","holds":[{"item":"ingot","count":1728}]},
    {"part":"auto-crafter","at":[4,61,0],"facing":"up","holds":[{"item":"nugget","count":9}]}
  ],
  "arms": [
    {"name":"Quay","in":{"at":[0,64,4],"heading":"north"},"out":{"at":[2,64,4],"heading":"south"}},
    {"name":"Tithe Barn","out":{"at":[2,64,-4],"heading":"north"}}
  ],
  "routes": [
    {"from":"Quay","idle":"Mill","called":"Fen","waybill":"Salt"}
  ],
  "waivers": [
    {"rule":"running-side","cells":[[0,64,4]],"arms":["Mill"],"reason":"old loop, goes in spring"}
  ],
  "sheet": {"owner":"Brinepan Tramway","number":"BW-003","revision":"A","date":"2026-11-25",\
"created_by":"Drawing office","approved_by":""}
}
"""


def test_the_whole_text_of_a_plan() -> None:
    assert plan_bytes(read(FULL)).decode() == FULL_TEXT


def test_the_text_of_an_empty_plan() -> None:
    text = '{\n  "format": "platelayer-plan",\n  "version": 1,\n  "title": "",\n  "pieces": []\n}\n'
    assert plan_bytes(read(document())).decode() == text


@given(plans())
@settings(max_examples=200, deadline=None)
def test_what_is_written_reads_as_the_same_plan(plan: Plan) -> None:
    data = plan_bytes(plan)
    again = parse_plan(data, "f")
    assert again == plan
    assert plan_bytes(again) == data


@given(plans())
@settings(max_examples=100, deadline=None)
def test_every_piece_has_a_line_of_its_own(plan: Plan) -> None:
    lines = [line.strip().rstrip(",") for line in plan_bytes(plan).decode().split("\n")]
    written = [json.loads(line) for line in lines if line.startswith('{"part"')]
    assert [tuple(piece["at"]) for piece in written] == [tuple(piece.at) for piece in plan.pieces]


def test_equal_plans_have_equal_bytes_however_they_were_made() -> None:
    plan = read(FULL)
    there_and_back = move_plan(plan, 5, 0, 7).applied(plan)
    there_and_back = move_plan(there_and_back, -5, 0, -7).applied(there_and_back)
    spaced = json.dumps(FULL, indent=7, ensure_ascii=True).encode()
    assert plan_bytes(plan) == plan_bytes(there_and_back) == plan_bytes(parse_plan(spaced, "f"))


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.name)
def test_reading_and_writing_an_example_changes_nothing_in_it(path: Path) -> None:
    plan = parse_plan(path.read_bytes(), path.name)
    assert parse_plan(plan_bytes(plan), path.name) == plan


def test_hash_seed_and_locale_leave_the_bytes_alone() -> None:
    script = (
        "import sys; from model.files.plan_file import parse_plan, plan_bytes;"
        "sys.stdout.buffer.write(plan_bytes(parse_plan(sys.stdin.buffer.read(), 'f')))"
    )
    outputs = set()
    for seed, locale in (("1", "C"), ("2", "C.UTF-8")):
        environment = {**os.environ, "PYTHONHASHSEED": seed, "LC_ALL": locale, "PYTHONPATH": str(ROOT)}
        done = subprocess.run(
            [sys.executable, "-c", script],
            input=json.dumps(FULL | {"title": "Beacon é", "view": {"b": 1, "a": 2}}).encode(),
            capture_output=True,
            check=True,
            env=environment,
        )
        outputs.add(done.stdout)
    assert len(outputs) == 1


STRANGE: dict[str, Any] = {
    "colour": "red",
    "view": {"zoom": 1.5, "guides": [1, -2, None, True, {"x": []}], "é": '"\\\n\u2028'},
    "part ": {"part": "rail"},
    "": 0,
    "kept": [["a", "b"]],
    "start": 1,
    "enter": {},
}


def test_keys_that_nobody_knows_are_written_back_at_every_level() -> None:
    value = json.loads(json.dumps(FULL))
    holder = value["pieces"][8]["holds"][0]
    end = value["arms"][0]["in"]
    objects = [value, *value["pieces"], holder, *value["arms"], end, *value["routes"], *value["waivers"]]
    for strange_to in (*objects, value["sheet"]):
        strange_to |= STRANGE
    plan = read(value)
    written = json.loads(plan_bytes(plan))
    for piece in value["pieces"]:
        piece.setdefault(
            "facing", {"torch": "up", "button": "up", "hopper": "down"}.get(piece["part"], "north")
        )
    value["pieces"][0].pop("facing")
    assert written == value
    assert parse_plan(plan_bytes(plan), "f") == plan
    assert list(written["sheet"])[-len(STRANGE) :] == list(STRANGE)


@pytest.mark.parametrize(
    "text",
    ["1.0", "1.50", "1e999", "-0.0", "1E+5", "123456789012345678901234567890", '"\\u00e9"', "[ 1 , 2 ]"],
)
def test_unknown_values_keep_their_meaning_to_the_last_digit(text: str) -> None:
    data = json.dumps(document())[:-1] + f', "view": {text}}}'
    plan = parse_plan(data.encode(), "f")
    kept = dict(plan.details.kept)["view"]
    assert kept == text.replace(" ", "").replace("\\u00e9", "é")
    assert dict(parse_plan(plan_bytes(plan), "f").details.kept)["view"] == kept


def test_unknown_keys_follow_a_piece_that_is_moved() -> None:
    plan = read(one_piece("rail", colour="red"))
    moved = move_plan(plan, 1, 0, 0).applied(plan)
    assert json.loads(plan_bytes(moved))["pieces"][0] == {
        "part": "rail",
        "at": [1, 64, 0],
        "facing": "north",
        "colour": "red",
    }
