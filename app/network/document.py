"""The open network: one value, its undo stack, and its plan, worked out in the background."""

from __future__ import annotations

from collections.abc import Callable, Generator, Iterator, Mapping
from pathlib import Path
from typing import Concatenate, Final, NamedTuple, ParamSpec

from PySide6.QtCore import QObject, QTimer, Signal

from app.background import Newest
from app.network import files
from app.network.found import Found, found_in
from app.network.items import Item, Kind, name_of, nodes, spot_in, things, with_spots
from app.network.lit import calls_of
from app.network.picture import Picture
from app.network.placing import first_spots, in_rows
from app.opened import Opened
from app.translation import QT_TR_NOOP, tr
from model.edits import EditRefused
from model.network.changes import plan_changes
from model.network.network import EMPTY_NETWORK, Network, NetworkChange, Spot
from model.network.planning import plan_network
from model.network.result import NetworkPlan
from model.progress import Progress

BEGIN_AFTER_MS: Final = 20
"""From an edit until the background begins: the picture comes first."""
OLD_AFTER_MS: Final = 150
"""From an edit until what is not worked out anew by then is shown as old."""
PLACED_AT_ONCE: Final = 30
"""Nodes up to which the first picture does not have to wait for the background."""
Named = tuple[Kind, str]
Wish = ParamSpec("Wish")


class Placed(NamedTuple):
    """A network, and its picture with a place for every node."""

    network: Network
    guessed: dict[Named, Spot]
    """Where those stand that have no place in the file."""
    picture: Picture


class Loads(NamedTuple):
    """Carts a week at each reader (``Mill/East``)."""

    passing: dict[str, int | float]
    """By the default way."""
    calling: dict[str, int | float]
    """From which it takes a waybill."""


class _Planned(NamedTuple):
    plan: NetworkPlan
    findings: tuple[Found, ...]
    loads: Loads
    news: str
    is_last: bool
    """Whether no better plan is looked for any more."""


class NetworkDocument(Opened):
    """A network under edit. Its picture is always of now; its plan and findings follow, marked as old."""

    plan_updated = Signal()
    """The plan and the findings are new, or old for so long that it must be told."""
    picture_updated = Signal()
    placed_anew = Signal()
    """The background has found better places for all nodes."""
    progressed = Signal(object)
    """A Progress of the planning."""
    acted_at = Signal(object)
    """The items that an undo or redo changed."""
    acted_on = Signal(str)
    """``trips`` or ``pins``, where an undo or redo changed nothing on the map."""

    ending = files.ENDING
    untitled = QT_TR_NOOP("Untitled network")

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.network = EMPTY_NETWORK
        self.picture = Picture(EMPTY_NETWORK, {})
        self.plan: NetworkPlan | None = None
        self.plan_is_old = True
        self.planned: Network = EMPTY_NETWORK
        """The network that the plan is of."""
        self.findings: tuple[Found, ...] = ()
        self.loads = Loads({}, {})
        self.news = ""
        """What the newest plan changes for readers and travellers: "3 readers change"."""
        self.refusal = ""
        """Why an edit was refused last."""
        self._guessed: dict[Named, Spot] = {}
        """Where nodes stand that nobody has moved yet."""
        self._old_for_long = QTimer(self, singleShot=True, interval=OLD_AFTER_MS)
        self._old_for_long.timeout.connect(self._show_old)
        self._waiting: _Planned | None = None
        """A first plan that is shown when a better one does not follow at once."""
        self._begin = QTimer(self, singleShot=True, interval=BEGIN_AFTER_MS)
        self._begin.timeout.connect(self._begin_work)
        self._worker = Newest(self)
        self._worker.yielded.connect(self._settle)
        self._worker.failed.connect(self._give_up)
        self._placer = Newest(self)
        self._placer.yielded.connect(self._take_places)
        self._placer.failed.connect(self._give_up)

    @property
    def value(self) -> Network:
        """The network, as every document has a value."""
        return self.network

    @property
    def title(self) -> str:
        """The network's title."""
        return self.network.title

    @property
    def is_old_for_long(self) -> bool:
        """Whether what stands in the panels is to be shown as old: not for a moment only."""
        return self.plan_is_old and not self._old_for_long.isActive()

    @staticmethod
    def bytes_of(value: Network, path: Path | None) -> bytes:
        """The network file."""
        return files.to_bytes(value, path)

    def new(self) -> None:
        """Start with an empty network that has no file."""
        self.load(EMPTY_NETWORK, None)

    @staticmethod
    def made_ready(value: Network) -> Generator[Progress, None, Placed]:
        """The network with its first picture; its plan follows."""
        yield from ()
        return placed_first(value)

    def load_ready(self, ready: Placed, path: Path | None) -> None:
        """Open a network that is the same as its file."""
        self.network = self.planned = ready.network
        self._start_clean(path)
        self.plan = None
        self.findings = ()
        self.loads = Loads({}, {})
        self._place(ready)
        self.reset.emit()
        self.details_changed.emit()
        self._work_out()
        self.plan_updated.emit()

    def _become(self, ready: Placed) -> bool:
        """What stands where it stood before the file was read again, stays there."""
        self._guessed = ready.guessed | self._guessed
        return self.apply(NetworkChange(tr("Read the file again"), self.network, ready.network))

    def edit(
        self,
        function: Callable[Concatenate[Network, Wish], NetworkChange],
        *args: Wish.args,
        **kwargs: Wish.kwargs,
    ) -> bool:
        """Carry out an edit; say why not when it refuses. Whether it was carried out."""
        return self._edit(self.network, lambda network: function(network, *args, **kwargs))

    def edit_on_map(self, function: Callable[[Network], NetworkChange]) -> bool:
        """Carry out an edit that gives something a place: from then on the file says where all stands."""
        return self._edit(self.placed(), function)

    def _edit(self, network: Network, function: Callable[[Network], NetworkChange]) -> bool:
        try:
            change = function(network)
        except EditRefused as error:
            self.refusal = str(error)
            self.refused.emit(self.refusal)
            return False
        if not change.is_empty:
            self.apply(NetworkChange(change.label, self.network, change.after))
        return True

    def placed(self) -> Network:
        """The network with every node where it stands on the map now."""
        return with_spots(self.network, self.picture.spots)

    def take(self, change: NetworkChange) -> None:
        """Make a change the newest state (the undo command calls this)."""
        self._carry_places(change.after)
        self.network = change.after
        self._take_picture()
        self.changed.emit(change, None)
        if change.before.title != change.after.title:
            self.details_changed.emit()
        self._work_out()

    def show_where(self, change: NetworkChange) -> None:
        """Tell where an undo or redo acted: on the map, or else in which list."""
        items = touched(change.before, self.network) or touched(change.after, self.network)
        if items:
            self.acted_at.emit(items)
        elif change.before.trips != change.after.trips:
            self.acted_on.emit("trips")
        elif change.before.pins != change.after.pins or change.before.ways != change.after.ways:
            self.acted_on.emit("pins")

    def wait(self) -> None:
        """Wait until the background has worked out the plan; the results arrive with the next events."""
        if self._begin.isActive():
            self._begin_work()
        self._worker.finish()
        self._placer.finish()

    def close(self) -> None:
        """Ends what works on it beside the window."""
        self._begin.stop()
        self._old_for_long.stop()
        self._worker.stop()
        self._placer.stop()

    def _place(self, first: Placed) -> None:
        """Every node has its first place; better ones are looked for where there was no time for that."""
        network = first.network
        self._placer.drop()
        self._guessed = first.guessed
        self._show_picture(first.picture)
        if first.guessed and not is_small(network):
            self._placer.ask(lambda: _places(network))

    def _carry_places(self, after: Network) -> None:
        """A node that is only named otherwise stays where it stands."""
        before = self.network
        for item in nodes(after):
            alike = len(things(before, item.kind)) == len(things(after, item.kind))
            if alike and name_of(before, item) != (name := name_of(after, item)):
                self._guessed.setdefault((item.kind, name), self.picture.spots[item])

    def _take_picture(self) -> None:
        self._show_picture(Picture(self.network, spots_of(self.network, self._guessed)))

    def _show_picture(self, picture: Picture) -> None:
        self.picture = picture
        self.picture_updated.emit()

    def _work_out(self) -> None:
        self.plan_is_old = True
        self._waiting = None
        # What is there again in a moment need not be greyed: the picture of the edit comes first.
        self._old_for_long.start()
        self._worker.drop()
        self._begin.start()

    def _begin_work(self) -> None:
        self._begin.stop()
        network = self.network
        # By their new names readers and trips would be counted as gone and as new.
        before = None if is_renamed(self.planned, network) else self.plan
        self._worker.ask(lambda: _work(network, before))

    def _settle(self, result: object) -> None:
        if isinstance(result, Progress):
            self.progressed.emit(result)
        elif isinstance(result, _Planned):
            if result.is_last:
                self.plan_is_old = False
                self._old_for_long.stop()
                self._take_plan(result)
            elif self._old_for_long.isActive():
                self._waiting = result
            else:
                self._take_plan(result)

    def _take_plan(self, result: _Planned) -> None:
        self._waiting = None
        self.plan, self.findings, self.loads, self.news, _ = result
        self.planned = self.network
        self.plan_updated.emit()

    def _show_old(self) -> None:
        """What was to be there in a moment is not: show what there is, as old."""
        if self._waiting is not None:
            self._take_plan(self._waiting)
        else:
            self.plan_updated.emit()

    def _take_places(self, result: object) -> None:
        if isinstance(result, Placed):
            self._guessed |= result.guessed
            if result.network is self.network:
                self._show_picture(result.picture)
            else:
                self._take_picture()
            self.placed_anew.emit()

    def _give_up(self, error: object) -> None:
        """A mistake of the program in the background is handled like one in the foreground."""
        raise error if isinstance(error, Exception) else RuntimeError(str(error))


def is_small(network: Network) -> bool:
    """Whether places for all nodes are found at once."""
    return len(network.stations) + len(network.junctions) <= PLACED_AT_ONCE


def placed_first(network: Network) -> Placed:
    """Places as good as can be found at once."""
    if is_placed(network):
        return _placed(network, {})
    return _placed(network, (first_spots if is_small(network) else in_rows)(network))


def _placed(network: Network, spots: Mapping[Item, Spot]) -> Placed:
    guessed = {(item.kind, name_of(network, item)): spot for item, spot in spots.items()}
    return Placed(network, guessed, Picture(network, spots_of(network, guessed)))


def is_placed(network: Network) -> bool:
    """Whether the file says where every node stands."""
    return all(spot_in(network, item) is not None for item in nodes(network))


def is_renamed(before: Network, after: Network) -> bool:
    """Whether as many stations or junctions as before have other names."""
    return any(
        len(things(before, kind)) == len(things(after, kind))
        and any(name_of(before, item) != name_of(after, item) for item in nodes(after) if item.kind is kind)
        for kind in (Kind.STATION, Kind.JUNCTION)
    )


def spots_of(network: Network, guessed: Mapping[Named, Spot]) -> dict[Item, Spot]:
    """Where each node stands: where it was moved to, else where it was placed, else in the middle."""
    return {
        item: spot_in(network, item) or guessed.get((item.kind, name_of(network, item)), (0.0, 0.0))
        for item in nodes(network)
    }


def touched(before: Network, after: Network) -> frozenset[Item]:
    """What on the map is new or otherwise in the later network."""
    found = set()
    for kind in Kind:
        old = set(things(before, kind))
        found |= {Item(kind, at) for at, each in enumerate(things(after, kind)) if each not in old}
    return frozenset(found)


def loads_of(network: Network, plan: NetworkPlan) -> Loads:
    """How many carts pass each reader in a week, and how many call it."""
    loads = Loads({}, {})
    for trip, wanted in zip(plan.trips, network.trips, strict=True):
        calls = {call.reader for call in calls_of(network, plan, trip)}
        for key in trip.via:
            counted = loads.calling if key in calls else loads.passing
            counted[key] = counted.get(key, 0) + wanted.per_week
    return loads


def _places(network: Network) -> Iterator[object]:
    """Better places for all nodes of a large network, which takes seconds."""
    yield _placed(network, first_spots(network))


def _work(network: Network, before: NetworkPlan | None) -> Iterator[object]:
    """All that is worked out of a network, in steps between which it may be dropped."""
    last: _Planned | None = None
    for step in plan_network(network):
        if isinstance(step, NetworkPlan):
            news = plan_changes(before, step).label if before is not None else ""
            last = _Planned(step, found_in(network, step), loads_of(network, step), news, is_last=False)
            yield last
        else:
            yield step
    if last is not None:
        yield last._replace(is_last=True)
