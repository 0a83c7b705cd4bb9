"""Items while a plan runs: hoppers, auto-crafters, and what comparators read."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import combinations

from model.dry_run.acting import Acts, CartAbove, may_act, other_way_round
from model.dry_run.boxes import Actor, Box, content_of, number_groups
from model.dry_run.circuit import Circuit
from model.dry_run.nodes import Node, Taker
from model.dry_run.signals import Signals, Tell
from model.dry_run.wheel import Wheel
from model.grid import Cell, Facing
from model.parts import TRAITS, Part
from model.pieces import Held, Pieces
from model.signals.timing import CRAFT
from model.track.rails import pack


class Items:
    """The containers of a plan. A hopper that has nothing to do sleeps until something about it changes."""

    def __init__(self, pieces: Pieces, circuit: Circuit, signals: Signals) -> None:
        self._signals = signals
        self.boxes: dict[Cell, Box] = {}
        self.actors: dict[Cell, Actor] = {}
        self._by_signal: dict[Node, Actor] = {}
        self._hoppers: dict[int, Actor] = {}
        self._as_built = {cell: _held(pieces, cell) for cell in circuit.readings}
        for cell, (part, _) in self._as_built.items():
            self.boxes[cell] = Box((), circuit.readings[cell], crafts=part is Part.AUTO_CRAFTER)
        for cell in self.boxes:
            taker = circuit.takers.get(cell)
            if taker is not None:
                self._add(pieces, cell, taker)
        number_groups(self.actors.values())
        self.reset()

    def reset(self) -> None:
        """As built; every hopper may act at once."""
        self._awake: dict[Actor, None] = {}
        self._rested: Wheel[Actor] = Wheel()
        self._crafts: Wheel[Actor] = Wheel()
        self._crafting: set[Actor] = set()
        for cell, (part, holds) in self._as_built.items():
            self.boxes[cell].slots = content_of(part, holds)
        for actor in self.actors.values():
            actor.ready = 0

    def read_all(self) -> None:
        """Gives every reading its value."""
        for box in self.boxes.values():
            self._read(box)

    def wake_all(self) -> None:
        """From now on hoppers act."""
        self._wake(actor for actor in self.actors.values() if not actor.crafts)

    def act(self, now: int, cart_above: CartAbove, unsure: Tell, filled: Iterable[Cell] = ()) -> list[Box]:
        """Hoppers act, then the crafts that are due; returns the boxes that changed.

        ``filled`` are the containers that will be filled anew in this tick.
        """
        self._wake(self._rested.pop(now))
        crafts = self._crafts.pop(now)
        hoppers = [actor for actor in self._awake if may_act(actor, now)]
        self._awake.clear()
        self._crafting.difference_update(crafts)
        anew = {self.boxes[cell] for cell in filled}
        changed: list[Box] = []
        for together in _by_group(hoppers, crafts):
            acts = Acts(now, cart_above)
            acts.run(together)
            for one, other in self._pairs(acts):
                otherwise = Acts(now, cart_above, other_way_round(one, other))
                otherwise.run(together)
                if not otherwise.ends_as(acts, anew):
                    unsure(one.piece.at, other.piece.at)
            changed += self._do(acts)
        return changed

    def fill(self, cell: Cell, part: Part, holds: tuple[Held, ...]) -> None:
        """The content of a container is replaced."""
        box = self.boxes[cell]
        box.slots = content_of(part, holds)
        self._changed(box)

    def wake_at(self, keys: Iterable[int]) -> None:
        """Carts have come over these packed cells: hoppers there look at them."""
        self._wake(hopper for key in keys if (hopper := self._hoppers.get(key)) is not None)

    def on_signal(self, node: Node, now: int, *, crafting: bool) -> None:
        """The signal of a hopper or auto-crafter came or went; while ``crafting`` a rise is worth a craft."""
        actor = self._by_signal.get(node)
        if actor is None:
            return
        if not actor.crafts:
            if not node.value:
                self._awake[actor] = None
        elif node.value and crafting and actor not in self._crafting:
            self._crafting.add(actor)
            self._crafts.add(now + CRAFT, actor)

    def is_busy(self) -> bool:
        """Whether a hopper may have something to do, or a craft is to come."""
        return bool(self._awake or self._rested or self._crafts)

    def _add(self, pieces: Pieces, cell: Cell, taker: Taker) -> None:
        placed = pieces.placed(cell)
        assert placed is not None
        actor = Actor(placed.piece, placed.rank, self.boxes[cell], taker)
        self.actors[cell] = actor
        self._by_signal[taker] = actor
        actor.gives_to = self.boxes.get(cell.beside(placed.piece.facing))
        if not actor.crafts:
            self._hoppers[pack(cell)] = actor
            actor.above = self.boxes.get(cell.beside(Facing.UP))
        for box in actor.boxes():
            box.users.append(actor)

    def _wake(self, actors: Iterable[Actor]) -> None:
        for actor in actors:
            self._awake[actor] = None

    def _do(self, acts: Acts) -> list[Box]:
        content, ready = acts.result()
        for actor, tick in ready.items():
            actor.ready = tick
            self._rested.add(tick, actor)
        for box, slots in content.items():
            box.slots = slots
            self._changed(box)
        return list(content)

    def _changed(self, box: Box) -> None:
        self._read(box)
        self._wake(actor for actor in box.users if not actor.crafts)

    def _read(self, box: Box) -> None:
        if box.reading is not None:
            self._signals.set(box.reading, box.strength())

    @staticmethod
    def _pairs(acts: Acts) -> Iterator[tuple[Actor, Actor]]:
        """Two that may act at one container, their own or another, in file order."""
        if not (acts.content or acts.ready):
            return
        seen: set[tuple[Actor, Actor]] = set()
        for box in dict.fromkeys(box for actor in acts.ran for box in actor.boxes()):
            able = [a for a in box.users if (a in acts.ran if a.crafts else may_act(a, acts.now))]
            for pair in combinations(able, 2):
                if pair not in seen:
                    seen.add(pair)
                    yield pair


def _by_group(*actors: Iterable[Actor]) -> list[list[Actor]]:
    """Those of one group do not see what another does, so that they can be looked at by themselves."""
    groups: dict[int, list[Actor]] = {}
    for actor in sorted((actor for some in actors for actor in some), key=lambda actor: actor.rank):
        groups.setdefault(actor.group, []).append(actor)
    return list(groups.values())


def _held(pieces: Pieces, cell: Cell) -> tuple[Part, tuple[Held, ...]]:
    piece = pieces.get(cell)
    assert piece is not None
    assert TRAITS[piece.part].slots
    return piece.part, piece.holds
