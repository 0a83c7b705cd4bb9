"""What lies under the pointer on the map, in words."""

from __future__ import annotations

from app.network.document import NetworkDocument
from app.network.items import Item, thing
from app.network.times import figure, time_words
from app.panels.words import number
from app.translation import tr
from model.network.network import JunctionSpec, Link, Spot


def place_words(spot: Spot) -> str:
    """``x 4, y −2``: squares of the map."""
    return f"x {number(int(spot[0]))}, y {number(int(spot[1]))}"


def here_words(document: NetworkDocument, item: Item | None) -> str:
    """A station, a junction with its readers, a link with its length and time."""
    if item is None:
        return tr("nothing here")
    found = thing(document.network, item)
    if isinstance(found, Link):
        return tr(
            "link {start} → {end}, {length} cells, {time}",
            start=found.start,
            end=found.end,
            length=figure(found.length),
            time=time_words(found.length),
        )
    if isinstance(found, JunctionSpec):
        readers = sum(reader.chooses for reader in found.readers)
        origin = tr("by its plan") if found.plan else tr("by its readers")
        return tr(
            "junction {name}, {readers}, {origin}",
            name=found.name,
            readers=tr("%n reader(s)", "", readers),
            origin=origin,
        )
    return tr("station {name}", name=found.name)
