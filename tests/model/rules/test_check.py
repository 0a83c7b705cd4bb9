"""A plan checked as plain data: the keys that other programs read, and what stands under them."""

from __future__ import annotations

import json

from model import edits
from model.plan import Plan
from model.rules import check, waiver_for
from model.text_drawing import plan_from_drawing

BRANCH = plan_from_drawing("""
    level 64 on blocks
    │··
    │─·
    │·═
    order
    ···
    1··
    ···
    arm Quay: in 0 64 2 north
    arm Mill: out 0 64 0 north
    arm Fen: out 1 64 1 east
    route Quay: idle Mill, called Fen
    """)
"""A three-way rail open to the north, south and east rests south-east and is powered north-east (common
practice, no source); straight on from the south takes the powered state."""

WITHOUT_AN_ARM = edits.remove_arm(BRANCH, "Fen").applied(BRANCH)


def test_the_data_of_a_branch() -> None:
    data = check(BRANCH).as_json("branch.plan.json")
    assert data["file"] == "branch.plan.json"
    assert data["rails"][-1] == {
        "at": [0, 64, 1],
        "part": "rail",
        "shape": "south-east",
        "resting": "south-east",
        "powered": "north-east",
        "switch": True,
    }
    assert [rail["at"] for rail in data["rails"]] == [
        [0, 64, 0],
        [1, 64, 1],
        [0, 64, 2],
        [2, 64, 2],
        [0, 64, 1],
    ]
    assert [rail["switch"] for rail in data["rails"]] == [False, False, False, False, True]
    assert data["switches"] == [
        {
            "at": [0, 64, 1],
            "name": "S1",
            "resting": "south-east",
            "powered": "north-east",
            "idle": "north-east",
            "called_by": ["Quay"],
            "inverter": True,
        }
    ]
    assert data["routes"] == [
        {"from": "Quay", "idle": "Mill", "idle_reached": True, "called": "Fen", "called_reached": True}
    ]
    assert [(o["quarter"], o["mirror"]) for o in data["orientations"]] == [
        (quarter, mirror) for mirror in (False, True) for quarter in range(4)
    ]
    assert data["orientations"][0] == {"quarter": 0, "mirror": False, "inverters": 1, "buildable": True}
    assert data["findings"] == [
        {
            "rule": "booster-unpowered",
            "severity": "warning",
            "at": [2, 64, 2],
            "cells": [[2, 64, 2]],
            "arms": [],
            "message": "The booster rail at 2 64 2 gets no signal and brakes every cart.",
            "waived": False,
        },
        {
            "rule": "inverter-needed",
            "severity": "note",
            "at": [0, 64, 1],
            "cells": [[0, 64, 1]],
            "arms": [],
            "message": "S1 needs an inverter: it is powered while no reader holds.",
            "waived": False,
        },
        {
            "rule": "unreached",
            "severity": "note",
            "at": [2, 64, 2],
            "cells": [[2, 64, 2]],
            "arms": [],
            "message": "No wanted route passes the rail at 2 64 2.",
            "waived": False,
        },
    ]


def test_a_finding_without_a_place_and_orientations_that_cannot_be_built() -> None:
    data = check(WITHOUT_AN_ARM).as_json("x")
    assert [finding["at"] for finding in data["findings"] if finding["rule"] == "unknown-arm"] == [None]
    assert data["routes"][0]["called_reached"] is False
    assert {(o["inverters"], o["buildable"]) for o in data["orientations"]} == {(None, False)}


def test_the_data_is_json_as_it_stands() -> None:
    data = check(WITHOUT_AN_ARM).as_json("x")
    assert json.loads(json.dumps(data)) == data


def has_errors(plan: Plan) -> bool:
    return check(plan).has_errors


def test_errors_count_until_they_are_set_aside() -> None:
    plan = WITHOUT_AN_ARM
    assert not has_errors(BRANCH)
    assert has_errors(plan)
    for finding in check(plan).findings:
        plan = edits.set_aside(plan, waiver_for(finding, "known")).applied(plan)
    assert not has_errors(plan)
