"""From bytes to a document: first the quick way, and the careful way wherever the quick one may not do."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

import msgspec
from msgspec import DecodeError, ValidationError

from model.files.document import FORMAT, OBJECTS_BELOW, VERSION, Header, PlanDoc
from model.files.errors import PlaceError
from model.files.expected import expected_at
from model.files.limits import UNKNOWN_LIMIT, check_size, values_in
from model.plan import Kept
from model.wording import QT_TR_NOOP, tr

_QUICK: Final = msgspec.json.Decoder(PlanDoc)
_HEADER: Final = msgspec.json.Decoder(Header)
_ENCODER: Final = msgspec.json.Encoder()
_MISSING: Final = re.compile("missing required field `(.*?)`")

OF_ANOTHER_KIND: Final[dict[str, str]] = {
    FORMAT: QT_TR_NOOP(
        '"{form}"; this is a plan file: "platelayer check" reads it, '
        "and the editor opens it under a name that ends in .plan.json"
    ),
    "platelayer-network": QT_TR_NOOP(
        '"{form}"; this is a network file: "platelayer network" reads it, '
        "and the editor opens it under a name that ends in .network.json"
    ),
}
"""By format, what is said of a file of that kind where one of another kind was expected."""
WHOLE_FLOAT: Final = "Expected `int`, got `float`"
"""Said of 1.0 too, which JSON Schema counts as a whole number."""
_ESCAPED_COLON: Final = b"\\u003"

KeptByPlace = Mapping[str, Kept]
"""By place (``pieces[3]``): the keys there that this version does not know."""


def decode(data: bytes) -> tuple[PlanDoc, KeptByPlace]:
    """The document, and the unknown keys in it. Raises PlaceError."""
    check_size(data)
    try:
        check_header(_HEADER.decode(data), FORMAT)
        document = _QUICK.decode(data)
    except ValidationError as error:
        if WHOLE_FLOAT not in str(error):
            raise _fault(error) from None
    except (DecodeError, UnicodeDecodeError, RecursionError):
        pass  # the careful way says where and why
    else:
        if _is_all_of(data, document):
            return document, {}
    return _decode_carefully(data)


def _decode_carefully(data: bytes) -> tuple[PlanDoc, KeptByPlace]:
    # Few files take this way, and what it needs would delay the start of every command.
    from model.files.careful import careful_json
    from model.files.unknown_keys import unknown_keys

    value = careful_json(data)
    try:
        return msgspec.convert(value, PlanDoc), unknown_keys(value, PlanDoc, OBJECTS_BELOW)
    except ValidationError as error:
        raise _fault(error) from None


def _is_all_of(data: bytes, document: PlanDoc) -> bool:
    """Whether the text says no more than the document. Raises PlaceError where it says far too much.

    A key that is unknown, or comes twice, is lost in quick decoding, and its colon with it: what was
    understood, written again, then has fewer colons. Only a colon that is written as an escape breaks
    the count.
    """
    again = _ENCODER.encode(document)
    if data.count(b":") == again.count(b":") and _ESCAPED_COLON not in data:
        return True
    if values_in(data) - values_in(again) > UNKNOWN_LIMIT:
        raise PlaceError("", at_most_unknown())
    return False


def at_most_unknown() -> str:
    """What is expected where a file says far too much beside what is known."""
    return tr("at most {limit:,} values under keys of its own", limit=UNKNOWN_LIMIT)


def check_header(header: Header, form: str) -> None:
    """Name another kind of file, and a newer version, before all that they may have otherwise.

    Raises PlaceError.
    """
    version = header.version
    if header.format != form and isinstance(header.format, str) and header.format in OF_ANOTHER_KIND:
        raise PlaceError("format", tr(OF_ANOTHER_KIND[header.format], form=form))
    if header.format == form and isinstance(version, int | float) and version > VERSION:
        expected = tr(
            "{known}; version {version} was written by a newer Platelayer", known=VERSION, version=version
        )
        raise PlaceError("version", expected)


def place_and_missing(error: ValidationError) -> tuple[str, str | None]:
    """Where a document is not valid, and which key is missing there, if one is.

    msgspec's message ends in the place: ``… - at `$.pieces[3].at```.
    """
    said, _, path = str(error).partition(" - at `$")
    missing = _MISSING.search(said)
    return path.rstrip("`").lstrip("."), missing and tr('the key "{key}"', key=missing[1])


def _fault(error: ValidationError) -> PlaceError:
    place, missing = place_and_missing(error)
    return PlaceError(place, missing or expected_at(place))
