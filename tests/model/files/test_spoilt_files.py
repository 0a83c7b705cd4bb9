"""Spoilt files of every kind: no uncaught exception, no hang, every message names file and place; and
whatever does load is written to a fixed point and keeps every invariant.
"""

from __future__ import annotations

import json
from random import Random
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.files.errors import PlanFileError
from model.files.plan_file import parse_plan
from tests.harness.readers import NAME, READERS, ROOT, Reader, keeps_promises, reads
from tests.model.files.bending import SPOILERS, places

FOUND = sorted(path for path in (ROOT / "tests" / "data" / "found").glob("*/*") if path.is_file())
"""Inputs that fuzzing brought to light, in a folder a reader. They stay for good."""
MAY_LOAD = {"wrong types", "bytes flipped", "cut"}
"""A file with a doubled key never loads, and tokens in any order make none."""
LEAST = {"script", "observation"}
"""They have no header: tokens such as ``{}`` may make one, and a key may stand twice in a cut."""


def test_each_reader_reads_what_is_spoilt_here() -> None:
    assert all(reads(reader, reader.good) for reader in READERS.values())


def spoil(name: str, kind: str, times: int) -> tuple[int, int]:
    """How many of the spoilt files loaded, and how many were refused."""
    random = Random(f"{name} {kind} {times}")
    loaded = sum(reads(READERS[name], SPOILERS[kind](READERS[name].good, random)) for _ in range(times))
    return loaded, times - loaded


@pytest.mark.parametrize("kind", SPOILERS)
@pytest.mark.parametrize("name", READERS)
def test_1_000_spoilt_files_of_a_kind(name: str, kind: str) -> None:
    loaded, refused = spoil(name, kind, 1_000)
    assert refused > 0
    if name not in LEAST:
        assert (loaded > 0) == (kind in MAY_LOAD)


@pytest.mark.slow
@pytest.mark.timeout(1_800)
@pytest.mark.parametrize("kind", SPOILERS)
@pytest.mark.parametrize("name", READERS)
def test_20_000_spoilt_files_of_a_kind(name: str, kind: str) -> None:
    _, refused = spoil(name, kind, 20_000)
    assert refused > 0


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=20),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=8), inner, max_size=4),
    max_leaves=12,
)


@st.composite
def filled(draw: st.DrawFn, good: bytes) -> Any:
    """The good file with any JSON value in one to three places."""
    value = json.loads(good)
    for _ in range(draw(st.integers(1, 3))):
        where = places(value)
        holder, key = where[draw(st.integers(0, len(where) - 1))] if where else ({}, "")
        holder[key] = draw(JSON)
    return value


def any_input(name: str) -> st.SearchStrategy[bytes]:
    bent = filled(READERS[name].good).map(lambda value: json.dumps(value).encode())
    return st.binary(max_size=200) | st.text(max_size=200).map(str.encode) | bent


@pytest.mark.parametrize("name", READERS)
@settings(max_examples=100, deadline=None)
@given(data=st.data())
def test_any_bytes_are_read_or_refused(name: str, data: st.DataObject) -> None:
    reads(READERS[name], data.draw(any_input(name)))


@pytest.mark.slow
@pytest.mark.timeout(1_800)
@pytest.mark.parametrize("name", READERS)
@settings(max_examples=10_000, deadline=None)
@given(data=st.data())
def test_any_bytes_are_read_or_refused_at_length(name: str, data: st.DataObject) -> None:
    reads(READERS[name], data.draw(any_input(name)))


@pytest.mark.parametrize("path", FOUND, ids=lambda path: f"{path.parent.name}/{path.name}")
def test_what_fuzzing_found_stays_mended(path: Any) -> None:
    reads(READERS[path.parent.name], path.read_bytes())


def test_there_is_no_folder_of_found_inputs_that_nobody_reads() -> None:
    assert {path.parent.name for path in FOUND} <= {*READERS}


def careless(data: bytes) -> Any:
    """Lets through what the bare decoder raises."""
    return parse_plan(json.dumps(json.loads(data)).encode(), NAME)


def speechless(data: bytes) -> Any:
    """Says nothing of where the mistake is."""
    try:
        return parse_plan(data, NAME)
    except PlanFileError as error:
        error.place = ""
        raise


def forgetful(data: bytes) -> Any:
    """Reads as a plan with an arm that leads nowhere what has no arms."""
    plan = parse_plan(data, NAME)
    return plan if not plan.arms else plan_without_ends(plan)


def plan_without_ends(plan: Any) -> Any:
    ends = tuple(arm.__class__(arm.name) for arm in plan.arms)
    return plan.__class__(plan.pieces, plan.details.replace(arms=ends))


@pytest.mark.parametrize("wrong", [careless, speechless, forgetful])
def test_a_careless_reader_is_caught(wrong: Any) -> None:
    """Controls that must fail."""
    with pytest.raises((AssertionError, ValueError)):
        read_many(Reader(READERS["plan"].good, wrong, keeps_promises))


def read_many(reader: Reader) -> None:
    random = Random(1)
    for _ in range(200):
        for spoiler in SPOILERS.values():
            reads(reader, spoiler(reader.good, random))


def test_a_reader_that_takes_the_last_of_two_keys_is_caught() -> None:
    """The control of the doubled keys: some of them load."""
    reader = Reader(
        READERS["plan"].good,
        lambda data: parse_plan(json.dumps(json.loads(data)).encode(), NAME),
        keeps_promises,
    )
    random, loaded = Random(2), 0
    for _ in range(300):
        spoilt = SPOILERS["doubled keys"](reader.good, random)
        try:
            json.loads(spoilt)
        except ValueError:
            continue
        loaded += reads(reader, spoilt)
    assert loaded > 0
