"""Files of runs that were made and what was seen of their carts: reading one."""

from __future__ import annotations

import os
from collections.abc import Iterator
from typing import Annotated, Final

import msgspec
from msgspec import Meta, Struct, ValidationError, field

from model.commissioning import STAYS, Commissioning, Observed, Run
from model.files.careful import careful_json
from model.files.decoding import place_and_missing
from model.files.document import Name
from model.files.errors import PlaceError, PlanFileError
from model.files.opening import bytes_of
from model.files.places import NAME, said_at
from model.wording import QT_TR_NOOP, tr

SIZE_LIMIT: Final = 16 * 1024 * 1024
"""Bytes in a file."""
RUN_LIMIT: Final = 10_000


class _RunDoc(Struct):
    start: Name = field(name="from")
    saw: Name
    waybill: Name | None = None


class _Doc(Struct):
    runs: Annotated[list[_RunDoc], Meta(max_length=RUN_LIMIT)]


_EXPECTED: Final[dict[str, str]] = {
    "": QT_TR_NOOP('an object with "runs"'),
    "runs": QT_TR_NOOP("a list of at most {runs:,} runs"),
    "runs[]": QT_TR_NOOP('an object with "from", "waybill" and "saw"'),
    "runs[].from": NAME,
    "runs[].waybill": QT_TR_NOOP(
        "null or a name of 1 to {name} characters without control characters, comma or slash"
    ),
    "runs[].saw": NAME,
}


def read_observed(path: str | os.PathLike[str], commissioning: Commissioning) -> tuple[Observed, ...]:
    """The runs in a file; see ``parse_observed``. Raises PlanFileError, also where it cannot be opened."""
    return parse_observed(bytes_of(path, SIZE_LIMIT), os.fspath(path), commissioning)


def parse_observed(data: bytes, name: str, commissioning: Commissioning) -> tuple[Observed, ...]:
    """The runs that the bytes of a file stand for; ``name`` is the file's, for messages.

    Each of them can be made in the junction. Keys that are not known are passed over. Raises PlanFileError.
    """
    try:
        return tuple(_observed(_document(data), commissioning))
    except PlaceError as fault:
        raise PlanFileError(name, fault.place, fault.expected) from None


def _document(data: bytes) -> _Doc:
    value = careful_json(data)
    try:
        return msgspec.convert(value, _Doc)
    except ValidationError as error:
        place, missing = place_and_missing(error)
        raise PlaceError(place, missing or said_at(place, _EXPECTED, {"runs": RUN_LIMIT})) from None


def _observed(document: _Doc, commissioning: Commissioning) -> Iterator[Observed]:
    """The runs; raises PlaceError for an arm that is not there."""
    outlets = {arm.name for arm in commissioning.junction.plan.arms if arm.leave is not None}
    for index, doc in enumerate(document.runs):
        run = Run(doc.start, doc.waybill)
        if not commissioning.can_send(run):
            expected = tr("an arm by which carts come in; {arm} is none", arm=doc.start)
            raise PlaceError(f"runs[{index}].from", expected)
        if doc.saw != STAYS and doc.saw not in outlets:
            expected = tr("an arm by which carts leave, or {stays}; {arm} is none", stays=STAYS, arm=doc.saw)
            raise PlaceError(f"runs[{index}].saw", expected)
        yield Observed(run, doc.saw)
