"""Which runs prove a wired junction: every wanted route, trains of all sizes, readers one after another.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product
from typing import Final

from msgspec import Struct

from model.dry_run import EMPTY, Load, Send
from model.routing.control import WantedRoute
from model.routing.junction import Junction
from model.routing.waybills import waybill_of

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

    @property
    def words(self) -> str:
        """``Quay called, 3 carts with gap 2``."""
        send, train = self.send, ""
        if len(send.loads) > 1:
            train = f", {len(send.loads)} carts with gap {send.gap}"
        if len(set(send.loads)) > 1:
            train += ", the first alone with the waybill"
        elif send.loads[0] != _load(self.waybill):
            train += ", with waybills for others"
        return f"{self.route.start} {'called' if self.route.called else 'idle'}{train}"


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
            return f"{first}, {len(self.drives)} times"
        return ", then ".join(drive.words for drive in self.drives)


def runs_of(junction: Junction) -> tuple[Run, ...]:
    """All runs that prove a junction, in the order in which they are made.

    On a fresh junction: each wanted route with one cart; each called one with all pairs of size and gap, the
    idle ones with all pairs between them; and what loads could mislead a reader. Then, without a pause for
    the junction: each reader after each, the idle routes after each, each reader several times, and every
    wanted route once more.
    """
    called = [route for route in junction.wanted if route.called]
    idle = [route for route in junction.wanted if not route.called]
    singles = [_drive(junction, route) for route in junction.wanted]
    fresh = [
        *singles,
        *(_drive(junction, route, *train) for route in called for block in BLOCKS for train in block),
        *(
            _drive(junction, route, *train)
            for at, route in enumerate(idle)
            for train in _share(at, len(idle))
        ),
        *_misleading(junction, called, idle),
    ]
    return (
        *(Run((drive,), is_fresh=True) for drive in fresh),
        *_one_after_another(junction, called, idle),
        *(Run((_drive(junction, route),) * REPEATS) for route in called),
        *(Run((drive,)) for drive in singles),
    )


def _share(at: int, among: int) -> Iterator[tuple[int, int]]:
    """The trains of one of several routes that share all pairs between them."""
    for number, block in enumerate(BLOCKS):
        if number % min(among, len(BLOCKS)) == at % len(BLOCKS):
            yield from block


def _one_after_another(
    junction: Junction, called: list[WantedRoute], idle: list[WantedRoute]
) -> Iterator[Run]:
    """The first is a train, another one from pair to pair."""
    trains = [train for block in BLOCKS for train in block]
    for number, (first, second) in enumerate(product(called, [*called, *idle])):
        train = trains[number % len(trains)]
        yield Run((_drive(junction, first, *train), _drive(junction, second)))


def _misleading(junction: Junction, called: list[WantedRoute], idle: list[WantedRoute]) -> Iterator[Drive]:
    """Carts with waybills that no reader of their arm takes, and a train that only its first cart calls."""
    for route in called:
        own = waybill_of(junction, route)
        yield Drive(route, Send(route.start, (_load(own), *(EMPTY,) * (SIZES[-1] - 1)), GAPS[-1]), own)
        yield Drive(route, Send(route.start, ((*_foreign(junction, own), *_load(own)),)), own)
    owns = {route.start: waybill_of(junction, route) for route in called}
    for route in idle:
        if route.start in owns:
            yield Drive(route, Send(route.start, (_foreign(junction, owns[route.start]),)), None)


def _foreign(junction: Junction, own: str | None) -> Load:
    """One waybill of every other name that a reader takes here, and one that none does."""
    names = dict.fromkeys(waybill_of(junction, route) for route in junction.wanted if route.called)
    others = [name for name in names if name is not None and name != own]
    return tuple((name, 1) for name in (*others, _unheard_of(names)))


def _unheard_of(names: dict[str | None, None]) -> str:
    name = "Elsewhere"
    while name in names:
        name += "-"
    return name


def _drive(junction: Junction, route: WantedRoute, size: int = 1, gap: int = 0) -> Drive:
    waybill = waybill_of(junction, route)
    return Drive(route, Send(route.start, (_load(waybill),) * size, gap), waybill)


def _load(waybill: str | None) -> Load:
    return EMPTY if waybill is None else ((waybill, IN_A_CART),)
