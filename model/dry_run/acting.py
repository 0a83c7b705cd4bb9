"""One tick of hoppers and auto-crafters, worked out before it is done, so that other orders can be tried."""

from __future__ import annotations

import heapq
from collections.abc import Callable, Container, Iterable, Mapping
from typing import Final

from model.dry_run.boxes import Actor, Box
from model.signals.crafter import craft
from model.signals.items import Slots, kinds_in, one_less, without_item
from model.signals.timing import HOPPER_REST

Place = tuple[int, int, int]
"""Where an actor comes in a tick: hoppers first (0), then crafts (1), each in file order; then what comes
behind that (1).
"""
CRAFTS: Final = 1
CartAbove = Callable[[Actor], "Box | None"]


def place_of(actor: Actor) -> Place:
    """Where it comes where nothing else is tried."""
    return (CRAFTS if actor.crafts else 0, actor.rank, 0)


def other_way_round(one: Actor, other: Actor) -> dict[Actor, Place]:
    """Two that change places; where one is a hopper and the other crafts, the hopper comes behind the craft.

    So all crafts that are due still look before any gives.
    """
    if one.crafts == other.crafts:
        return {one: place_of(other), other: place_of(one)}
    hopper, crafter = (other, one) if one.crafts else (one, other)
    return {hopper: (CRAFTS, crafter.rank, 1)}


class Acts:
    """What the actors of a tick do: the content of boxes and the rest of hoppers afterwards."""

    def __init__(
        self, now: int, cart_above: CartAbove, elsewhere: Mapping[Actor, Place] | None = None
    ) -> None:
        self.now = now
        self.content: dict[Box, Slots] = {}
        self.ready: dict[Actor, int] = {}
        self.ran: dict[Actor, None] = {}
        """Who had its turn."""
        self._cart_above = cart_above
        self._elsewhere = elsewhere or {}
        self._queue: list[tuple[Place, Actor]] = []
        self._queued: set[Actor] = set()
        self._made: dict[Actor, tuple[str, int] | None] = {}

    def run(self, actors: Iterable[Actor]) -> None:
        """Hoppers that may act, and crafts that are due; others that they wake come in, too."""
        for actor in actors:
            self._push(actor)
        while self._queue:
            place, actor = heapq.heappop(self._queue)
            self.ran[actor] = None
            if not actor.crafts:
                self._hop(actor, place)
            else:
                self._all_craft(actor)
                self._give_made(actor, place)

    def result(self) -> tuple[dict[Box, Slots], dict[Actor, int]]:
        """What differs afterwards from before."""
        return {box: slots for box, slots in self.content.items() if slots != box.slots}, self.ready

    def ends_as(self, other: Acts, filled: Container[Box]) -> bool:
        """Whether the tick ends alike; what is in boxes that are filled anew in this tick does not count."""
        boxes = [box for box in {**self.content, **other.content} if box not in filled]
        return self.ready == other.ready and all(self.slots(box) == other.slots(box) for box in boxes)

    def slots(self, box: Box) -> Slots:
        """The content of a box so far."""
        return self.content.get(box, box.slots)

    def _push(self, actor: Actor) -> None:
        if actor not in self._queued:
            self._queued.add(actor)
            heapq.heappush(self._queue, (self._place(actor), actor))

    def _place(self, actor: Actor) -> Place:
        return self._elsewhere.get(actor) or place_of(actor)

    def _hop(self, hopper: Actor, place: Place) -> None:
        """A hopper gives its first item, then takes the first item that fits."""
        gave = self._give(hopper)
        source = hopper.above or self._cart_above(hopper)
        took = source is not None and self._take(hopper, source)
        if not (gave or took):
            return
        self.ready[hopper] = self.now + HOPPER_REST
        for box in (hopper.own, *((hopper.gives_to,) if gave else ()), *((source,) if took else ())):
            assert box is not None
            self._wake(box, place)

    def _wake(self, box: Box, place: Place) -> None:
        """Who works at a box that changed, and comes later in this tick, looks at it."""
        for actor in box.users:
            if not actor.crafts and may_act(actor, self.now) and self._place(actor) > place:
                self._push(actor)

    def _give(self, hopper: Actor) -> bool:
        target, own = hopper.gives_to, self.slots(hopper.own)
        index = next((index for index, slot in enumerate(own) if slot), None)
        if target is None or index is None:
            return False
        slot = own[index]
        assert slot is not None
        filled = target.with_item(self.slots(target), slot[0])
        if filled is None:
            return False
        self.content[hopper.own] = one_less(own, index)
        self.content[target] = filled
        return True

    def _take(self, hopper: Actor, source: Box) -> bool:
        content, own = self.slots(source), self.slots(hopper.own)
        for item in dict.fromkeys(kinds_in(content)):
            filled = hopper.own.with_item(own, item)
            if filled is not None:
                self.content[hopper.own] = filled
                self.content[source] = without_item(content, item)
                return True
        return False

    def _all_craft(self, first: Actor) -> None:
        """All look and take from their slots before the first gives."""
        for crafter in (first, *(actor for _, actor in self._queue if actor.crafts)):
            if crafter not in self._made:
                made = craft(self.slots(crafter.own))
                self._made[crafter] = None if made is None else (made[0], made[1])
                if made is not None:
                    self.content[crafter.own] = made[2]

    def _give_made(self, crafter: Actor, place: Place) -> None:
        """What finds no room is lost."""
        made, target = self._made[crafter], crafter.gives_to
        if made is None:
            return
        self._wake(crafter.own, place)
        if target is not None:
            for _ in range(made[1]):
                self.content[target] = target.with_item(self.slots(target), made[0]) or self.slots(target)
            self._wake(target, place)


def may_act(hopper: Actor, now: int) -> bool:
    """Whether a hopper has rested, and is not stopped by a signal."""
    return hopper.ready <= now and not hopper.signal.value
