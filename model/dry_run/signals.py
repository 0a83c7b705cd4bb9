"""Signals tick by tick: what comes due, what follows at once, and what comes due later."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from model.dry_run.circuit import Circuit
from model.dry_run.dust_flow import flow
from model.dry_run.nodes import Button, Delayed, Due, Dust, Level, Node, Repeater, Strongest, Torch
from model.dry_run.wheel import Wheel
from model.grid import Cell

Tell = Callable[[Cell, Cell], None]
"""Takes two cells whose order within the tick matters."""


class Signals:
    """The state of a circuit. Only what changed in a tick, and what looks at it, is visited."""

    def __init__(self, circuit: Circuit) -> None:
        self.circuit = circuit
        self.reset()

    def reset(self) -> None:
        """Everything at rest, and nothing pending."""
        for node in self.circuit.nodes():
            node.forget()
        self.due: Wheel[Due] = Wheel()
        self.before: dict[Node, int] = {}
        """What changed in this tick, with the value that it had."""
        self.burnt: list[Torch] = []
        """Torches that burnt out in this tick, or have waited long enough, be they out before and after."""
        self._dirty: tuple[dict[Node, None], ...] = tuple({} for level in Level if level >= 0)
        self._looking: dict[Delayed, None] = {}

    def start(self) -> None:
        """Lights the torches; everything is looked at once."""
        self.reset()
        for node in self.circuit.outputs.values():
            if isinstance(node, Torch):
                self.set(node, 15)
            if isinstance(node, Delayed):
                self._looking[node] = None

    def set(self, node: Node, value: int) -> None:
        """Gives a node another value."""
        if node.value == value:
            return
        self._note(node, node.value)
        node.value = value
        if isinstance(node, Delayed):
            self._looking[node] = None

    def press(self, button: Button, now: int) -> None:
        """A button goes on, or stays on, for its ticks from now."""
        self.set(button, 15)
        button.pending = now + button.ticks
        self.due.add(button.pending, button)

    def count_from(self, tick: int) -> None:
        """That tick becomes tick 0; what is pending keeps its remaining time."""
        pending = list(self.due)
        self.due = Wheel()
        for due, part in pending:
            if part.pending == due:
                self.due.add(due - tick, part)
        for node in self.circuit.nodes():
            node.count_from(tick)

    def change_due(self, now: int, unsure: Tell) -> None:
        """The parts that are due change, all looking at the end of the last tick."""
        due = sorted((part for part in self.due.pop(now) if part.pending == now), key=lambda part: part.rank)
        self.burnt = [part for part in due if isinstance(part, Torch) and part.is_burnt_out]
        for torch in self.burnt:
            torch.is_burnt_out = False
        after: dict[Due, int] = {}
        for part in due:
            part.pending = None
            after[part] = part.when_due()
        self._lock(due, after, unsure)
        for part, value in after.items():
            if isinstance(part, Torch) and value != part.value and part.burns_out(now):
                assert part.pending is not None
                self.due.add(part.pending, part)
                self.burnt.append(part)
                value = 0
            self.set(part, value)
            if isinstance(part, Delayed):
                self._looking[part] = None

    def follow(self) -> None:
        """Block power, dust and what they give to follow at once."""
        strong, dust, power, takers = self._dirty
        self._gather(strong)
        if dust:
            wet = [node for node in dust if isinstance(node, Dust)]
            dust.clear()
            for changed, had in flow(wet).items():
                self._note(changed, had)
        self._gather(power)
        for node in takers:
            if isinstance(node, Delayed):
                self._looking[node] = None
        self._gather(takers)

    def call(self, now: int) -> None:
        """Each part whose output is not what its inputs call for gets a change, due after its delay."""
        for part in self._looking:
            if part.look(now):
                assert part.pending is not None
                self.due.add(part.pending, part)
        self._looking.clear()

    def flipped(self) -> list[Node]:
        """What went on or off in this tick."""
        return [node for node, had in self.before.items() if (had > 0) != (node.value > 0)]

    def is_pending(self) -> bool:
        """Whether anything is to come due."""
        return any(part.pending == tick for tick, part in self.due)

    def _gather(self, dirty: dict[Node, None]) -> None:
        if dirty:
            nodes = [node for node in dirty if isinstance(node, Strongest)]
            dirty.clear()
            for node in nodes:
                self.set(node, node.called_for())

    def _note(self, node: Node, had: int) -> None:
        self.before.setdefault(node, had)
        for out in node.outs:
            self._dirty[out.level][out] = None

    @staticmethod
    def _lock(due: Iterable[Due], after: dict[Due, int], unsure: Tell) -> None:
        """A repeater that is due while a part comes on to lock it: the earlier in the file comes first."""
        for part in due:
            if not isinstance(part, Repeater) or after[part] == part.value:
                continue
            coming = [
                node for node in part.lockers if isinstance(node, Due) and after.get(node, 0) > node.value
            ]
            earlier = [node for node in coming if node.rank < part.rank]
            if len(earlier) < 2:
                for node in earlier or coming:
                    unsure(*(each.cell for each in sorted((part, node), key=lambda each: each.rank)))
            if earlier:
                after[part] = part.value
