"""``platelayer order``: what it prints, and the plan that it writes."""

from __future__ import annotations

import json
from pathlib import Path
from random import Random
from typing import Any

import pytest

from model.files.plan_file import plan_bytes, read_plan
from tests.app.cli.running import EXAMPLES, Done, Runner
from tests.model.ordering.comparing import on_blocks
from tests.oracle.adapter import drawn_from, pieces_from, plan_from
from tests.oracle.compact_junctions import TINY, compact_junction
from tests.oracle.optimum import cost_of_order, optimum

KEYS = {"served", "inverters", "thrown", "wired", "proved"}
SHEET = ("owner", "number", "revision", "date", "created_by", "approved_by")
RAILS = ("rail", "booster-rail", "detector-rail")
SERVED = 13
"""The seed of a tiny junction that some order serves, and its own does not."""
NEVER = 2
"""The seed of a tiny junction that no order serves."""
BAD = "platelayer: bad.plan.json: line 2, column 14: expected JSON (Expecting ',' delimiter)\n"


def write(name: str, seed: int) -> None:
    """A tiny junction on blocks, as a file with keys that the program does not know."""
    pieces, arms, routes = compact_junction(seed, TINY)
    plan = plan_from(on_blocks(Random(seed), pieces), arms, routes)
    document = json.loads(plan_bytes(plan))
    document |= {"title": "Saltern Yard", "ballast": "shells"}
    document["sheet"] = dict.fromkeys(SHEET, "") | {"owner": "Brinepan Tramway"}
    document["pieces"][0]["weathered"] = True
    Path(name).write_text(json.dumps(document))


def order(run: Runner, file: str | Path, *more: str) -> tuple[Done, dict[str, Any]]:
    done = run("order", file, "-o", "out.plan.json", "--json", *more)
    return done, json.loads(done.out)


def cost_of_file(name: str) -> tuple[int, int, int] | None:
    """What the file costs as it is, by the second implementation."""
    plan = read_plan(name)
    drawn = drawn_from(plan)
    return cost_of_order(pieces_from(plan), drawn.arms, drawn.routes)


def cost_printed(printed: dict[str, Any]) -> tuple[int, int, int]:
    return printed["inverters"], printed["thrown"], printed["wired"]


def check_same_but_for_the_order(before: str | Path, after: str | Path) -> None:
    """Only the order of the rails among each other, and their facings."""
    old, new = (json.loads(Path(name).read_text()) for name in (before, after))
    olds, news = old.pop("pieces"), new.pop("pieces")
    assert new == old
    assert [piece["part"] in RAILS for piece in news] == [piece["part"] in RAILS for piece in olds]
    assert [p for p in news if p["part"] not in RAILS] == [p for p in olds if p["part"] not in RAILS]
    assert unfaced(news) == unfaced(olds)


def unfaced(pieces: list[dict[str, Any]]) -> list[str]:
    """The rails without their facings, sorted."""
    bare = ({key: value for key, value in piece.items() if key != "facing"} for piece in pieces)
    return sorted(json.dumps(piece, sort_keys=True) for piece in bare if piece["part"] in RAILS)


def test_the_best_order(run: Runner) -> None:
    write("yard.plan.json", SERVED)
    assert cost_of_file("yard.plan.json") is None
    done, printed = order(run, "yard.plan.json")
    assert (done.status, done.out.count("\n")) == (0, 1)
    assert printed.keys() == KEYS
    assert (printed["served"], printed["proved"]) == (True, True)
    assert (
        cost_printed(printed)
        == cost_of_file("out.plan.json")
        == optimum(*compact_junction(SERVED, TINY)).cost
    )
    check_same_but_for_the_order("yard.plan.json", "out.plan.json")


def test_check_says_that_the_plan_written_is_served(run: Runner) -> None:
    write("yard.plan.json", SERVED)
    _, printed = order(run, "yard.plan.json")
    checked = json.loads(run("check", "out.plan.json", "--json").out)["files"][0]
    assert all(r["idle_reached"] and r["called_reached"] in (True, None) for r in checked["routes"])
    assert sum(switch["inverter"] for switch in checked["switches"]) == printed["inverters"]
    assert sum(len(switch["called_by"]) for switch in checked["switches"]) == printed["thrown"]


def test_no_order_serves(run: Runner) -> None:
    write("yard.plan.json", NEVER)
    done, printed = order(run, "yard.plan.json")
    assert done.status == 3
    assert printed.keys() == KEYS
    assert (printed["served"], printed["proved"]) == (False, True)
    if Path("out.plan.json").exists():
        check_same_but_for_the_order("yard.plan.json", "out.plan.json")


def test_without_time(run: Runner) -> None:
    """Whatever it prints then is true of the plan that it writes."""
    write("yard.plan.json", SERVED)
    done, printed = order(run, "yard.plan.json", "--seconds", "0")
    assert printed.keys() == KEYS
    assert done.status == (0 if printed["served"] else 3)
    assert cost_of_file("out.plan.json") == (cost_printed(printed) if printed["served"] else None)


def test_all_orientations(run: Runner) -> None:
    write("yard.plan.json", SERVED)
    done, printed = order(run, "yard.plan.json", "--orientations")
    assert done.status == 0
    assert printed.keys() == KEYS | {"orientations"}
    turns = [(each["quarter"], each["mirror"]) for each in printed["orientations"]]
    assert turns == [(quarter, mirror) for mirror in (False, True) for quarter in range(4)]
    assert all(each.keys() == KEYS | {"quarter", "mirror"} for each in printed["orientations"])
    assert {key: printed["orientations"][0][key] for key in KEYS} == {key: printed[key] for key in KEYS}


def test_the_same_order_every_time(run: Runner) -> None:
    write("yard.plan.json", SERVED)
    order(run, "yard.plan.json")
    first = Path("out.plan.json").read_bytes()
    order(run, "yard.plan.json")
    assert Path("out.plan.json").read_bytes() == first


def test_into_the_file_itself(run: Runner) -> None:
    write("yard.plan.json", SERVED)
    done = run("order", "yard.plan.json", "-o", "yard.plan.json")
    assert done.status == 0
    assert "wrote yard.plan.json" in done.err
    assert cost_of_file("yard.plan.json") is not None


@pytest.mark.parametrize("example", sorted(path.name for path in EXAMPLES.glob("*.plan.json")))
def test_examples(run: Runner, example: str) -> None:
    """An example is served as it stands, so the order found is no dearer."""
    done, printed = order(run, EXAMPLES / example)
    before = cost_of_file(str(EXAMPLES / example))
    assert (done.status, printed["served"], printed["proved"]) == (0, True, True)
    assert before is not None
    assert cost_printed(printed) == cost_of_file("out.plan.json") <= before
    check_same_but_for_the_order(EXAMPLES / example, "out.plan.json")


@pytest.mark.parametrize(
    ("output", "reason"),
    [
        ("none/out.plan.json", "No such file or directory"),
        ("folder", "there is a folder of that name"),
        ("/dev/null", "it is no ordinary file"),
    ],
)
def test_unwritable(run: Runner, output: str, reason: str) -> None:
    Path("folder").mkdir()
    write("yard.plan.json", SERVED)
    done = run("order", "yard.plan.json", "-o", output, "--json")
    assert (done.status, done.out) == (4, "")
    assert done.err.endswith(f"platelayer: {output}: could not be written: {reason}\n")


def test_unreadable(run: Runner) -> None:
    assert run("order", "bad.plan.json", "-o", "out.plan.json", "--json") == (4, "", BAD)
    assert not Path("out.plan.json").exists()


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ("order good.plan.json", "Missing option '-o'"),
        ("order -o out.plan.json", "Missing argument 'FILE'"),
        ("order good.plan.json -o out.plan.json --seconds soon", "Invalid value for '--seconds'"),
        ("order good.plan.json -o out.plan.json --seconds -1", "Invalid value for '--seconds'"),
    ],
)
def test_wrong_use(run: Runner, arguments: str, message: str) -> None:
    done = run(*arguments.split())
    assert (done.status, done.out) == (2, "")
    assert message in done.err
    assert not Path("out.plan.json").exists()
