"""Scripts of dry runs: reading one."""

from __future__ import annotations

import os
from typing import Annotated, Final

import msgspec
from msgspec import Meta, Struct, ValidationError

from model.dry_run import Event, Fill, Lever, Load, Press, Script, Send, Timed
from model.files.careful import careful_json
from model.files.decoding import place_and_missing
from model.files.document import COUNT_LIMIT, HeldDoc, Name
from model.files.errors import PlaceError, PlanFileError
from model.files.opening import bytes_of
from model.files.places import CELL, COUNT, HELD, HOLDS, ITEM, NAME, TRUTH, said_at
from model.files.reading import what_slots_hold
from model.grid import Cell
from model.parts import STACK, TRAITS
from model.pieces import Held, slots_needed
from model.plan import NAME_LIMIT, Plan
from model.signals.items import CART_SLOTS
from model.wording import QT_TR_NOOP, tr

SIZE_LIMIT: Final = 16 * 1024 * 1024
"""Bytes in a file."""
EVENT_LIMIT: Final = 10_000
PROBE_LIMIT: Final = 10_000
CART_LIMIT: Final = 1_000
"""Carts in a train."""
CARTS_LIMIT: Final = 100_000
"""Carts in all trains together."""
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


_COUNT: Final = QT_TR_NOOP("a whole number from 0 to {count:,}")
_WAYBILLS: Final = QT_TR_NOOP(
    "an object of waybills, each with a whole number from 0 to {count:,}; "
    "or a list of such objects, one a cart"
)
_EXPECTED: Final[dict[str, str]] = {
    "": QT_TR_NOOP('an object with "events" and "probes"'),
    "probes": QT_TR_NOOP("a list of at most {probes:,} cells"),
    "probes[]": CELL,
    "probes[][]": CELL,
    "events": QT_TR_NOOP("a list of at most {events:,} events"),
    "events[]": QT_TR_NOOP('an object with "tick" and "do"'),
    "events[].do": QT_TR_NOOP("send, lever, button or fill"),
    "events[].tick": QT_TR_NOOP("a whole number from 0 to {ticks:,}"),
    "events[].arm": NAME,
    "events[].carts": QT_TR_NOOP("a whole number from 1 to {carts:,}"),
    "events[].gap": QT_TR_NOOP("a whole number from 0 to {gap:,}"),
    "events[].waybills": _WAYBILLS,
    "events[].waybills[]": _WAYBILLS,
    "events[].waybills[...]": _COUNT,
    "events[].waybills[][...]": _COUNT,
    "events[].at": CELL,
    "events[].at[]": CELL,
    "events[].on": TRUTH,
    "events[].holds": HOLDS,
    "events[].holds[]": HELD,
    "events[].holds[].item": ITEM,
    "events[].holds[].count": COUNT,
}
_LIMITS: Final[dict[str, object]] = {
    "probes": PROBE_LIMIT,
    "events": EVENT_LIMIT,
    "ticks": TICK_HIGHEST,
    "carts": CART_LIMIT,
    "gap": GAP_LIMIT,
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
        _check_carts(document)
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
        raise PlaceError(place, missing or said_at(place, _EXPECTED, _LIMITS)) from None


def _check_carts(document: _Doc) -> None:
    """Few bytes can send very many carts. Raises PlaceError, before there is any."""
    if sum(doc.carts for doc in document.events if isinstance(doc, _SendDoc)) > CARTS_LIMIT:
        raise PlaceError("events", tr("at most {limit:,} carts in all trains together", limit=CARTS_LIMIT))


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
        raise PlaceError(f"{place}.holds", what_slots_hold(slots))
    return Fill(doc.at, holds)


def _loads(doc: _SendDoc, place: str) -> tuple[Load, ...]:
    """The waybills of each cart."""
    if isinstance(doc.waybills, dict):
        return (_load(doc.waybills, place),) * doc.carts
    if len(doc.waybills) != doc.carts:
        raise PlaceError(place, tr("one entry a cart; the train has %n cart(s)", "", doc.carts))
    return tuple(_load(waybills, f"{place}[{index}]") for index, waybills in enumerate(doc.waybills))


def _load(waybills: _Waybills, place: str) -> Load:
    for name in waybills:
        try:
            msgspec.convert(name, Name)
        except ValidationError:
            expected = tr(
                "waybills, each a name of 1 to {name} characters without control characters, comma or slash",
                name=NAME_LIMIT,
            )
            raise PlaceError(place, expected) from None
    if sum(-(-count // STACK) for count in waybills.values()) > CART_SLOTS:
        raise PlaceError(place, tr("what the {slots} slots of a cart can hold", slots=CART_SLOTS))
    return tuple(waybills.items())
