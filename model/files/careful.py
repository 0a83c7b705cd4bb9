"""JSON read with care: a key that comes twice, a half character and too deep a nesting are found,
and each number keeps the text in which it was written.
"""

from __future__ import annotations

import json
import re
from collections import Counter
from typing import Any, Final, NoReturn

import msgspec

from model.files.errors import PlaceError
from model.files.limits import DEPTH_LIMIT
from model.wording import tr

_SURROGATE: Final = re.compile(r"\\u[dD][89a-fA-F]")
"""How half of a surrogate pair can be written; a pair, too."""
_STRING_OR_REFUSED: Final = re.compile(r'"(?:[^"\\]|\\.)*"|(?P<number>NaN|-?Infinity|\d{4301,})')
_EXACT: Final = 2**53
"""Up to here a float that is whole says exactly which number it is."""


class WrittenInt(int):
    """A whole number that was written with a point or an exponent."""

    text: str


class WrittenFloat(float):
    """A number with the text in which it was written."""

    text: str


class _Doubled(dict[str, Any]):
    """An object in which a key comes twice."""

    key: str


def careful_json(data: bytes) -> Any:
    """The value that UTF-8 JSON stands for. Raises PlaceError where strict JSON is broken."""
    text = _text(data)
    doubled: list[_Doubled] = []
    try:
        value = json.loads(
            text,
            object_pairs_hook=lambda pairs: _object(pairs, doubled),
            parse_float=_number,
            parse_constant=_no_such_number,
        )
    except json.JSONDecodeError as error:
        place = _line_and_column(error.lineno, error.colno)
        raise PlaceError(place, tr("JSON ({reason})", reason=tr(error.msg))) from None
    except RecursionError:
        raise _too_deep("") from None
    except ValueError:
        raise _refused_number(text) from None
    if doubled or _SURROGATE.search(text):
        _look_through(value, "")
    return value


def json_text(value: Any, place: str, depth: int = 0) -> str:
    """A value of `careful_json` as JSON without spaces, each number as it was written.

    Raises PlaceError, naming ``place``, where it is nested too deep.
    """
    if depth > DEPTH_LIMIT:
        raise _too_deep(place)
    if isinstance(value, dict):
        members = (f"{_scalar(key)}:{json_text(item, place, depth + 1)}" for key, item in value.items())
        return "{" + ",".join(members) + "}"
    if isinstance(value, list):
        return "[" + ",".join(json_text(item, place, depth + 1) for item in value) + "]"
    return _scalar(value)


def _scalar(value: Any) -> str:
    if isinstance(value, WrittenInt | WrittenFloat):
        return value.text
    if isinstance(value, int) and not isinstance(value, bool):
        return str(value)  # msgspec writes no more than 64 bits
    return msgspec.json.encode(value).decode()


def _text(data: bytes) -> str:
    if data.startswith(b"\xef\xbb\xbf"):
        expected = tr("UTF-8 without a byte order mark; save it again without one")
        raise PlaceError(_line_and_column(1, 1), expected)
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        place = tr("line {line}, byte {byte}", line=line, byte=error.start)
        raise PlaceError(place, "UTF-8") from None


def _object(pairs: list[tuple[str, Any]], doubled: list[_Doubled]) -> dict[str, Any]:
    members = dict(pairs)
    if len(members) == len(pairs):
        return members
    marked = _Doubled(members)
    marked.key = Counter(key for key, _ in pairs).most_common(1)[0][0]
    doubled.append(marked)
    return marked


def _number(text: str) -> WrittenInt | WrittenFloat:
    """JSON Schema counts 1.0 as a whole number, and so does the reader."""
    number = float(text)
    whole = number.is_integer() and abs(number) <= _EXACT
    written = WrittenInt(number) if whole else WrittenFloat(number)
    written.text = text
    return written


def _no_such_number(word: str) -> NoReturn:
    raise ValueError(word)


def _refused_number(text: str) -> PlaceError:
    """The first number outside strings that JSON does not have, or that is longer than Python reads."""
    found = next(match for match in _STRING_OR_REFUSED.finditer(text) if match["number"])
    line = text.count("\n", 0, found.start()) + 1
    column = found.start() - text.rfind("\n", 0, found.start())
    expected = (
        tr("a number of at most 4,300 digits")
        if found["number"][0].isdigit()
        else tr("JSON, which has no {number}", number=found["number"])
    )
    return PlaceError(_line_and_column(line, column), expected)


def _look_through(value: Any, place: str) -> None:
    """Refuse the first doubled key, or half character, with its place."""
    if isinstance(value, str):
        _check_characters(value, place)
    elif isinstance(value, list):
        for index, item in enumerate(value):
            _look_through(item, f"{place}[{index}]")
    elif isinstance(value, dict):
        if isinstance(value, _Doubled):
            raise PlaceError(below(place, value.key), tr("each key once; this one is doubled"))
        for key, item in value.items():
            _check_characters(key, place)
            _look_through(item, below(place, key))


def _check_characters(text: str, place: str) -> None:
    """Half of a surrogate pair is no character, and UTF-8 cannot hold it."""
    if any("\ud800" <= character <= "\udfff" for character in text):
        raise PlaceError(place, tr("whole characters; there is half of a surrogate pair"))


def _line_and_column(line: int, column: int) -> str:
    return tr("line {line}, column {column}", line=line, column=column)


def _too_deep(place: str) -> PlaceError:
    return PlaceError(place, tr("at most {limit} lists and objects inside one another", limit=DEPTH_LIMIT))


def below(place: str, key: str) -> str:
    """The place of a key in the object at ``place``."""
    return f"{place}.{key}" if place else key
