"""The dry run in its plainest form: every tick looks at every cell, in the order in which the rules tell it.

Written from the text of the rules alone; the readings where the text is open stand in the package.
Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import combinations

from tests.oracle.carts import ArmSpec
from tests.oracle.dry_run_carts import move, train
from tests.oracle.dry_run_items import Slots, craft, filled, give, put, take, touched
from tests.oracle.dry_run_pieces import (
    CARRIES,
    GIVES_ALL_ROUND,
    GIVES_IN_FRONT,
    SIGNAL_PARTS,
    SLOTS,
    WAYS,
    Piece,
    Wiring,
    front,
    step,
    support,
)
from tests.oracle.dry_run_power import Signals
from tests.oracle.dry_run_state import State
from tests.oracle.shapes import RAIL_PARTS, Place, build

DELAYED = ("torch", *GIVES_IN_FRONT)
HAS_OUTPUT = (*DELAYED, *GIVES_ALL_ROUND)
START_TICKS = 200
LOOK_AGAIN = 20
BUTTON_TICKS = {False: 20, True: 30}
HOPPER_TICKS = 8
CRAFT_TICKS = 4
BURN_CHANGES, BURN_WITHIN, BURN_FOR = 9, 60, 160
LONG_AGO = -10_000

Swap = tuple[str, Place, Place]
"""What is done in the other order: the kind of act and the two cells."""


class DryRun:
    """A plan that runs: pieces in file order."""

    def __init__(self, pieces: list[Piece], arms: list[ArmSpec] = ()) -> None:
        self.wiring = Wiring(pieces)
        self.pieces = self.wiring.pieces
        self.parts = self.wiring.parts
        self.arms = list(arms)
        self.place_in_file = {at: place for place, at in enumerate(self.pieces)}
        self.others = {at: part for at, part in self.parts.items() if part not in RAIL_PARTS}
        rails = self.wiring.of_parts("rail")
        self.giving_notice = {at: self._giving_notice(at) for at in rails}
        self.sent = 0
        self.unsure: list[tuple[int, Place, Place]] = []
        self.state = State(
            build([(piece.part, piece.at, piece.facing) for piece in pieces]),
            {at: 15 if part == "torch" else 0 for at, part in self.parts.items() if part in HAS_OUTPUT},
            {at: filled(part, self.pieces[at].holds) for at, part in self.parts.items() if part in SLOTS},
        )
        self.tick = self._start()

    # The tick.

    def step(self, events: list[dict] = ()) -> None:
        """One tick, and once more for each pair that could act in the other order."""
        before, sent = self.state.copied(), self.sent
        pairs = self._run_tick(self.state, events, None)
        for kind, first, second in pairs:
            other, self.sent = before.copied(), sent
            self._run_tick(other, events, (kind, first, second))
            found = (self.tick, *self._in_file_order((first, second)))
            if other.differs(self.state) and found not in self.unsure:
                self.unsure.append(found)
        self.tick += 1

    def _run_tick(self, state: State, events: list[dict], swap: Swap | None) -> list[Swap]:
        """The phases in their order; gives the pairs that acted."""
        now = self.tick
        pairs = self._change_due_parts(state, now, swap)
        pairs += self._let_items_move(state, now, swap)
        self._move_carts(state, now)
        crashed = self._collide(state)
        for event in events:
            self._apply(state, event, now)
        crashed |= self._collide(state)
        self._let_detectors_look(state, now, crashed)
        had_signal = {at for at in self.pieces if state.signals.has_signal(at)}
        pairs += self._follow(state, swap)
        self._give_pending_changes(state, now)
        self._begin_crafts(state, now, had_signal)
        self._hold_carts(state, now)
        return pairs

    def _start(self) -> int:
        """The start and the ticks before tick 0; gives the number of the first tick, which is 0."""
        state = self.state
        state.signals = Signals(self.wiring, state.out)
        self._give_first_notices(state)
        state.signals.pass_along_boosters(state.track)
        self._give_pending_changes(state, 0)
        now = 0
        while state.pending and now < START_TICKS:
            now += 1
            self._change_due_parts(state, now, None)
            self._follow(state, None)
            self._give_pending_changes(state, now)
        first = now + 1
        state.pending = {at: due - first for at, due in state.pending.items()}
        state.changes = {at: [tick - first for tick in ticks] for at, ticks in state.changes.items()}
        return 0

    def _in_file_order(self, cells: Iterable[Place]) -> list[Place]:
        return sorted(cells, key=self.place_in_file.__getitem__)

    # Parts that are due.

    def _change_due_parts(self, state: State, now: int, swap: Swap | None) -> list[Swap]:
        """They look at the end of the last tick; only a lock counts as soon as it comes on."""
        asked = {at: state.signals.asked(at, state.slots) for at in state.pending}
        before = dict(state.out)
        due = self._in_file_order(at for at, tick in state.pending.items() if tick == now)
        for at in exchanged(due, "due", swap):
            del state.pending[at]
            if any(state.out[other] for other in self.wiring.lockers[at]):
                continue
            if self.parts[at] == "torch":
                self._change_torch(state, at, asked[at], now)
            elif self.parts[at] == "repeater" and not before[at]:
                state.out[at] = 15
            else:
                state.out[at] = asked[at]
        for at in [at for at, tick in state.buttons.items() if tick == now]:
            state.out[at] = 0
            del state.buttons[at]
        return [
            ("due", at, other)
            for at in due
            for other in self.wiring.lockers[at]
            if state.out[other] and not before[other]
        ]

    def _change_torch(self, state: State, at: Place, asked: int, now: int) -> None:
        if asked == state.out[at]:
            return
        state.out[at] = asked
        changes = state.changes.setdefault(at, [])
        changes.append(now)
        del changes[:-BURN_CHANGES]
        if len(changes) == BURN_CHANGES and now - changes[0] <= BURN_WITHIN:
            state.out[at] = 0
            state.pending[at] = now + BURN_FOR

    # Hoppers and crafters.

    def _let_items_move(self, state: State, now: int, swap: Swap | None) -> list[Swap]:
        """Hoppers, then the crafts that are due; when the first of these comes, all of them take and look."""
        free = [at for at in self.wiring.of_parts("hopper") if self._is_free(state, at, now)]
        due = self._in_file_order(at for at, tick in state.crafts.items() if tick == now)
        made: dict[Place, list[str]] = {}
        for at in exchanged([*free, *due], "items", swap):
            if at not in due:
                self._let_hopper_act(state, self.pieces[at], now)
                continue
            made = made or {crafter: craft(state.slots[crafter]) for crafter in due}
            self._give_crafted(state, at, made[at])
        return [("items", *pair) for pair in combinations([*free, *due], 2) if self._share(state, *pair)]

    def _share(self, state: State, first: Place, second: Place) -> bool:
        """Whether both are at one container, be it one of themselves."""
        return bool(touched(self.pieces[first], state.slots) & touched(self.pieces[second], state.slots))

    def _is_free(self, state: State, at: Place, now: int) -> bool:
        waited = now - state.acted.get(at, LONG_AGO) >= HOPPER_TICKS
        return waited and not state.signals.has_signal(at)

    def _let_hopper_act(self, state: State, hopper: Piece, now: int) -> None:
        gave = give(hopper, self.parts, state.slots)
        above = self._content_of(state, step(hopper.at, "up"))
        took = above is not None and take(hopper, above, state.slots[hopper.at])
        if gave or took:
            state.acted[hopper.at] = now

    def _content_of(self, state: State, at: Place) -> Slots | None:
        """The slots of the container in a cell, else of the cart there."""
        if at in state.slots:
            return state.slots[at]
        return next((cart.slots for cart in state.carts if cart.at == at), None)

    def _give_crafted(self, state: State, crafter: Place, items: list[str]) -> None:
        """What finds no room is lost."""
        del state.crafts[crafter]
        to = front(self.pieces[crafter])
        for item in items:
            if to in state.slots:
                put(self.parts[to], state.slots[to], item)

    def _begin_crafts(self, state: State, now: int, had_signal: set[Place]) -> None:
        for at, part in self.parts.items():
            rises = part == "auto-crafter" and state.signals.has_signal(at) and at not in had_signal
            if rises and at not in state.crafts:
                state.crafts[at] = now + CRAFT_TICKS

    # Carts.

    def _move_carts(self, state: State, now: int) -> None:
        for cart in state.carts:
            if cart.state != "running" or cart.next_move() != now:
                continue
            if cart.at is None:
                cart.come_in()
            else:
                arm = move(cart, state.track, self.others, self.arms)
                if arm is not None:
                    state.arrivals.append((cart.number, now, arm, cart.carries()))
                elif cart.state != "running":
                    why = "stopped" if cart.state == "stopped" else "leaves-track"
                    state.lost.append((cart.number, cart.last, why))

    def _collide(self, state: State) -> set[Place]:
        """All that stand in one cell are taken off the track; what had stopped is listed already."""
        cells = [cart.at for cart in state.carts if cart.at is not None]
        crashed = {at for at in cells if cells.count(at) > 1}
        for cart in state.carts:
            if cart.at in crashed:
                if cart.state != "stopped":
                    state.lost.append((cart.number, cart.last, "collision"))
                cart.at, cart.state = None, "gone"
        return crashed

    def _hold_carts(self, state: State, now: int) -> None:
        """A booster without a signal holds what stands on it; with the signal it is timed afresh."""
        for cart in state.carts:
            if self.parts.get(cart.at) == "booster-rail" and cart.state in ("running", "held"):
                if not state.signals.has_signal(cart.at):
                    cart.state = "held"
                elif cart.state == "held":
                    cart.state, cart.timed_from, cart.ahead, cart.moved = "running", now, 0, 0

    # The script, and what carts do.

    def _apply(self, state: State, event: dict, now: int) -> None:
        at = tuple(event.get("at", ()))
        if event["do"] == "send":
            entry = next(arm.way_in for arm in self.arms if arm.name == event["arm"])
            carts = train(event, entry, now, self.sent + 1)
            self.sent += len(carts)
            state.carts += carts
        elif event["do"] == "lever":
            state.out[at] = 15 if event["on"] else 0
        elif event["do"] == "button":
            state.out[at] = 15
            state.buttons[at] = now + BUTTON_TICKS[self.pieces[at].wooden]
        else:
            holds = tuple((held["item"], held["count"]) for held in event["holds"])
            state.slots[at] = filled(self.parts[at], holds)

    def _let_detectors_look(self, state: State, now: int, crashed: set[Place]) -> None:
        """On in the tick in which a cart comes in, be it to collide."""
        taken = {cart.at for cart in state.carts} | crashed
        for at, part in self.parts.items():
            if part != "detector-rail":
                continue
            if not state.out[at] and at in taken:
                state.out[at], state.looks[at] = 15, now + LOOK_AGAIN
            elif state.out[at] and state.looks[at] == now:
                state.out[at] = 15 if at in taken else 0
                state.looks[at] = now + LOOK_AGAIN

    # What follows at once.

    def _follow(self, state: State, swap: Swap | None) -> list[Swap]:
        before, after = state.signals, Signals(self.wiring, state.out)
        changed = before.on() ^ after.on()
        rails = [
            at
            for at in self._plain_rails(state)
            if changed & self.giving_notice[at] or bool(before.signal[at]) != bool(after.signal[at])
        ]
        rails = self._in_file_order(rails)
        for at in exchanged(rails, "notice", swap):
            state.track.notice(at, powered=bool(after.signal[at]))
        after.pass_along_boosters(state.track)
        state.signals = after
        return [("notice", first, second) for first, second in combinations(rails, 2)]

    def _give_first_notices(self, state: State) -> None:
        rails = [at for at in self._plain_rails(state) if self.giving_notice[at] or state.signals.signal[at]]
        for at in self._in_file_order(rails):
            state.track.notice(at, powered=bool(state.signals.signal[at]))

    def _plain_rails(self, state: State) -> list[Place]:
        """Those that have neighbours in three directions; the others do not mind."""
        plain = [at for at, part in state.track.part.items() if part == "rail"]
        return [at for at in plain if state.track.neighbours(at) == 3]

    def _giving_notice(self, rail: Place) -> set[Place]:
        """The signal parts beside a rail, and those on a part that it touches."""
        beside = {step(rail, way) for way in WAYS}
        touching = {at for at in beside if self.parts.get(at) in CARRIES}
        return {
            at
            for at, piece in self.pieces.items()
            if piece.part in SIGNAL_PARTS and (at in beside or support(piece) in touching)
        }

    def _give_pending_changes(self, state: State, now: int) -> None:
        for at, part in self.parts.items():
            if part not in DELAYED:
                continue
            if state.signals.is_locked(at):
                state.pending.pop(at, None)
            elif at not in state.pending and state.out[at] != state.signals.asked(at, state.slots):
                state.pending[at] = now + (self.pieces[at].delay if part == "repeater" else 2)

    # For watching.

    def probe(self, at: Place) -> int:
        """What a probe reads."""
        return self.state.signals.probe(at)

    def all_lost(self) -> list[tuple]:
        """The lost, and those still under way or not yet in."""
        under_way = [cart for cart in self.state.carts if cart.state in ("running", "held")]
        return self.state.lost + [(cart.number, cart.last or cart.entry[0], "running") for cart in under_way]


def exchanged(ordered: list[Place], kind: str, swap: Swap | None) -> list[Place]:
    """In that order, but for the two that exchange their places."""
    if swap is None or swap[0] != kind or not set(swap[1:]) <= set(ordered):
        return ordered
    other = {swap[1]: swap[2], swap[2]: swap[1]}
    return [other.get(at, at) for at in ordered]
