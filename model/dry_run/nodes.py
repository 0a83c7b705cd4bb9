"""The nodes of a circuit: what has a signal, what that depends on, and what depends on it.

A signal runs one way: out of sources, through strongly powered blocks, dust, and powered blocks, to what
takes it. ``level`` numbers these stages, so that one pass over what changed, stage by stage, is enough.
"""

from __future__ import annotations

from collections import deque
from enum import IntEnum
from typing import ClassVar, Final

from model.grid import Cell
from model.parts import Mode
from model.pieces import Piece
from model.signals import comparator, repeater, torch
from model.signals.timing import pressed_for


class Level(IntEnum):
    """The stages through which a signal runs in one tick."""

    SOURCE = -1
    STRONG = 0
    DUST = 1
    POWER = 2
    TAKER = 3


class Node:
    """Something with a signal of 0 to 15; this plain kind is set from outside: a lever, a reading."""

    __slots__ = ("cell", "noticed", "outs", "rank", "value")
    level: ClassVar[Level] = Level.SOURCE

    def __init__(self, cell: Cell, rank: int) -> None:
        self.cell = cell
        self.rank = rank
        """Of its piece, in the order of the file."""
        self.outs: list[Node] = []
        """What looks again when the value changes."""
        self.noticed: tuple[int, ...] = ()
        """Packed cells of the three-way plain rails that get notice when it goes on or off."""
        self.value = 0

    def forget(self) -> None:
        """Back to how it was before the start."""
        self.value = 0

    def count_from(self, tick: int) -> None:
        """That tick becomes tick 0."""


class Strongest(Node):
    """As strong as the strongest of what goes in: the strong power of a block, or all its power."""

    __slots__ = ("ins",)

    def __init__(self, cell: Cell, rank: int) -> None:
        super().__init__(cell, rank)
        self.ins: list[Node] = []

    def called_for(self) -> int:
        """The value that the inputs call for."""
        return max((node.value for node in self.ins), default=0)


class StrongPower(Strongest):
    """The strong power of a solid block."""

    __slots__ = ()
    level = Level.STRONG


class Power(Strongest):
    """The power of a solid block, strong or weak."""

    __slots__ = ()
    level = Level.POWER


class Taker(Strongest):
    """On or off: a rail, lamp, hopper or auto-crafter with what gives to it."""

    __slots__ = ()
    level = Level.TAKER

    def called_for(self) -> int:
        """15 where anything gives to it."""
        return 15 if any(node.value for node in self.ins) else 0


class Dust(Node):
    """A signal dust: as strong as what feeds it, or one weaker than the strongest that it takes from."""

    __slots__ = ("feeds", "gives", "takes")
    level = Level.DUST

    def __init__(self, cell: Cell, rank: int) -> None:
        super().__init__(cell, rank)
        self.feeds: list[Node] = []
        self.takes: list[Dust] = []
        self.gives: list[Dust] = []


class Due(Node):
    """What changes some ticks after it was told to."""

    __slots__ = ("pending",)

    def __init__(self, cell: Cell, rank: int) -> None:
        super().__init__(cell, rank)
        self.pending: int | None = None
        """The tick in which a change comes due."""

    def when_due(self) -> int:
        """The output when its change comes due, looking at the inputs as they are."""
        raise NotImplementedError

    def forget(self) -> None:
        super().forget()
        self.pending = None

    def count_from(self, tick: int) -> None:
        if self.pending is not None:
            self.pending -= tick


class Button(Due):
    """Goes off when its time is over."""

    __slots__ = ("ticks",)

    def __init__(self, piece: Piece, rank: int) -> None:
        super().__init__(piece.at, rank)
        self.ticks = pressed_for(piece)

    def when_due(self) -> int:
        return 0


class Delayed(Due):
    """A part whose output follows its inputs after a delay."""

    __slots__ = ("delay",)
    level = Level.TAKER

    def __init__(self, cell: Cell, rank: int, delay: int) -> None:
        super().__init__(cell, rank)
        self.delay = delay

    def called_for(self) -> int:
        """The output that the inputs call for."""
        raise NotImplementedError

    def look(self, now: int) -> bool:
        """Whether a change is now pending that was not before: the output is not what the inputs call for."""
        if self.pending is not None or self.called_for() == self.value:
            return False
        self.pending = now + self.delay
        return True

    def when_due(self) -> int:
        return self.called_for()


class Torch(Delayed):
    """A signal torch on its block."""

    __slots__ = ("block", "changes", "is_burnt_out")

    def __init__(self, cell: Cell, rank: int) -> None:
        super().__init__(cell, rank, torch.DELAY)
        self.block: Node = NOTHING
        self.changes: deque[int] = deque(maxlen=torch.CHANGES)
        self.is_burnt_out = False
        """Whether it is out from changing too often, and waits."""

    def called_for(self) -> int:
        return torch.called_for(self.block.value)

    def burns_out(self, now: int) -> bool:
        """Notes a change; tells whether it is one too many, and then looks again when its time is over."""
        self.changes.append(now)
        if not torch.burns_out(self.changes):
            return False
        self.changes.clear()
        self.pending = now + torch.OUT_FOR
        self.is_burnt_out = True
        return True

    def forget(self) -> None:
        super().forget()
        self.changes.clear()
        self.is_burnt_out = False

    def count_from(self, tick: int) -> None:
        super().count_from(tick)
        self.changes = deque((change - tick for change in self.changes), maxlen=torch.CHANGES)


class Repeater(Delayed):
    """A repeater; what stands at its sides may lock it."""

    __slots__ = ("back", "lockers")

    def __init__(self, piece: Piece, rank: int) -> None:
        super().__init__(piece.at, rank, piece.delay)
        self.back: Node = NOTHING
        self.lockers: list[Node] = []

    @property
    def locked(self) -> bool:
        """Whether a powered repeater or comparator faces it from the side."""
        return any(node.value for node in self.lockers)

    def called_for(self) -> int:
        return repeater.called_for(self.back.value)

    def look(self, now: int) -> bool:
        """A locked one drops its pending change."""
        if self.locked:
            self.pending = None
            return False
        return super().look(now)

    def when_due(self) -> int:
        return repeater.when_due(self.value, self.back.value)


class Comparator(Delayed):
    """A comparator; behind it, or behind the block behind it, may stand a container."""

    __slots__ = ("back", "mode", "sides", "through")

    def __init__(self, piece: Piece, rank: int) -> None:
        super().__init__(piece.at, rank, comparator.DELAY)
        self.mode: Mode = piece.mode
        self.back: Node = NOTHING
        self.through: Node | None = None
        """The reading of a container behind one solid block."""
        self.sides: list[Node] = []

    def called_for(self) -> int:
        back = self.back.value
        if self.through is not None:
            back = comparator.through_block(back, self.through.value)
        side = max((node.value for node in self.sides), default=0)
        return comparator.called_for(self.mode, back, side)


class Detector(Node):
    """A detector rail."""

    __slots__ = ()


NOTHING: Final = Node(Cell(0, 0, 0), -1)
"""Stands where nothing is: its value is 0 for ever."""
