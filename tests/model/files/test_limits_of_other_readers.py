"""Networks, scripts, observations and what is on the clipboard: what fills the memory is refused at once.

Plans have a file of their own for this.
"""

from __future__ import annotations

import json
import subprocess
import sys
import time

import pytest

from model.dry_run import Script
from model.files.errors import PlanFileError
from model.files.script_file import parse_script
from model.plan import EMPTY_PLAN
from tests.harness.readers import READERS, ROOT, reads

SECONDS = 1.0
MEGABYTES = 300
DEEP = 200_000
HEADS = {
    "network": b'{"format":"platelayer-network","version":1,',
    "script": b"{",
    "observation": b"{",
    "clipboard": b'{"format":"platelayer-plan","version":1,"pieces":[],',
}
KEYS = {"network": "stations", "script": "events", "observation": "runs", "clipboard": "arms"}
BOMBS = {
    "deep lists": lambda key: b'"%b":' % key + b"[" * DEEP,
    "deep objects": lambda key: b'"%b":' % key + b'{"a":' * DEEP,
    "deep under an unknown key": lambda _: b'"view":' + b"[" * DEEP + b"]" * DEEP + b"}",
    "many entries": lambda key: b'"%b":[' % key + b"{}," * 1_500_000 + b"{}]}",
    "many unknown values": lambda _: b'"view":[' + b"0," * 3_000_000 + b"0]}",
    "a long number": lambda key: b'"%b":[' % key + b"9" * 1_000_000 + b"]}",
    "a long exponent": lambda key: b'"%b":[1e' % key + b"9" * 1_000_000 + b"]}",
    "a long text": lambda key: b'"%b":"' % key + b"a" * 20_000_000 + b'"}',
}


def bomb(reader: str, kind: str) -> bytes:
    return HEADS[reader] + BOMBS[kind](KEYS[reader].encode())


@pytest.mark.parametrize("kind", BOMBS)
@pytest.mark.parametrize("reader", HEADS)
def test_a_bomb_is_refused_at_once(reader: str, kind: str) -> None:
    """A second of processor time, so that a busy machine proves nothing."""
    data = bomb(reader, kind)
    start = time.process_time()
    if kind != "many unknown values":  # few enough for some readers
        assert not reads(READERS[reader], data)
    else:
        reads(READERS[reader], data)
    assert time.process_time() - start < SECONDS


def test_a_script_of_few_bytes_cannot_send_millions_of_carts() -> None:
    send = {"tick": 0, "do": "send", "arm": "Quay", "carts": 1_000}
    with pytest.raises(PlanFileError, match=r"events: expected at most 100,000 carts in all trains together"):
        parse(json.dumps({"events": [send] * 101}).encode())
    assert len(parse(json.dumps({"events": [send] * 100}).encode()).events) == 100


def parse(data: bytes) -> Script:
    return parse_script(data, "script.json", EMPTY_PLAN)


SCRIPT = """
import sys
from tests.harness.readers import READERS, reads
from tests.model.files.test_limits_of_other_readers import BOMBS, bomb
for kind in BOMBS:
    reads(READERS[sys.argv[1]], bomb(sys.argv[1], kind))
print(*(line for line in open("/proc/self/status") if "VmHWM" in line))
"""


@pytest.mark.parametrize("reader", HEADS)
def test_memory_stays_small(reader: str) -> None:
    """In a process of its own: the most that it ever held, with the bombs themselves in it."""
    done = subprocess.run(
        [sys.executable, "-c", SCRIPT, reader], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert int(done.stdout.split()[1]) // 1024 < MEGABYTES


def test_a_reader_that_takes_all_of_it_first_is_seen() -> None:
    """The control that must fail: the bare decoder, whose values need many times the bytes of the file."""
    script = "import json; v = json.loads('[' + '{},' * 6_000_000 + '0]')\n"
    script += "print(*(line for line in open('/proc/self/status') if 'VmHWM' in line))"
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert int(done.stdout.split()[1]) // 1024 > MEGABYTES
    with pytest.raises(RecursionError):
        json.loads("[" * DEEP)
