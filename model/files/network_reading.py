"""From a document to a network: the defaults, and the rules that hang on two values at once."""

from __future__ import annotations

from collections.abc import Hashable, Iterable
from typing import Any, Final, TypeVar

from msgspec import UNSET, UnsetType

from model.files.careful import json_text
from model.files.decoding import KeptByPlace
from model.files.errors import PlaceError
from model.files.network_document import (
    JunctionDoc,
    LinkDoc,
    NetworkDoc,
    NetworkWaiverDoc,
    PinDoc,
    ReaderDoc,
    StationDoc,
    TripDoc,
    WayDoc,
)
from model.files.reading import any_of
from model.network.network import (
    JunctionSpec,
    Link,
    Network,
    NetworkWaiver,
    ReaderPin,
    ReaderSpec,
    Spot,
    Station,
    Trip,
    WayPin,
)
from model.plan import Kept
from model.wording import QT_TR_NOOP, tr

T = TypeVar("T")

BESIDE_A_PLAN: Final = ("readers", "running_side")
"""Keys of a junction that mean nothing beside a plan; they are kept."""


def network_of_document(document: NetworkDoc, kept: KeptByPlace, value: dict[str, Any]) -> Network:
    """The network that a document stands for, without what its plan files say. Raises PlaceError.

    ``value``: the JSON of which the document was made.
    """
    _check_each_once(
        "pins", [pin.reader for pin in document.pins], QT_TR_NOOP("one pin a reader; {other} is for the same")
    )
    _check_each_once(
        "ways",
        [(way.start, way.end) for way in document.ways],
        QT_TR_NOOP("one way for two stations; {other} is for the same"),
    )
    return Network(
        title=document.title,
        stations=tuple(_station(doc, kept.get(at, ())) for at, doc in _placed("stations", document.stations)),
        junctions=tuple(
            _junction(doc, at, kept, raw)
            for (at, doc), raw in zip(
                _placed("junctions", document.junctions), value.get("junctions", ()), strict=True
            )
        ),
        links=tuple(_link(doc, kept.get(at, ())) for at, doc in _placed("links", document.links)),
        trips=tuple(_trip(doc, kept.get(at, ())) for at, doc in _placed("trips", document.trips)),
        pins=tuple(_pin(doc, kept.get(at, ())) for at, doc in _placed("pins", document.pins)),
        ways=tuple(_way(doc, kept.get(at, ())) for at, doc in _placed("ways", document.ways)),
        waivers=tuple(_waiver(doc, kept.get(at, ())) for at, doc in _placed("waivers", document.waivers)),
        kept=kept.get("", ()),
    )


def _station(doc: StationDoc, kept: Kept) -> Station:
    return Station(doc.name, _given(doc.map), kept)


def _junction(doc: JunctionDoc, place: str, kept: KeptByPlace, raw: dict[str, Any]) -> JunctionSpec:
    readers = () if doc.readers is UNSET else doc.readers
    _check_each_once(
        f"{place}.readers",
        [reader.start for reader in readers],
        QT_TR_NOOP("one reader an arm; {other} is for the same"),
        ".from",
    )
    checked = tuple(
        _reader(reader, at, kept.get(at, ())) for at, reader in _placed(f"{place}.readers", readers)
    )
    spot: Spot | None = _given(doc.map)
    if doc.plan is UNSET:
        side = None if doc.running_side is UNSET else doc.running_side
        return JunctionSpec(doc.name, None, checked, (), side, spot, kept.get(place, ()))
    beside = tuple((key, json_text(raw[key], f"{place}.{key}")) for key in BESIDE_A_PLAN if key in raw)
    return JunctionSpec(doc.name, doc.plan, at=spot, kept=kept.get(place, ()) + beside)


def _reader(doc: ReaderDoc, place: str, kept: Kept) -> ReaderSpec:
    if len(set(doc.ways)) < len(doc.ways):
        raise PlaceError(f"{place}.ways", tr("two arms, not one arm twice"))
    if doc.default is not None and doc.default not in doc.ways:
        expected = tr("null or one of the ways, {ways}", ways=any_of(doc.ways))
        raise PlaceError(f"{place}.default", expected)
    return ReaderSpec(doc.start, doc.ways, doc.default, kept=kept)


def _link(doc: LinkDoc, kept: Kept) -> Link:
    return Link(doc.start, doc.end, doc.length, kept)


def _trip(doc: TripDoc, kept: Kept) -> Trip:
    return Trip(doc.start, doc.end, _plain(doc.per_week), kept)


def _pin(doc: PinDoc, kept: Kept) -> ReaderPin:
    return ReaderPin(doc.reader, _given(doc.default), _given(doc.name), kept)


def _way(doc: WayDoc, kept: Kept) -> WayPin:
    return WayPin(doc.start, doc.end, doc.via, kept)


def _waiver(doc: NetworkWaiverDoc, kept: Kept) -> NetworkWaiver:
    return NetworkWaiver(doc.rule, doc.names, doc.reason, kept)


def _placed(place: str, docs: Iterable[T]) -> Iterable[tuple[str, T]]:
    return ((f"{place}[{index}]", doc) for index, doc in enumerate(docs))


def _given(value: T | UnsetType) -> T | None:
    return None if isinstance(value, UnsetType) else value


def _plain(number: float) -> int | float:
    """A whole number as one, however it was written."""
    return int(number) if float(number).is_integer() else float(number)


def _check_each_once(place: str, keys: Iterable[Hashable], expected: str, below: str = "") -> None:
    """``expected`` is looked up, and told of the ``{other}`` that was there before."""
    first: dict[Hashable, int] = {}
    for index, key in enumerate(keys):
        earlier = first.setdefault(key, index)
        if earlier != index:
            raise PlaceError(f"{place}[{index}]{below}", tr(expected, other=f"{place}[{earlier}]"))
