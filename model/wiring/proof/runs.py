"""Which runs prove a wired junction: every wanted route, trains of all sizes, readers one after another.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from itertools import cycle, product
from typing import Final

from msgspec import Struct

from model.dry_run import EMPTY, Load, Send
from model.routing.control import WantedRoute
from model.routing.junction import Junction
from model.routing.waybills import waybill_of
from model.wiring.proof.ways import meets_itself, waybills_on, waybills_taken
from model.wording import tr

SIZES: Final = (2, 3, 4, 5)
"""Carts in a train."""
GAPS: Final = (0, 1, 2, 3)
"""Free cells between two carts of a train."""
BLOCKS: Final = tuple(
    tuple((size, GAPS[(index + turn) % len(GAPS)]) for index, size in enumerate(SIZES)) for turn in GAPS
)
"""All pairs of size and gap, in blocks of which each has every size and every gap once."""
IN_A_CART: Final = 2
"""Waybills that call: one is for the reader, and a reader that takes another one shows."""
REPEATS: Final = 6
"""Calls of one reader, one after another: one that gains or loses an item each time shows."""


class Drive(Struct, frozen=True):
    """A train on a wanted route."""

    route: WantedRoute
    send: Send
    waybill: str | None
    """What calls the route; ``None`` on an idle one."""
    takers: int
    """Readers that may take it: more than one where other arms are on the way, and read the same one; none
    where a called cart goes the way of an idle one, and no reader is on it."""

    @property
    def words(self) -> str:
        """``Quay called, 3 carts with gap 2``."""
        send, arm = self.send, self.route.start
        said = [tr("{arm} called", arm=arm) if self.route.called else tr("{arm} idle", arm=arm)]
        if len(send.loads) > 1:
            said.append(tr("%n cart(s) with gap {gap}", "", len(send.loads), gap=send.gap))
        if len(set(send.loads)) > 1:
            said.append(tr("the first alone with the waybill"))
        elif send.loads[0] != _load(self.waybill):
            said.append(tr("with waybills for others"))
        return ", ".join(said)


class Run(Struct, frozen=True):
    """Trains one after another, each sent as soon as the one before has left everything at rest."""

    drives: tuple[Drive, ...]
    is_fresh: bool = False
    """Whether it begins with a junction on which no cart has run yet."""

    @property
    def words(self) -> str:
        """All its trains in words, those that are the same told once."""
        first = self.drives[0].words
        if len(self.drives) > 2:
            return tr("{train}, {count} times", train=first, count=len(self.drives))
        if len(self.drives) == 1:
            return first
        return tr("{first}, then {second}", first=first, second=self.drives[1].words)


def runs_of(junction: Junction) -> tuple[Run, ...]:
    """All runs that prove a junction, in the order in which they are made.

    On a fresh junction: each wanted route with one cart; each called one with all pairs of size and gap, the
    idle ones with all pairs between them; and what loads could mislead a reader. Then, without a pause for
    the junction: each reader after each, the idle routes after each, each reader several times, and every
    wanted route once more. Left out are trains whose carts would run into each other, whatever the wiring,
    since their way comes to a cell twice; and waybills for readers that are on the way all the same.
    """
    return tuple(_Runs(junction).all())


class _Runs:
    def __init__(self, junction: Junction) -> None:
        self._wanted = junction.wanted
        self._called = [route for route in junction.wanted if route.called]
        self._idle = [route for route in junction.wanted if not route.called]
        self._readers = {route.start: waybill_of(junction, route) for route in self._called}
        self._paths = {route: way.path for route, way in junction.ways.items()}
        self._thrown = junction.choice.thrown
        self._taken = waybills_taken(junction.plan)

    def all(self) -> Iterator[Run]:
        singles = [self._drive(route) for route in self._wanted]
        for drive in (*singles, *self._trains(), *self._misleading()):
            yield Run((drive,), is_fresh=True)
        yield from self._one_after_another()
        yield from (Run((self._drive(route),) * REPEATS) for route in self._called)
        yield from (Run((drive,)) for drive in singles)

    def _trains(self) -> Iterator[Drive]:
        for route in self._called:
            yield from self._those(route, (train for block in BLOCKS for train in block))
        for at, route in enumerate(self._idle):
            yield from self._those(route, _share(at, len(self._idle)))

    def _those(self, route: WantedRoute, trains: Iterable[tuple[int, int]]) -> Iterator[Drive]:
        return (self._drive(route, *train) for train in trains if self._runs_clear(route, *train))

    def _runs_clear(self, route: WantedRoute, size: int, gap: int) -> bool:
        return not meets_itself(self._paths.get(route, ()), size, gap)

    def _one_after_another(self) -> Iterator[Run]:
        """The first is a train, another one from pair to pair."""
        trains = cycle(train for block in BLOCKS for train in block)
        for first, second in product(self._called, [*self._called, *self._idle]):
            yield Run((next(self._those(first, trains)), self._drive(second)))

    def _misleading(self) -> Iterator[Drive]:
        """Waybills that no reader on the way takes, and a train that only its first cart calls."""
        for route in self._called:
            own, size = self._load(route), SIZES[-1]
            for gap in [gap for gap in GAPS[::-1] if self._runs_clear(route, size, gap)][:1]:
                yield self._sent(route, (own, *(EMPTY,) * (size - 1)), gap)
            yield self._sent(route, ((*self._foreign(route), *own),))
        for route in self._idle:
            if route.start in self._readers:
                yield self._sent(route, (self._foreign(route),))

    def _foreign(self, route: WantedRoute) -> Load:
        """One waybill of every name that is read here, though not on the way, and one that is not read."""
        read = {self._readers.get(route.start), *self._on_the_way(route)}
        others = dict.fromkeys(name for name in self._readers.values() if name and name not in read)
        return tuple((name, 1) for name in (*others, _unheard_of(self._readers.values())))

    def _on_the_way(self, route: WantedRoute) -> list[str]:
        return waybills_on(self._paths.get(route, ()), self._taken)

    def _drive(self, route: WantedRoute, size: int = 1, gap: int = 0) -> Drive:
        return self._sent(route, (self._load(route),) * size, gap)

    def _sent(self, route: WantedRoute, loads: tuple[Load, ...], gap: int = 0) -> Drive:
        waybill = self._readers[route.start] if route.called else None
        takers = 0
        if waybill is not None:
            needed = 1 if self._thrown.get(route.start) else 0
            takers = max(needed, self._on_the_way(route).count(waybill))
        return Drive(route, Send(route.start, loads, gap), waybill, takers)

    def _load(self, route: WantedRoute) -> Load:
        return _load(self._readers[route.start] if route.called else None)


def _share(at: int, among: int) -> Iterator[tuple[int, int]]:
    """The trains of one of several routes that share all pairs between them."""
    for number, block in enumerate(BLOCKS):
        if number % min(among, len(BLOCKS)) == at % len(BLOCKS):
            yield from block


def _unheard_of(names: Collection[str | None]) -> str:
    name = "Elsewhere"
    while name in names:
        name += "-"
    return name


def _load(waybill: str | None) -> Load:
    return EMPTY if waybill is None else ((waybill, IN_A_CART),)
