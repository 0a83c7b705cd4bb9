"""Files that would fill the memory are refused within a second, before memory is spent on them."""

from __future__ import annotations

import subprocess
import sys
import time
from pathlib import Path

import pytest

from model.files.limits import FILE_LIMIT, UNKNOWN_LIMIT, VALUE_LIMIT
from model.files.plan_file import PlanFileError, parse_plan, read_plan

ROOT = Path(__file__).parents[3]
HEAD = b'{"format":"platelayer-plan","version":1,"pieces":['
TAIL = b"]}"
SECONDS = 1.0
MEGABYTES = 300


def unknown(value: bytes) -> bytes:
    return HEAD + b'],"view":' + value + b"}"


SMALL_BOMBS: dict[str, bytes] = {
    f"{opening!r} {depth:,} deep, {where}": data
    for opening, closing in ((b"[", b"]"), (b'{"a":', b"}"))
    for depth in (65, 500, 990, 1_000, 5_000, 1_000_000)
    for where, data in (
        ("at the top", opening * depth + b"1" + closing * depth),
        ("never closed", opening * depth),
        ("unknown", unknown(opening * depth + b"1" + closing * depth)),
        ("as a piece", HEAD + opening * depth + b"1" + closing * depth + TAIL),
    )
} | {
    f"{name} {digits:,} long": unknown(data) if where else HEAD + data + TAIL
    for digits in (5_000, 1_000_000)
    for where in (False, True)
    for name, data in (
        (f"number{where}", b"9" * digits),
        (f"exponent{where}", b'{"part":"rail","at":[1e' + b"9" * digits + b",0,0]}" + b"}" * where),
        (f"fraction{where}", b'{"part":"rail","at":[0.1' + b"9" * digits + b",0,0]}" + b"}" * where),
    )
}


@pytest.mark.parametrize("data", SMALL_BOMBS.values(), ids=list(SMALL_BOMBS))
def test_depth_and_length_are_refused_at_once(data: bytes) -> None:
    _refused_at_once(data)


@pytest.mark.parametrize(
    ("key", "value", "place"),
    [
        ("title", '"' + "a" * 10_001 + '"', "title"),
        ("title", '"' + "a" * 20_000_000 + '"', "title"),
        ("sheet", '{"owner":"' + "a" * 10_001 + '"}', "sheet.owner"),
        ("arms", "[" + ",".join(['{"name":"Q","in":{"at":[0,0,0],"heading":"east"}}'] * 1_001) + "]", "arms"),
        ("routes", "[" + ",".join(f'{{"from":"{n}","idle":"Q"}}' for n in range(1_001)) + "]", "routes"),
        ("waivers", "[" + ",".join(['{"rule":"a"}'] * 100_001) + "]", "waivers"),
        ("waivers", '[{"rule":"a","arms":[' + ",".join(['"Q"'] * 1_001) + "]}]", "waivers[0].arms"),
        ("view", "[" + "0," * (UNKNOWN_LIMIT + 10) + "0]", "top level"),
        ("view", "[" + "[],{}," * (UNKNOWN_LIMIT // 2) + "0]", "top level"),
        ("view", "[" + "0," * VALUE_LIMIT + "0]", "top level"),
        ("pieces", "[" + "[]," * (VALUE_LIMIT // 3) + "0]", "pieces[0]"),
    ],
    ids=lambda value: value[:20],
)
def test_counts_and_texts_are_refused_at_once(key: str, value: str, place: str) -> None:
    head = '{"format":"platelayer-plan","version":1,' + ('"pieces":[],' if key != "pieces" else "")
    error = _refused_at_once(f'{head}"{key}":{value}}}'.encode())
    assert error.place == place


def test_two_million_and_one_pieces_are_refused_by_counting() -> None:
    error = _refused_at_once(HEAD + b'{"part":"rail","at":[0,0,0]},' * 2_000_000 + b'{"part":"rail"}' + TAIL)
    assert (error.place, error.expected) == ("pieces", "at most 2,000,000 pieces")


def test_a_file_over_the_limit_is_not_even_read_to_its_end(tmp_path) -> None:
    huge = tmp_path / "huge.plan.json"
    with open(huge, "wb") as stream:
        stream.truncate(FILE_LIMIT * 20)  # a hole: takes no room on the disk
    start = time.process_time()
    with pytest.raises(PlanFileError, match="at most 268,435,456 bytes"):
        read_plan(huge)
    assert time.process_time() - start < SECONDS


@pytest.mark.parametrize("kind", ["pieces", "depth", "unknown"])
def test_memory_stays_small(kind: str, tmp_path) -> None:
    """Measured in a process of its own: the most memory that it ever held."""
    bomb = tmp_path / "bomb.plan.json"
    bomb.write_bytes(
        {
            "pieces": HEAD + b'{"part":"rail","at":[0,0,0]},' * 2_000_001 + b"0" + TAIL,
            "depth": unknown(b"[" * 20_000_000),
            "unknown": unknown(b"[" + b"[]," * (UNKNOWN_LIMIT * 3) + b"0]"),
        }[kind]
    )
    script = (
        "import sys; from model.files.plan_file import read_plan, PlanFileError\n"
        "try: read_plan(sys.argv[1])\n"
        "except PlanFileError: print(*(line for line in open('/proc/self/status') if 'VmHWM' in line))"
    )
    done = subprocess.run(
        [sys.executable, "-c", script, str(bomb)], capture_output=True, text=True, cwd=ROOT, check=True
    )
    kilobytes = int(done.stdout.split()[1])
    assert kilobytes // 1024 < MEGABYTES


def _refused_at_once(data: bytes) -> PlanFileError:
    start = time.process_time()
    with pytest.raises(PlanFileError) as error:
        parse_plan(data, "bomb.plan.json")
    assert time.process_time() - start < SECONDS
    return error.value
