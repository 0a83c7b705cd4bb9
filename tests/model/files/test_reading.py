"""What a plan file may say, and how it is refused: file, place, what was expected."""

from __future__ import annotations

import errno
import json
import os
from typing import Any

import pytest

from model.files import opening
from model.files.plan_file import PlanFileError, parse_plan, read_plan
from model.grid import Cell, Facing, Heading
from model.parts import TRAITS, Mode, Part
from model.pieces import Held
from model.plan import ArmEnd, SheetData, Side
from tests.model.files.documents import FULL, document, one_piece, read

ARM_IN = {"at": [0, 64, 4], "heading": "north"}


def test_every_key_is_read() -> None:
    plan = read(FULL)
    by_part = {piece.part: piece for piece in plan.pieces}
    assert [piece.at for piece in plan.pieces][:2] == [Cell(0, 63, 0), Cell(0, 64, 0)]
    assert by_part[Part.RAIL].facing is Facing.EAST
    assert by_part[Part.REPEATER].delay == 4
    assert by_part[Part.COMPARATOR].mode is Mode.SUBTRACT
    assert by_part[Part.BUTTON].wooden
    assert by_part[Part.HOPPER].holds == (Held("waybill:Salt", 22),)
    details = plan.details
    assert (details.title, details.running_side) == ("Beacon Wye", Side.LEFT)
    assert details.arms[0].enter == ArmEnd(Cell(0, 64, 4), Heading.NORTH)
    assert details.arms[0].leave == ArmEnd(Cell(2, 64, 4), Heading.SOUTH)
    assert details.arms[1].enter is None
    route = details.routes[0]
    assert (route.start, route.idle, route.called, route.waybill) == ("Quay", "Mill", "Fen", "Salt")
    waiver = details.waivers[0]
    assert (waiver.rule, waiver.cells, waiver.arms) == ("running-side", (Cell(0, 64, 4),), ("Mill",))
    assert waiver.reason == "old loop, goes in spring"
    assert details.sheet.owner == "Brinepan Tramway"


def test_what_is_left_out_has_its_default() -> None:
    details = read(document()).details
    assert (details.title, details.running_side) == ("", None)
    assert (details.arms, details.routes, details.waivers) == ((), (), ())
    assert details.sheet == SheetData()
    (repeater,) = read(one_piece("repeater")).pieces
    assert repeater.delay == 2
    (comparator,) = read(one_piece("comparator")).pieces
    assert comparator.mode is Mode.COMPARE
    (route,) = read(document(routes=[{"from": "Quay", "idle": "Mill"}])).routes
    assert (route.called, route.waybill) == (None, None)


FIRST_FACINGS = {"torch": "up", "lever": "up", "button": "up", "hopper": "down"}
FACINGS_MORE = {
    "torch": {"up"},
    "lever": {"up", "down"},
    "button": {"up", "down"},
    "hopper": {"down"},
    "auto-crafter": {"up", "down"},
}


@pytest.mark.parametrize("part", list(Part))
def test_facings_of_each_part(part: Part) -> None:
    (piece,) = read(one_piece(part)).pieces
    assert piece.facing == FIRST_FACINGS.get(part, "north")
    allowed = {"north", "east", "south", "west"} | FACINGS_MORE.get(part, set())
    for facing in Facing:
        if facing in allowed:
            assert [p.facing for p in read(one_piece(part, facing=facing)).pieces] == [facing]
        else:
            assert refused(one_piece(part, facing=facing)).place == "pieces[0].facing"


@pytest.mark.parametrize(
    ("key", "value", "parts"),
    [
        ("delay", 2, {"repeater"}),
        ("mode", "compare", {"comparator"}),
        ("wooden", False, {"button"}),
        ("holds", [], {"hopper", "barrel", "auto-crafter"}),
    ],
)
def test_keys_of_some_parts_only(key: str, value: Any, parts: set[str]) -> None:
    for part in Part:
        if part in parts:
            assert len(read(one_piece(part, **{key: value})).pieces) == 1
        else:
            assert refused(one_piece(part, **{key: value})).place == f"pieces[0].{key}"


@pytest.mark.parametrize("part", [part for part in Part if TRAITS[part].slots])
def test_holds_fill_the_slots_and_no_more(part: Part) -> None:
    slots = TRAITS[part].slots
    read(one_piece(part, holds=[{"item": "salt", "count": 64 * slots}]))
    read(one_piece(part, holds=[{"item": "salt", "count": 1}] * slots))
    for too_much in (
        [{"item": "salt", "count": 64 * slots + 1}],
        [{"item": "salt", "count": 1}] * (slots + 1),
        [{"item": "salt", "count": 65}] + [{"item": "salt", "count": 1}] * (slots - 1),
    ):
        assert refused(one_piece(part, holds=too_much)).place.startswith("pieces[0].holds")


@pytest.mark.parametrize("text", ["0.0", "0e5", "-0", "0.0E+1", "1e1", "10.00"])
def test_a_whole_number_may_be_written_with_a_point(text: str) -> None:
    """JSON Schema 2020-12: a number with a zero fraction is an integer."""
    plan = parse_plan(raw(f'{{"part": "rail", "at": [{text}, 64, 0]}}'), "f")
    assert [piece.at.x for piece in plan.pieces] == [float(text)]


@pytest.mark.parametrize("text", ["0.5", "true", "null", '"0"', "1e400", "[0]", "99999999999999999999"])
def test_what_is_no_coordinate(text: str) -> None:
    with pytest.raises(PlanFileError) as error:
        parse_plan(raw(f'{{"part": "rail", "at": [{text}, 64, 0]}}'), "f")
    assert error.value.place == "pieces[0].at[0]"


@pytest.mark.parametrize(
    ("at", "fits"),
    [
        ([10_000_000, 1_023, -10_000_000], True),
        ([-10_000_000, -1_024, 10_000_000], True),
        ([10_000_001, 0, 0], False),
        ([-10_000_001, 0, 0], False),
        ([0, 0, 10_000_001], False),
        ([0, 1_024, 0], False),
        ([0, -1_025, 0], False),
        ([0, 0], False),
        ([0, 0, 0, 0], False),
        ([], False),
    ],
)
def test_limits_of_cells(at: list[int], fits: bool) -> None:
    places = {
        "pieces[0].at": document(pieces=[{"part": "rail", "at": at}]),
        "arms[0].in.at": document(arms=[{"name": "Quay", "in": {"at": at, "heading": "north"}}]),
        "waivers[0].cells[0]": document(waivers=[{"rule": "unreached", "cells": [at]}]),
    }
    for place, value in places.items():
        if fits:
            read(value)
        else:
            assert refused(value).place.startswith(place)


GOOD_NAMES = [
    "Quay",
    "Q",
    "Q" * 80,
    "Tithe Barn",
    " Mill ",
    "Fen\\3",
    "é" * 80,
    "😀" * 80,
    "=1+2",
    "\u00a0",
    ":",
]
BAD_NAMES = [
    "",
    "Q" * 81,
    "Quay,Mill",
    "a/b",
    "a\nb",
    "a\n",
    "\x00",
    "\x1f",
    "\x7f",
    "\x85",
    "\x9f",
    "\ud800",
    5,
    None,
    [],
]


@pytest.mark.parametrize("name", GOOD_NAMES)
def test_good_names(name: str) -> None:
    assert read(document(arms=[{"name": name, "in": ARM_IN}])).arms[0].name == name
    assert read(document(routes=[{"from": name, "idle": name, "waybill": name}])).routes[0].waybill == name
    (hopper,) = read(one_piece("hopper", holds=[{"item": f"waybill:{name}", "count": 1}])).pieces
    assert hopper.holds[0].item == f"waybill:{name}"


@pytest.mark.parametrize("name", BAD_NAMES, ids=ascii)
def test_bad_names(name: Any) -> None:
    assert refused(document(arms=[{"name": name, "in": ARM_IN}])).place == "arms[0].name"
    for key in ("from", "idle", "called", "waybill"):
        route = {"from": "Quay", "idle": "Mill", key: name}
        assert refused(document(routes=[route])).place == f"routes[0].{key}"
    if isinstance(name, str):
        holds = [{"item": f"waybill:{name}", "count": 1}]
        assert refused(one_piece("hopper", holds=holds)).place == "pieces[0].holds[0].item"


def test_what_only_the_findings_complain_of() -> None:
    """Doubled names of arms, and routes to arms that are not there, are findings and no bad file."""
    plan = read(
        document(
            arms=[{"name": "Quay", "in": ARM_IN}, {"name": "Quay", "in": ARM_IN}],
            routes=[{"from": "Beacon", "idle": "Orchard"}],
        )
    )
    assert [arm.name for arm in plan.arms] == ["Quay", "Quay"]


@pytest.mark.parametrize(
    ("value", "place", "expected"),
    [
        ([], "top level", "an object"),
        (document(format=...), "top level", 'the key "format"'),
        (document(version=...), "top level", 'the key "version"'),
        (document(pieces=...), "top level", 'the key "pieces"'),
        (document(format="network"), "format", '"platelayer-plan"'),
        (document(version=0), "version", "1"),
        (document(version=True), "version", "1"),
        (document(version="1"), "version", "1"),
        (document(version=2), "version", "newer"),
        (document(version=1.5), "version", "newer"),
        (document(version=2, pieces="all other"), "version", "newer"),
        (document(title=5), "title", "a text"),
        (document(running_side="middle"), "running_side", "left or right"),
        (document(running_side=None), "running_side", "left or right"),
        (document(pieces={}), "pieces", "a list"),
        (document(pieces=[5]), "pieces[0]", "an object"),
        (document(pieces=[{"part": "rail"}]), "pieces[0]", 'the key "at"'),
        (one_piece("rial"), "pieces[0].part", "one of rail"),
        (one_piece("rail", facing="up"), "pieces[0].facing", "north, east, south or west for rail"),
        (one_piece("rail", facing="inward"), "pieces[0].facing", "north"),
        (one_piece("rail", delay=2), "pieces[0].delay", "only on repeater"),
        (one_piece("repeater", delay=3), "pieces[0].delay", "2, 4, 6 or 8"),
        (one_piece("repeater", delay=True), "pieces[0].delay", "2, 4, 6 or 8"),
        (one_piece("comparator", mode="add"), "pieces[0].mode", "compare or subtract"),
        (one_piece("button", wooden=1), "pieces[0].wooden", "true or false"),
        (one_piece("barrel", holds={}), "pieces[0].holds", "a list"),
        (one_piece("barrel", holds=[{"item": "a"}]), "pieces[0].holds[0]", 'the key "count"'),
        (one_piece("barrel", holds=[{"item": "", "count": 1}]), "pieces[0].holds[0].item", "a name"),
        (one_piece("barrel", holds=[{"item": "a", "count": 0}]), "pieces[0].holds[0].count", "from 1"),
        (one_piece("hopper", holds=[{"item": "a", "count": 321}]), "pieces[0].holds", "5 slots"),
        (document(arms=[{"name": "Quay"}]), "arms[0]", 'at least one of "in" and "out"'),
        (document(arms=[{"name": "Quay", "in": None}]), "arms[0].in", "an object"),
        (document(arms=[{"name": "Quay", "in": {"at": [0, 0, 0]}}]), "arms[0].in", 'the key "heading"'),
        (
            document(arms=[{"name": "Quay", "out": {"at": [0, 0, 0], "heading": "up"}}]),
            "arms[0].out.heading",
            "north, east, south or west",
        ),
        (document(routes=[{"from": "Quay"}]), "routes[0]", 'the key "idle"'),
        (
            document(routes=[{"from": "Quay", "idle": "Mill"}, {"from": "Quay", "idle": "Fen"}]),
            "routes[1].from",
            "one route an arm",
        ),
        (document(waivers=[{}]), "waivers[0]", 'the key "rule"'),
        (document(waivers=[{"rule": ""}]), "waivers[0].rule", "a word"),
        (document(waivers=[{"rule": "a", "cells": [5]}]), "waivers[0].cells[0]", "three whole numbers"),
        (document(waivers=[{"rule": "a", "arms": ["a,b"]}]), "waivers[0].arms[0]", "a name"),
        (document(sheet=[]), "sheet", "an object"),
        (document(sheet={"owner": 5}), "sheet.owner", "a text"),
        (
            document(pieces=[{"part": "rail", "at": [0, 64, 0]}, {"part": "dust", "at": [0, 64, 0]}]),
            "pieces[1].at",
            "a cell of its own; pieces[0] stands there",
        ),
    ],
)
def test_refusals_name_file_place_and_what_was_expected(value: Any, place: str, expected: str) -> None:
    error = refused(value)
    assert error.place == place
    assert expected in error.expected
    assert str(error) == f"beacon.plan.json: {place}: expected {error.expected}"


START = '{"format": "platelayer-plan", "version": 1, '
DOUBLED = [
    (START + '"format": "platelayer-plan", "pieces": []}', "format"),
    (START + '"pieces": [], "title": "a:b", "title": ":"}', "title"),
    (START + '"pieces": [], "t\\u0069tle": "", "title": ""}', "title"),
    (START + '"pieces": [], "title": "\\u003a", "title": ""}', "title"),
    (START + '"pieces": [{"part": "rail", "at": [0,0,0], "at": [1,0,0]}]}', "pieces[0].at"),
    (START + '"pieces": [], "view": {"a": [{"b": 1, "c": 2, "b": 3}]}}', "view.a[0].b"),
]


@pytest.mark.parametrize(("text", "place"), DOUBLED)
def test_a_key_that_comes_twice_is_refused_at_any_depth(text: str, place: str) -> None:
    with pytest.raises(PlanFileError) as error:
        parse_plan(text.encode(), "f")
    assert (error.value.place, error.value.expected[:13]) == (place, "each key once")


HEAD = b'{"format": "platelayer-plan", "version": 1, "pieces": [],\n'
BROKEN = [
    (b"", "line 1, column 1"),
    (b"{", "line 1, column 2"),
    (b'{\n  "a": 1,\n}', "line "),
    (b'{\n  "a": 01}', "line 2"),
    (b'{"a": 1} x', "line 1, column 10"),
    (b"{'a': 1}", "line 1, column 2"),
    (b'{\n"a": NaN}', "line 2, column 6"),
    (b'{"NaN": [-Infinity]}', "line 1, column 10"),
    (HEAD + b'"a": ' + b"9" * 5_000 + b"}", "line 2, column 6: expected a number of at most 4,300 digits"),
    (HEAD + b'"a": "\xff"}', "line 2, byte 64: expected UTF-8"),
    (HEAD + b'"a": "\xed\xa0\x80"}', "line 2, byte 64: expected UTF-8"),
    (HEAD + b'"title": "\xff"}', "line 2, byte 68: expected UTF-8"),
    (b'{"a": "\x00"}', "line 1, column 8"),
    (b'{"a": "\\q"}', "line 1, column 8"),
    (b'\xef\xbb\xbf{"a": 1}', "line 1, column 1"),
    ('{"a": 1}'.encode("utf-16"), "line 1, byte 0"),
]


@pytest.mark.parametrize(("data", "place"), BROKEN)
def test_what_is_not_utf_8_or_json_is_refused_with_its_line(data: bytes, place: str) -> None:
    """RFC 8259: no NaN, leading zero, trailing comma, control character in a string, byte order mark."""
    with pytest.raises(PlanFileError) as error:
        parse_plan(data, "f")
    assert str(error.value).startswith(f"f: {place}")


def test_half_a_surrogate_pair_is_no_character() -> None:
    for text in ('"\\ud800"', '"\\udc00\\ud800"', '{"\\udfff": 1}', '["a", "\\ud83dx"]'):
        with pytest.raises(PlanFileError, match="half of a surrogate pair"):
            parse_plan(raw("", f', "view": {text}'), "f")
    whole = parse_plan(raw("", ', "title": "\\ud83d\\ude82"'), "f")
    assert whole.details.title == "\N{STEAM LOCOMOTIVE}"


def test_a_file_that_cannot_be_opened(tmp_path) -> None:
    for path in (tmp_path / "none.plan.json", tmp_path, f"{tmp_path}/a\0b"):
        with pytest.raises(PlanFileError) as error:
            read_plan(path)
        assert error.value.file == str(path)
        assert "a file that can be read" in error.value.expected


@pytest.mark.parametrize("call", ["open", "os.fstat"])
@pytest.mark.parametrize("number", [errno.EIO, errno.EACCES, errno.EMFILE])
def test_every_call_may_fail(tmp_path, call: str, number: int, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "fen.plan.json"
    path.write_text(json.dumps(document()))

    def fail(*args: object) -> None:
        raise OSError(number, os.strerror(number))

    with monkeypatch.context() as patched:
        if call == "open":
            patched.setattr(opening, "open", fail, raising=False)
        else:
            patched.setattr(opening.os, "fstat", fail)
        with pytest.raises(PlanFileError) as error:
            read_plan(path)
    assert error.value.expected == f"a file that can be read ({os.strerror(number)})"


def refused(value: Any) -> PlanFileError:
    with pytest.raises(PlanFileError) as error:
        read(value)
    return error.value


def raw(pieces: str, more: str = "") -> bytes:
    head = json.dumps(document())[:-2]
    return f"{head}{pieces}]{more}}}".encode()
