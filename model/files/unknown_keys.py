"""The keys that this version does not know: found at every level of a document, and kept as text."""

from __future__ import annotations

from typing import Any, Final

from msgspec import Struct

from model.files.careful import below, json_text
from model.files.document import (
    OBJECTS_BELOW,
    ArmDoc,
    EndDoc,
    HeldDoc,
    PieceDoc,
    PlanDoc,
    RouteDoc,
    SheetDoc,
    WaiverDoc,
)
from model.plan import Kept

_KNOWN: Final[dict[type[Struct], frozenset[str]]] = {
    form: frozenset(form.__struct_encode_fields__)
    for form in (PlanDoc, PieceDoc, HeldDoc, ArmDoc, EndDoc, RouteDoc, WaiverDoc, SheetDoc)
}


def unknown_keys(value: dict[str, Any]) -> dict[str, Kept]:
    """By place (``pieces[3]``; empty for the plan itself): the unknown keys of a valid document's objects."""
    kept: dict[str, Kept] = {}
    _collect(value, PlanDoc, "", kept)
    return kept


def _collect(value: dict[str, Any], form: type[Struct], place: str, kept: dict[str, Kept]) -> None:
    known = _KNOWN[form]
    if not value.keys() <= known:
        kept[place] = tuple(
            (key, json_text(item, below(place, key))) for key, item in value.items() if key not in known
        )
    for key, inner in OBJECTS_BELOW.get(form, {}).items():
        if key in value:
            _collect_below(value[key], inner, below(place, key), kept)


def _collect_below(value: Any, form: type[Struct], place: str, kept: dict[str, Kept]) -> None:
    if isinstance(value, dict):
        _collect(value, form, place, kept)
    else:
        for index, entry in enumerate(value):
            _collect(entry, form, f"{place}[{index}]", kept)
