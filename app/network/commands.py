"""What the actions and the gestures on the map do to the network; each is one undo step."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, Final

from msgspec import structs
from PySide6.QtWidgets import QWidget

from app.background import CancelledError, at_once
from app.commands.files import plan_in
from app.dialogs.asking import asking
from app.dialogs.details import LinesDialog
from app.network.dialogs import LinkDialog, TripDialog
from app.network.document import NetworkDocument, is_small
from app.network.items import Item, Kind, in_units, name_of
from app.network.junction_dialog import JunctionDialog
from app.network.numbers import without_marks
from app.network.placing import first_spots
from app.network.way_dialog import WayDialog
from app.network.ways import ways_offered
from app.translation import from_to, tr
from model.files.network_file import with_plans_there
from model.network import edits
from model.network.network import (
    LENGTH_LIMIT,
    JunctionSpec,
    Link,
    Network,
    NetworkChange,
    ReaderPin,
    Spot,
    WayPin,
)

if TYPE_CHECKING:
    from collections.abc import Generator, Mapping

    from app.network.dialogs import LinkAnswer

LONGEST_NUMBER: Final = 18
"""Digits of a length that are looked at; Python reads no number of some thousands."""


class NetworkCommands:
    """The edits that ask for something first, and those that the map asks for."""

    def __init__(self, parent: QWidget, document: NetworkDocument) -> None:
        self._parent = parent
        self._document = document

    def title(self) -> None:
        """Ask for the title."""
        document = self._document
        lines = {"title": (tr("Title"), document.network.title)}
        with asking(
            LinesDialog(
                self._parent, tr("Title"), tr("The name of the network, here and on the cards."), lines
            )
        ) as dialog:
            if dialog.exec():
                document.edit(edits.set_title, dialog.texts["title"])

    def add_node(self, kind: Kind, at: Spot) -> None:
        """Ask for a new station or junction at a crossing of the grid."""
        if kind is Kind.STATION:
            name = self._ask_name(tr("Station"), self._free_name(tr("Station"), kind))
            if name is not None:
                self._document.edit_on_map(lambda network: edits.add_station(network, name, in_units(at)))
            return
        taken = JunctionSpec(self._free_name(tr("Junction"), kind), at=in_units(at))
        with asking(JunctionDialog(self._parent, taken, self._document, is_new=True)) as dialog:
            while dialog.exec():
                made = dialog.junction
                if made is None:
                    continue
                if self._document.edit_on_map(partial(_with_junction, made)):
                    return
                dialog.tell(self._document.refusal)

    def add_link(self, start: Item, end: Item) -> None:
        """Ask for the arms and the length of a link between two nodes."""
        with asking(LinkDialog(self._parent, self._document, start, end)) as dialog:
            while dialog.exec():
                if self._document.edit_on_map(partial(_linked, dialog.answer)):
                    return
                dialog.tell(self._document.refusal)

    def add_trip(self, start: Item | None = None, end: Item | None = None) -> None:
        """Ask for a trip; from and to may be known already."""
        network = self._document.network
        if len(network.stations) < 2:
            self._document.refused.emit(tr("A trip takes two stations."))
            return
        names = [name_of(network, item) if item is not None else "" for item in (start, end)]
        with asking(TripDialog(self._parent, network, *names)) as dialog:
            while dialog.exec():
                trip = dialog.answer
                if trip.start == trip.end:
                    dialog.tell(tr("A trip runs from one station to another."))
                elif self._document.edit(edits.add_trip, trip):
                    return
                else:
                    dialog.tell(self._document.refusal)

    def change(self, item: Item) -> None:
        """Ask for what can be said of a thing."""
        network = self._document.network
        if item.kind is Kind.STATION:
            name = self._ask_name(tr("Station"), name_of(network, item))
            if name is not None and name != name_of(network, item):
                self._document.edit(edits.rename_station, item.place, name)
        elif item.kind is Kind.JUNCTION:
            self._change_junction(item.place)
        else:
            self._change_link(item.place)

    def remove(self, items: frozenset[Item]) -> None:
        """Take things away, with all that ends there."""
        by_kind = {kind: [item.place for item in items if item.kind is kind] for kind in Kind}
        self._document.edit(edits.remove, by_kind[Kind.STATION], by_kind[Kind.JUNCTION], by_kind[Kind.LINK])

    def move(self, spots: Mapping[Item, Spot]) -> None:
        """Put nodes elsewhere."""
        at = {item: in_units(spot) for item, spot in spots.items()}
        stations = {item.place: spot for item, spot in at.items() if item.kind is Kind.STATION}
        junctions = {item.place: spot for item, spot in at.items() if item.kind is Kind.JUNCTION}
        self._document.edit_on_map(lambda network: edits.move(network, stations, junctions))

    def place_anew(self) -> None:
        """Find a place for every node; of a large network that is waited for, and can be cancelled."""
        document, network = self._document, self._document.network
        if not (network.stations or network.junctions):
            return

        def work() -> Generator[None, None, dict[Item, Spot]]:
            yield
            return first_spots(network)

        try:
            spots = (at_once if is_small(network) else document.beside)(tr("Placing all anew…"), work)
        except CancelledError:
            document.refused.emit(tr("Cancelled: all stands where it stood."))
            return
        if document.network is network:
            self.move(spots)

    def pin_way(self, trip: int) -> None:
        """Ask which way of several a trip is to take."""
        network = self._document.network
        wanted = network.trips[trip]
        offers = ways_offered(network, wanted.start, wanted.end)
        if not offers:
            self._document.refused.emit(tr("No way leads there, so none can be pinned."))
            return
        with asking(WayDialog(self._parent, from_to(wanted.start, wanted.end), offers)) as dialog:
            if dialog.exec():
                self._document.edit(edits.pin_way, WayPin(wanted.start, wanted.end, dialog.via))

    def pin_names(self) -> None:
        """Pin the names of all readers as the plan has them now, as one step."""
        document, plan = self._document, self._document.plan
        if plan is None or document.plan_is_old:
            document.refused.emit(tr("The plan is still being worked out."))
            return
        if all(planned.name is None for planned in plan.readers.values()):
            document.refused.emit(tr("No reader is called, so none has a name."))
            return
        change = NetworkChange(tr("Pin all names"), document.network, document.network)
        for key, planned in plan.readers.items():
            pins = {pin.reader: pin for pin in change.after.pins}
            if planned.name is not None:
                pin = structs.replace(pins.get(key, ReaderPin(key)), name=planned.name)
                change = structs.replace(change, after=edits.pin_reader(change.after, pin).after)
        if change.is_empty:
            document.refused.emit(tr("Every name is pinned already."))
        document.apply(change)

    def read_plans(self) -> None:
        """Take over what the plan files of the junctions say now."""
        network = self._document.network
        if not any(junction.plan for junction in network.junctions):
            self._document.refused.emit(tr("No junction of this network has a plan."))
            return
        read = with_plans_there(network, "", plan_in)
        if read == network:
            self._document.refused.emit(tr("The plans say what they said before."))
        self._document.apply(NetworkChange(tr("Read plans again"), network, read))
        for junction in read.junctions:
            if junction.unread:
                said = tr(
                    "The plan of {junction} was not read: {why}.", junction=junction.name, why=junction.unread
                )
                self._document.refused.emit(said)
                break

    def _change_junction(self, place: int) -> None:
        before = self._document.network.junctions[place]
        with asking(JunctionDialog(self._parent, before, self._document, is_new=False)) as dialog:
            while dialog.exec():
                made = dialog.junction
                if made is None:
                    continue
                if self._document.edit(_changed_junction, place, made):
                    return
                dialog.tell(self._document.refusal)

    def _change_link(self, place: int) -> None:
        link = self._document.network.links[place]
        lines = {
            "length": (tr("Cells from {start} to {end}", start=link.start, end=link.end), str(link.length))
        }
        question = tr("How long the track is, in cells.")
        with asking(LinesDialog(self._parent, tr("Link"), question, lines)) as dialog:
            if dialog.exec():
                text = without_marks(dialog.texts["length"])
                if not text.isdecimal() or len(text) > LONGEST_NUMBER:
                    self._document.refused.emit(
                        tr(
                            "A length is a whole number of cells, from 1 to {limit:,}.",
                            limit=LENGTH_LIMIT,
                        )
                    )
                else:
                    self._document.edit(edits.set_link, place, structs.replace(link, length=int(text)))

    def _ask_name(self, what: str, name: str) -> str | None:
        with asking(
            LinesDialog(
                self._parent,
                what,
                tr("The name of the {what}.", what=what.lower()),
                {"name": (tr("Name"), name)},
            )
        ) as dialog:
            return dialog.texts["name"] if dialog.exec() else None

    def _free_name(self, word: str, kind: Kind) -> str:
        network = self._document.network
        taken = {each.name for each in (network.stations if kind is Kind.STATION else network.junctions)}
        return next(name for number in range(1, len(taken) + 2) if (name := f"{word} {number}") not in taken)


def _with_junction(junction: JunctionSpec, network: Network) -> NetworkChange:
    return edits.add_junction(network, junction)


def _linked(answer: LinkAnswer, network: Network) -> NetworkChange:
    """One link, or one each way."""
    there = Link(answer.start, answer.end, answer.length)
    back = Link(answer.end, answer.start, answer.length)
    change = edits.add_links(network, (there, back) if answer.both_ways else (there,))
    label = (
        tr("Add links {start} ⇄ {end}", start=answer.start, end=answer.end)
        if answer.both_ways
        else change.label
    )
    return structs.replace(change, label=label)


def _changed_junction(network: Network, place: int, made: JunctionSpec) -> NetworkChange:
    """Another name and other readers, as one step."""
    before = network.junctions[place]
    change = edits.set_junction(network, place, made)
    if made.name == before.name:
        return change
    renamed = edits.rename_junction(change.after, place, made.name)
    label = renamed.label if change.is_empty else change.label
    return NetworkChange(label, network, renamed.after)
