"""How the program lays out the JSON of its files: one thing a line, so that a diff shows one thing a line."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any, Final

import msgspec
from msgspec import Raw

from model.plan import Kept

_ENCODER: Final = msgspec.json.Encoder()


def document_bytes(members: Mapping[str, bytes], kept: Kept) -> bytes:
    """A whole file: the members that are not empty, then the unknown keys as they were."""
    members = {**members, **{key: text.encode() for key, text in kept}}
    lines = (_ENCODER.encode(key) + b": " + text for key, text in members.items() if text)
    return b"{\n  " + b",\n  ".join(lines) + b"\n}\n"


def one_a_line(values: Iterable[Any]) -> bytes:
    """A list with one value a line; nothing for an empty one. No JSON has a raw line break in a value."""
    lines = _ENCODER.encode_lines(list(values)).rstrip(b"\n")
    return b"[\n    " + lines.replace(b"\n", b",\n    ") + b"\n  ]" if lines else b""


def object_of(members: Mapping[str, Any], kept: Kept) -> dict[str, Any]:
    """The members that are there, then the unknown keys as they were."""
    known = {key: value for key, value in members.items() if value is not None}
    return known | {key: Raw(text.encode()) for key, text in kept}
