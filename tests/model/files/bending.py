"""Ways of spoiling a plan file, each drawn from a random generator that the test seeds."""

from __future__ import annotations

import copy
import json
from collections.abc import Callable
from random import Random
from typing import Any, Final

ODD_VALUES: Final[list[Any]] = [
    None, True, False, 0, 1, -1, 2, 1.0, 2.0, 0.5, 10**30, -1025, 1024, 10_000_001, "", "up", "north", "down",
    "rail", "Quay", "a,b", "a/b", "\n", "Q" * 81, [], {}, [0], [0, 0, 0], [0, 64, 0], [1.0, 64, 0],
    [[0, 64, 0]], {"at": [0, 64, 0]}, {"item": "ingot", "count": 1}, {"part": "rail", "at": [9, 9, 9]},
]  # fmt: skip
ODD_KEYS: Final = [
    "delay",
    "facing",
    "holds",
    "wooden",
    "mode",
    "at",
    "in",
    "out",
    "called",
    "colour",
    "version",
]


def places(value: Any) -> list[tuple[Any, Any]]:
    """Every (container, key) in a JSON value."""
    found: list[tuple[Any, Any]] = []
    keys = list(value) if isinstance(value, dict) else range(len(value)) if isinstance(value, list) else ()
    for key in keys:
        found.append((value, key))
        found += places(value[key])
    return found


def bent(value: Any, random: Random) -> Any:
    """A copy with one to three members replaced, added, doubled as a list entry or taken away."""
    value = copy.deepcopy(value)
    for _ in range(random.randint(1, 3)):
        holder, key = random.choice(places(value) or [({}, "")])
        match random.randrange(5):
            case 0 | 1:
                holder[key] = copy.deepcopy(random.choice(ODD_VALUES))
            case 2 if isinstance(holder, dict):
                holder[random.choice(ODD_KEYS)] = copy.deepcopy(random.choice(ODD_VALUES))
            case 3 if isinstance(holder, list):
                holder.append(copy.deepcopy(holder[key]))
            case _ if key in holder or isinstance(holder, list):
                del holder[key]
    return value


def wrong_types(data: bytes, random: Random) -> bytes:
    """Members that are something else than they were."""
    return json.dumps(bent(json.loads(data), random), ensure_ascii=random.random() < 0.5).encode()


def flipped(data: bytes, random: Random) -> bytes:
    """Up to eight bytes replaced."""
    spoilt = bytearray(data)
    for _ in range(random.randint(1, 8)):
        spoilt[random.randrange(len(spoilt))] = random.randrange(256)
    return bytes(spoilt)


def cut(data: bytes, random: Random) -> bytes:
    """A stretch of it, or all but a stretch."""
    start, end = sorted((random.randrange(len(data) + 1), random.randrange(len(data) + 1)))
    return data[start:end] if random.random() < 0.3 else data[:start] + data[end:]


def doubled(data: bytes, random: Random) -> bytes:
    """A key that comes twice, with one value or with two."""
    keys = [index for index in range(len(data)) if data[index : index + 1] in (b"{", b",")]
    at = random.choice(keys) + 1
    key, _, rest = data[at:].lstrip(b" {[\n").partition(b":")
    value = rest.split(b",")[0].rstrip(b"}] \n") or b"0"
    value = random.choice([value, b'":"', b'"\\u003a"', b"null"])
    return data[:at] + key + b":" + value + b"," + data[at:]


def grammar_made(data: bytes, random: Random) -> bytes:
    """JSON tokens in any order, now and then rightly nested; nothing of the file is left."""
    tokens = [
        '{', '}', '[', ']', ',', ':', '"pieces"', '"part"', '"rail"', '"at"', '"format"', '"platelayer-plan"',
        '"version"', '1', '0', '-', '1e9', '"\\ud800"', '"\\u003a"', 'NaN', 'true', 'null', ' ', '\n',
        '"', '\\',
        '{"format":"platelayer-plan","version":1,"pieces":[', '{"part":"rail","at":[0,64,0]}', ']}',
    ]  # fmt: skip
    return "".join(random.choices(tokens, k=random.randint(1, 30))).encode()


SPOILERS: Final[dict[str, Callable[[bytes, Random], bytes]]] = {
    "wrong types": wrong_types,
    "bytes flipped": flipped,
    "cut": cut,
    "doubled keys": doubled,
    "made of tokens": grammar_made,
}
