"""The dry run of a plan: one tick after another, each in the order of the rules.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from collections.abc import Generator, Sequence
from typing import Final

from msgspec import Struct

from model.dry_run.boxes import Actor, Box
from model.dry_run.circuit import Circuit
from model.dry_run.detectors import Detectors
from model.dry_run.items import Items
from model.dry_run.nodes import Button, Node, Repeater, Torch
from model.dry_run.notices import Notices
from model.dry_run.outcomes import Arrival, CartState, Lost
from model.dry_run.rails import TrackState
from model.dry_run.script import Drop, Event, EventRefused, Fill, Lever, Send
from model.dry_run.signals import Signals
from model.dry_run.traffic import Traffic
from model.grid import Cell
from model.parts import TRAITS, Part
from model.pieces import slots_needed
from model.plan import Plan
from model.progress import Progress
from model.signals.items import Slots
from model.track.layout import Layout
from model.track.rails import UP, pack, unpack
from model.track.shapes import Shape
from model.wording import tr

START_LIMIT: Final = 200
"""Ticks that the start takes at most after its first."""


class Unsure(Struct, frozen=True):
    """Two cells whose order within a tick matters; the world may do otherwise than the dry run."""

    tick: int
    at: tuple[Cell, Cell]


class DryRun:
    """A plan while it runs. The start, before tick 0, is done when it is made.

    The plan and the layout that is given stay as they are; a circuit that is given is used up.
    """

    def __init__(self, plan: Plan, layout: Layout | None = None, circuit: Circuit | None = None) -> None:
        self.plan = plan
        layout = Layout(plan) if layout is None else layout
        self._notices = Notices(layout)
        self._track = TrackState(layout)
        self.circuit = Circuit(plan.pieces, self._notices) if circuit is None else circuit
        """For those beside this in the package, as ``signals`` and ``traffic`` are."""
        self._rails: dict[Node, int] = {
            node: pack(cell) for cell, node in self.circuit.takers.items() if pack(cell) in layout.rails
        }
        self._three_way = {key for key in self._rails.values() if self._notices.takes(unpack(key))}
        self.signals = Signals(self.circuit)
        self._items = Items(plan.pieces, self.circuit, self.signals)
        self.traffic = Traffic(plan, self._track)
        self._detectors = Detectors(self.signals, self.traffic)
        self.reset()

    @classmethod
    def of(cls, plan: Plan, layout: Layout) -> Generator[Progress, None, DryRun]:
        """The dry run of a plan, which tells how far it is; it is what the generator returns."""
        circuit = yield from Circuit.of(plan.pieces, Notices(layout))
        return cls(plan, layout, circuit)

    def reset(self) -> None:
        """Back to tick 0: the start is done again."""
        self.tick = 0
        """How many ticks are done: the number of the next one."""
        self._starting = True
        self._cells: set[Cell] = set()
        self._last_active = 0
        self.last_outside = 0
        """The last tick in which something was done, or a cart or an item moved: not signals alone."""
        self.unsure: list[Unsure] = []
        self._track.reset()
        self._items.reset()
        self.traffic.reset()
        self._detectors.reset()
        self._start()

    @property
    def active_ticks(self) -> int:
        """How many ticks it took until nothing moved or changed, as far as it went; 1 at least."""
        return self._last_active + 1

    @property
    def is_quiet(self) -> bool:
        """Whether nothing moves or changes until something is done to it."""
        return not (
            self.traffic.is_moving
            or self.signals.is_pending()
            or self._items.is_busy()
            or self._detectors.will_go_off()
        )

    @property
    def carts(self) -> tuple[CartState, ...]:
        """The carts on the track."""
        return self.traffic.states()

    @property
    def arrivals(self) -> Sequence[Arrival]:
        """The carts that have left by an arm, in that order."""
        return self.traffic.arrivals

    @property
    def lost(self) -> Sequence[Lost]:
        """The carts that stopped, left the track or collided, in that order."""
        return self.traffic.lost

    @property
    def running(self) -> Sequence[Lost]:
        """The carts on their way, also those that have not come in."""
        return self.traffic.still_running()

    @property
    def changed(self) -> frozenset[Cell]:
        """The cells that may look otherwise than before the last step."""
        nodes = frozenset(node.cell for node in (*self.signals.before, *self.signals.burnt))
        moved = (unpack(key) for key in (*self.traffic.touched, *(cart.key for cart in self.traffic.came)))
        return nodes | self._cells | frozenset(moved)

    def step(self, events: Sequence[Event] = ()) -> None:
        """One tick, with what is done in it. Raises EventRefused before anything is done."""
        for event in events:
            self.check(event)
        self._forget_last()
        now = self.tick
        self.signals.change_due(now, self._be_unsure)
        filled = [event.at for event in events if isinstance(event, Fill)]
        boxes = self._items.act(now, self._cart_above, self._be_unsure, filled)
        self._cells.update(box.reading.cell for box in boxes if box.reading is not None)
        self.traffic.move(now)
        for event in events:
            self._do(event, now)
        self.traffic.collide(now)
        self._detectors.look(now)
        self._items.wake_at(key - UP for key in self.traffic.entered)
        self._follow(now)
        self.signals.call(now)
        self._note_activity(boxes, events)
        self.tick += 1

    def check(self, event: Event) -> None:
        """Whether the plan has something for an event. Raises EventRefused."""
        if isinstance(event, Send):
            self.traffic.check_send(event)
        elif isinstance(event, Drop):
            self.traffic.check_drop(event)
        elif isinstance(event, Fill):
            self._check_fill(event)
        else:
            wanted = Part.LEVER if isinstance(event, Lever) else Part.BUTTON
            if self.plan.pieces.part_at(event.at) is not wanted:
                raise EventRefused(tr("there is no {wanted} at {place}", wanted=wanted, place=event.at))

    def strength(self, cell: Cell) -> int:
        """The strength of a dust, or the output of a part that has one; 0 elsewhere."""
        node = self.circuit.outputs.get(cell)
        return 0 if node is None else node.value

    def block_power(self, cell: Cell) -> tuple[int, bool]:
        """The power of a solid block, 0 to 15, and whether any of it is strong."""
        power, strong = self.circuit.power.get(cell), self.circuit.strong.get(cell)
        return (0 if power is None else power.value), strong is not None and strong.value > 0

    def throws(self) -> dict[Cell, Node]:
        """The three-way plain rails that a signal can reach, each with its signal."""
        three_way = ((unpack(key), node) for node, key in self._rails.items() if key in self._three_way)
        return dict(three_way)

    def output(self, cell: Cell) -> int:
        """What a probe reads.

        The output of a torch, repeater, comparator, lever, button or detector rail, the strength of a dust,
        the power into a block; for a rail, lamp, hopper or auto-crafter 15 with a signal and 0 without.
        """
        if cell in self.circuit.outputs:
            return self.strength(cell)
        part = self.plan.pieces.part_at(cell)
        if part is Part.BOOSTER_RAIL:
            return 15 if pack(cell) in self._track.driven else 0
        taker = self.circuit.takers.get(cell)
        return self.block_power(cell)[0] if taker is None else taker.value

    def is_burnt_out(self, cell: Cell) -> bool:
        """Whether a torch is out because it changed too often."""
        node = self.circuit.outputs.get(cell)
        return isinstance(node, Torch) and node.is_burnt_out

    def is_locked(self, cell: Cell) -> bool:
        """Whether a repeater is held from the side."""
        node = self.circuit.outputs.get(cell)
        return isinstance(node, Repeater) and node.locked

    def shape(self, cell: Cell) -> Shape | None:
        """How a rail lies now; ``None`` where none lies."""
        return self._track.rails.get(pack(cell))

    def contents(self, cell: Cell) -> Slots:
        """The slots of a container; none where there is no container."""
        box = self._items.boxes.get(cell)
        return () if box is None else box.slots

    def reading(self, cell: Cell) -> int:
        """What a comparator reads from a container; 0 where there is none."""
        box = self._items.boxes.get(cell)
        return 0 if box is None else box.strength()

    def _start(self) -> None:
        """Torches are lit, what lies about signal parts gets notice; then no carts, hoppers and crafts."""
        self.signals.start()
        self._items.read_all()
        self._follow(0, {key for node in self.circuit.nodes() for key in node.noticed})
        self.signals.call(0)
        ticks = 1
        while self.signals.is_pending() and ticks <= START_LIMIT:
            self._forget_last()
            self.signals.change_due(ticks, self._be_unsure)
            self._follow(ticks)
            self.signals.call(ticks)
            ticks += 1
        self.signals.count_from(ticks)
        self._forget_last()
        self._items.wake_all()
        self._starting = False

    def _forget_last(self) -> None:
        self.signals.before.clear()
        self._cells.clear()
        self.traffic.came.clear()
        self.traffic.entered.clear()
        self.traffic.touched.clear()

    def _do(self, event: Event, now: int) -> None:
        if isinstance(event, Send):
            self.traffic.send(event, now)
        elif isinstance(event, Drop):
            self.traffic.drop(event, now)
        elif isinstance(event, Fill):
            part = self.plan.pieces.part_at(event.at)
            assert part is not None
            self._items.fill(event.at, part, event.holds)
            self._cells.add(event.at)
        elif isinstance(event, Lever):
            self.signals.set(self.circuit.outputs[event.at], 15 if event.on else 0)
        else:
            button = self.circuit.outputs[event.at]
            assert isinstance(button, Button)
            self.signals.press(button, now)

    def _check_fill(self, event: Fill) -> None:
        part = self.plan.pieces.part_at(event.at)
        if part is None or not TRAITS[part].slots:
            raise EventRefused(tr("there is no container at {place}", place=event.at))
        if slots_needed(event.holds) > TRAITS[part].slots:
            raise EventRefused(
                tr(
                    "the {part} at {place} has {slots} slots",
                    part=part,
                    place=event.at,
                    slots=TRAITS[part].slots,
                )
            )

    def _follow(self, now: int, noticed: set[int] | None = None) -> None:
        """Dust, block power, rail shapes and what drives boosters follow at once."""
        self.signals.follow()
        noticed = set() if noticed is None else noticed
        boosters: dict[int, bool] = {}
        for node in self.signals.flipped():
            noticed.update(node.noticed)
            key = self._rails.get(node)
            if key is None:
                self._items.on_signal(node, now, crafting=not self._starting)
            elif key in self._three_way:
                noticed.add(key)
            else:
                boosters[key] = node.value > 0
        bent = self._settle(noticed, sure=self._starting)
        if boosters or bent:
            turned = self._track.drive(
                {key: on for key, on in boosters.items() if self._track.is_booster(key)}, bent
            )
            self._cells.update(map(unpack, turned))
        else:
            turned = set()
        self.traffic.hold(turned, now)

    def _settle(self, noticed: set[int], *, sure: bool) -> dict[int, Shape]:
        if not noticed:
            return {}
        signals = {key: self._has_signal(key) for key in noticed}
        bent = self._track.settle(signals, None if sure else self._be_unsure)
        self._cells.update(map(unpack, bent))
        return bent

    def _has_signal(self, key: int) -> bool:
        taker = self.circuit.takers.get(unpack(key))
        return taker is not None and taker.value > 0

    def _cart_above(self, hopper: Actor) -> Box | None:
        cart = self.traffic.cart_in(pack(hopper.piece.at) + UP)
        return None if cart is None else cart.box

    def _be_unsure(self, one: Cell, other: Cell) -> None:
        if not self._starting:
            self.unsure.append(Unsure(self.tick, (one, other)))

    def _note_activity(self, boxes: Sequence[Box], events: Sequence[Event]) -> None:
        if boxes or events or self.traffic.came or self.traffic.touched:
            self._last_active = self.last_outside = self.tick
        elif self.signals.before or self._cells:
            self._last_active = self.tick
