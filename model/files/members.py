"""How the program lays out the JSON of its files: one thing a line, so that a diff shows one thing a line."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Final

import msgspec
from msgspec import Raw

from model.pauses import pause
from model.plan import Kept

AT_ONCE: Final = 2_000
"""Lines made without a pause; well under a millisecond."""
_ENCODER: Final = msgspec.json.Encoder()


def document_bytes(members: Mapping[str, bytes], kept: Kept) -> bytes:
    """A whole file: the members that are not empty, then the unknown keys as they were."""
    present = {**members, **{key: text.encode() for key, text in kept}}
    # Joined once, as a large plan takes longer to copy than to encode.
    parts = [b"{"]
    for key, text in present.items():
        if text:
            parts += (b"\n  ", _ENCODER.encode(key), b": ", text, b",")
    return b"".join((*parts[:-1], b"\n}\n"))


def one_a_line(values: Sequence[Any]) -> bytes:
    """A list with one value a line; nothing for an empty one. No JSON has a raw line break in a value."""
    if not values:
        return b""
    parts = [b"[\n    "]
    for start in range(0, len(values), AT_ONCE):
        lines = _ENCODER.encode_lines(values[start : start + AT_ONCE])
        parts.append(lines.replace(b"\n", b",\n    "))
        pause()
    # The last line ends without a comma.
    parts[-1] = parts[-1].removesuffix(b",\n    ")
    return b"".join((*parts, b"\n  ]"))


def object_of(members: Mapping[str, Any], kept: Kept) -> dict[str, Any]:
    """The members that are there, then the unknown keys as they were."""
    known = {key: value for key, value in members.items() if value is not None}
    return known | {key: Raw(text.encode()) for key, text in kept}
