"""The keys that this version does not know: found at every level of a document, and kept as text."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any, NamedTuple

from msgspec import Struct

from model.files.careful import below, json_text
from model.plan import Kept

ObjectsBelow = Mapping[type[Struct], Mapping[str, type[Struct]]]
"""By form: the keys under which further objects, or lists of them, stand."""


def unknown_keys(value: dict[str, Any], form: type[Struct], objects: ObjectsBelow) -> dict[str, Kept]:
    """By place (``pieces[3]``; empty for the whole): the unknown keys of the objects of a valid document."""
    kept: dict[str, Kept] = {}
    _Collector(objects, kept).collect(value, form, "")
    return kept


class _Collector(NamedTuple):
    objects: ObjectsBelow
    kept: dict[str, Kept]

    def collect(self, value: dict[str, Any], form: type[Struct], place: str) -> None:
        known = _known(form)
        if not value.keys() <= known:
            self.kept[place] = tuple(
                (key, json_text(item, below(place, key))) for key, item in value.items() if key not in known
            )
        for key, inner in self.objects.get(form, {}).items():
            if key in value:
                self._collect_below(value[key], inner, below(place, key))

    def _collect_below(self, value: Any, form: type[Struct], place: str) -> None:
        if isinstance(value, dict):
            self.collect(value, form, place)
        else:
            for index, entry in enumerate(value):
                self.collect(entry, form, f"{place}[{index}]")


@cache
def _known(form: type[Struct]) -> frozenset[str]:
    return frozenset(form.__struct_encode_fields__)
