"""Carts while a plan runs: trains come in, carts run from cell to cell, are held, meet, and leave.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from collections.abc import Iterable

from model.dry_run.carts import Cart, content_of_cart
from model.dry_run.outcomes import Arrival, CartState, Lost, Why
from model.dry_run.rails import TrackState
from model.dry_run.script import Drop, EventRefused, Send
from model.dry_run.wheel import Wheel
from model.plan import ArmEnd, Plan
from model.track.carts import WAY_OUT, exits_of, next_rail
from model.track.rails import STEP, pack, unpack
from model.track.shapes import End
from model.wording import tr


class Traffic:
    """The carts on a track, and what became of them."""

    def __init__(self, plan: Plan, track: TrackState) -> None:
        self._plan = plan
        self._track = track
        self._exits = exits_of(plan.arms)
        self.reset()

    def reset(self) -> None:
        """No cart anywhere."""
        self.sent = 0
        self.arrivals: list[Arrival] = []
        self.lost: list[Lost] = []
        self.on_track: dict[int, list[Cart]] = {}
        """The carts by packed cell."""
        self.came: list[Cart] = []
        """Those that came into a cell in this tick, and are still there."""
        self.entered: list[int] = []
        """The packed cells into which a cart came in this tick, be it only to collide there."""
        self.touched: list[int] = []
        """The packed cells that a cart left in this tick, by whatever way, or in which it stopped."""
        self._goes: Wheel[Cart] = Wheel()
        self._enters: Wheel[Cart] = Wheel()
        self._waiting: dict[Cart, None] = {}

    @property
    def is_moving(self) -> bool:
        """Whether a cart runs or is to come in."""
        return bool(self._waiting) or any(
            cart.goes is not None for carts in self.on_track.values() for cart in carts
        )

    def cart_in(self, key: int) -> Cart | None:
        """A cart in a packed cell."""
        carts = self.on_track.get(key)
        return carts[0] if carts else None

    def check_send(self, send: Send) -> ArmEnd:
        """Where the carts come in. Raises EventRefused."""
        arm = self._plan.details.arm(send.arm)
        if arm is None:
            raise EventRefused(tr("there is no arm {arm!r}", arm=send.arm))
        if arm.enter is None:
            raise EventRefused(tr("the arm {arm} has no way in", arm=send.arm))
        if self._track.rails.get(pack(arm.enter.at)) is None:
            raise EventRefused(tr("no rail lies where the arm {arm} comes in", arm=send.arm))
        for load in send.loads:
            content_of_cart(load)
        return arm.enter

    def check_drop(self, drop: Drop) -> None:
        """Whether there is a rail. Raises EventRefused."""
        if self._track.rails.get(pack(drop.at)) is None:
            raise EventRefused(tr("no rail lies at {place}", place=drop.at))
        content_of_cart(drop.load)

    def send(self, send: Send, now: int) -> None:
        """The first cart of a train comes in, the others follow. Raises EventRefused."""
        enter = self.check_send(send)
        key = pack(enter.at)
        for index, load in enumerate(send.loads):
            self.sent += 1
            ahead = index * (send.gap + 1)
            cart = Cart(self.sent, key, enter.heading, load, now, ahead)
            cart.train -= index
            enters = cart.tick_of_next_cell()
            if enters == now:
                self._put(cart, key, now)
            else:
                self._waiting[cart] = None
                self._enters.add(enters, cart)

    def drop(self, drop: Drop, now: int) -> None:
        """A cart is set on a rail."""
        key = pack(drop.at)
        self.sent += 1
        self._put(Cart(self.sent, key, drop.heading, drop.load, now, 0), key, now)

    def move(self, now: int) -> None:
        """All carts whose time has come move at once; then those that share a cell are taken off."""
        going = {cart for cart in self._goes.pop(now) if cart.goes == now}
        ways = [(cart, self._way_out(cart)) for cart in sorted(going, key=lambda cart: cart.number)]
        for cart, end in ways:
            self._leave(cart, end, now)
        for cart in self._enters.pop(now):
            del self._waiting[cart]
            self._put(cart, cart.key, now)
        self.collide(now)

    def collide(self, now: int) -> None:
        """All carts in a cell with more than one are taken off; one that had stopped is listed already."""
        for key in dict.fromkeys(cart.key for cart in self.came):
            carts = self.on_track.get(key, [])
            if len(carts) > 1:
                for cart in sorted(carts, key=lambda cart: cart.number):
                    if not cart.stopped:
                        self.lost.append(Lost(cart.number, unpack(key), Why.COLLISION, now))
                    self._take_off(cart)
                    if cart in self.came:
                        self.came.remove(cart)

    def hold(self, turned: Iterable[int], now: int) -> None:
        """At the end of a tick: carts stand on boosters without a signal; those that have one again go on."""
        driven = self._track.driven
        for cart in self.came:
            if self._track.is_booster(cart.key) and cart.key not in driven:
                self._hold(cart)
        for key in turned:
            for cart in self.on_track.get(key, ()):
                if key not in driven:
                    self._hold(cart)
                elif cart.held:
                    cart.held = False
                    cart.base, cart.cells = now, 0
                    self._time(cart)

    def leaving(self, tick: int) -> list[Cart]:
        """The carts that leave their cell in a tick."""
        return [cart for carts in self.on_track.values() for cart in carts if cart.goes == tick]

    def states(self) -> tuple[CartState, ...]:
        """The carts on the track by number."""
        carts = sorted((c for carts in self.on_track.values() for c in carts), key=lambda c: c.number)
        return tuple(
            CartState(c.number, unpack(c.key), c.heading, c.carries(), c.came, c.goes, c.held) for c in carts
        )

    def still_running(self) -> list[Lost]:
        """The carts that have not ended, also those that have not come in."""
        carts = [c for carts in self.on_track.values() for c in carts if not c.stopped]
        return [
            Lost(c.number, unpack(c.key), Why.RUNNING, c.came)
            for c in sorted([*carts, *self._waiting], key=lambda c: c.number)
        ]

    def _put(self, cart: Cart, key: int, now: int) -> None:
        cart.key = key
        cart.came = now
        self.on_track.setdefault(key, []).append(cart)
        self.came.append(cart)
        self.entered.append(key)
        self._time(cart)

    def _time(self, cart: Cart) -> None:
        cart.cells += 1
        cart.goes = cart.tick_of_next_cell()
        self._goes.add(cart.goes, cart)

    def _hold(self, cart: Cart) -> None:
        if not cart.stopped:
            cart.held = True
            cart.goes = None

    def _way_out(self, cart: Cart) -> End:
        """On the shapes at the end of the last tick."""
        shape = self._track.rails.get(cart.key)
        assert shape is not None
        return WAY_OUT[shape][cart.heading]

    def _leave(self, cart: Cart, end: End, now: int) -> None:
        key, cart.heading = cart.key, end.heading
        if key + STEP[end.heading] + end.rise in self._track.stoppers:
            cart.goes, cart.stopped = None, True
            self.touched.append(key)
            self.lost.append(Lost(cart.number, unpack(key), Why.STOPPED, now))
            return
        self._take_off(cart)
        arm = self._exits.get((key, end.heading))
        following = next_rail(self._track.rails, key, end)
        if arm is not None:
            self.arrivals.append(Arrival(cart.number, now, arm, cart.carries()))
        elif following is None:
            self.lost.append(Lost(cart.number, unpack(key), Why.LEAVES_TRACK, now))
        else:
            self._put(cart, following, now)

    def _take_off(self, cart: Cart) -> None:
        carts = self.on_track[cart.key]
        carts.remove(cart)
        if not carts:
            del self.on_track[cart.key]
        cart.goes = None
        self.touched.append(cart.key)
