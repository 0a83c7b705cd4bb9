"""Scripts of dry runs: reading one."""

from __future__ import annotations

import os
import re
from typing import Annotated, Final

import msgspec
from msgspec import Meta, Struct, ValidationError

from model.dry_run import Event, Fill, Lever, Load, Press, Script, Send, Timed
from model.edits.words import counted
from model.files.careful import careful_json
from model.files.decoding import place_and_missing
from model.files.document import COUNT_LIMIT, HeldDoc, Name
from model.files.errors import PlaceError, PlanFileError
from model.files.opening import bytes_of
from model.grid import XZ_LIMIT, Y_HIGHEST, Y_LOWEST, Cell
from model.parts import STACK, TRAITS
from model.pieces import Held, slots_needed
from model.plan import NAME_LIMIT, Plan
from model.signals.items import CART_SLOTS

SIZE_LIMIT: Final = 16 * 1024 * 1024
"""Bytes in a file."""
EVENT_LIMIT: Final = 10_000
PROBE_LIMIT: Final = 10_000
CART_LIMIT: Final = 1_000
"""Carts in a train."""
GAP_LIMIT: Final = 1_000
"""Free cells between two carts."""
TICK_HIGHEST: Final = 1_000_000

_Waybills = dict[str, Annotated[int, Meta(ge=0, le=COUNT_LIMIT)]]


class _EventDoc(Struct, tag_field="do", kw_only=True):
    tick: Annotated[int, Meta(ge=0, le=TICK_HIGHEST)]


class _SendDoc(_EventDoc, tag="send", kw_only=True):
    arm: Name
    carts: Annotated[int, Meta(ge=1, le=CART_LIMIT)] = 1
    gap: Annotated[int, Meta(ge=0, le=GAP_LIMIT)] = 1
    waybills: _Waybills | list[_Waybills] = {}


class _LeverDoc(_EventDoc, tag="lever", kw_only=True):
    at: Cell
    on: bool


class _ButtonDoc(_EventDoc, tag="button", kw_only=True):
    at: Cell


class _FillDoc(_EventDoc, tag="fill", kw_only=True):
    at: Cell
    holds: tuple[HeldDoc, ...]


class _Doc(Struct):
    events: Annotated[list[_SendDoc | _LeverDoc | _ButtonDoc | _FillDoc], Meta(max_length=EVENT_LIMIT)] = []
    probes: Annotated[list[Cell], Meta(max_length=PROBE_LIMIT)] = []


_NAME: Final = f"a name of 1 to {NAME_LIMIT} characters without control characters, comma or slash"
_CELL: Final = (
    f"three whole numbers [x, y, z], x and z from {-XZ_LIMIT:,} to {XZ_LIMIT:,}, "
    f"y from {Y_LOWEST:,} to {Y_HIGHEST:,}"
)
_COUNT: Final = f"a whole number from 0 to {COUNT_LIMIT:,}"
_WAYBILLS: Final = f"an object of waybills, each with {_COUNT}; or a list of such objects, one a cart"
_EXPECTED: Final[dict[str, str]] = {
    "": 'an object with "events" and "probes"',
    "probes": f"a list of at most {PROBE_LIMIT:,} cells",
    "probes[]": _CELL,
    "probes[][]": _CELL,
    "events": f"a list of at most {EVENT_LIMIT:,} events",
    "events[]": 'an object with "tick" and "do"',
    "events[].do": "send, lever, button or fill",
    "events[].tick": f"a whole number from 0 to {TICK_HIGHEST:,}",
    "events[].arm": _NAME,
    "events[].carts": f"a whole number from 1 to {CART_LIMIT:,}",
    "events[].gap": f"a whole number from 0 to {GAP_LIMIT:,}",
    "events[].waybills": _WAYBILLS,
    "events[].waybills[]": _WAYBILLS,
    "events[].waybills[...]": _COUNT,
    "events[].waybills[][...]": _COUNT,
    "events[].at": _CELL,
    "events[].at[]": _CELL,
    "events[].on": "true or false",
    "events[].holds": "a list of what the slots hold",
    "events[].holds[]": 'an object with "item" and "count"',
    "events[].holds[].item": f"waybill: and {_NAME}; or another word without control characters",
    "events[].holds[].count": f"a whole number from 1 to {COUNT_LIMIT:,}",
}


def read_script(path: str | os.PathLike[str], plan: Plan) -> Script:
    """The script in a file; see ``parse_script``. Raises PlanFileError, also where it cannot be opened."""
    return parse_script(bytes_of(path, SIZE_LIMIT), os.fspath(path), plan)


def parse_script(data: bytes, name: str, plan: Plan) -> Script:
    """The script that the bytes of a file stand for; ``name`` is the file's, for messages.

    Whether the plan has what the events name is not looked at; what a container is filled with fits in it.
    Keys that are not known are passed over. Raises PlanFileError.
    """
    try:
        document = _document(data)
        events = tuple(_timed(doc, f"events[{i}]", plan) for i, doc in enumerate(document.events))
    except PlaceError as fault:
        raise PlanFileError(name, fault.place, fault.expected) from None
    return Script(events, tuple(document.probes))


def _document(data: bytes) -> _Doc:
    value = careful_json(data)
    try:
        return msgspec.convert(value, _Doc)
    except ValidationError as error:
        place, missing = place_and_missing(error)
        raise PlaceError(place, missing or _EXPECTED[re.sub(r"\[\d+\]", "[]", place)]) from None


def _timed(doc: _EventDoc, place: str, plan: Plan) -> Timed:
    return Timed(doc.tick, _event(doc, place, plan))


def _event(doc: _EventDoc, place: str, plan: Plan) -> Event:
    """The event; raises PlaceError where what one key says does not fit what another says."""
    if isinstance(doc, _SendDoc):
        return Send(doc.arm, _loads(doc, f"{place}.waybills"), doc.gap)
    if isinstance(doc, _LeverDoc):
        return Lever(doc.at, doc.on)
    if isinstance(doc, _ButtonDoc):
        return Press(doc.at)
    assert isinstance(doc, _FillDoc)
    holds = tuple(Held(held.item, held.count) for held in doc.holds)
    part = plan.pieces.part_at(doc.at)
    slots = 0 if part is None else TRAITS[part].slots
    if slots and slots_needed(holds) > slots:
        raise PlaceError(f"{place}.holds", f"what {slots} slots can hold")
    return Fill(doc.at, holds)


def _loads(doc: _SendDoc, place: str) -> tuple[Load, ...]:
    """The waybills of each cart."""
    if isinstance(doc.waybills, dict):
        return (_load(doc.waybills, place),) * doc.carts
    if len(doc.waybills) != doc.carts:
        raise PlaceError(place, f"one entry a cart; the train has {counted(doc.carts, 'cart')}")
    return tuple(_load(waybills, f"{place}[{index}]") for index, waybills in enumerate(doc.waybills))


def _load(waybills: _Waybills, place: str) -> Load:
    for name in waybills:
        try:
            msgspec.convert(name, Name)
        except ValidationError:
            raise PlaceError(place, f"waybills, each {_NAME}") from None
    if sum(-(-count // STACK) for count in waybills.values()) > CART_SLOTS:
        raise PlaceError(place, f"what the {CART_SLOTS} slots of a cart can hold")
    return tuple(waybills.items())
