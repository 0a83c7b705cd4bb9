"""Lines found again in any plan: dust and repeaters from their source on, to what they power.

A net of dust goes on in the net behind its repeaters, unless that one has other sources too: where several
lines run together a new one begins. Some dust is part of a circuit, such as a reader, and what its repeaters
drive begins a line: dust that a comparator looks at, and dust that has its signal from a torch, a comparator
or a detector rail and acts on more than repeaters.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from msgspec import Struct

from model.dry_run.circuit import Circuit
from model.dry_run.dust_flow import flow
from model.dry_run.nets import Net, nets_of
from model.dry_run.nodes import (
    Comparator,
    Detector,
    Dust,
    Node,
    Power,
    Repeater,
    StrongPower,
    Taker,
    Torch,
)
from model.dry_run.notices import Notices
from model.grid import Cell
from model.parts import Part
from model.plan import Plan
from model.signals.containers import STRONGEST
from model.track.layout import Layout
from model.wiring.lines.looking import heeds_power


class End(Struct, frozen=True):
    """What a line acts on: a block that it powers, or a part that it gives to."""

    at: Cell
    heeded_by: tuple[Cell, ...]
    """The parts that look at the line there."""


class FoundLine(Struct, frozen=True):
    """A line with all that is its own."""

    start: Cell
    """The dust that its source gives to; where nothing does, the one that was placed first."""
    drivers: tuple[Cell, ...]
    """The parts that give to it."""
    segments: tuple[tuple[Cell, ...], ...]
    """Its dust: that which hangs together, then that behind the next repeater, and so on."""
    repeaters: tuple[Cell, ...]
    strength: Mapping[Cell, int]
    """By the cell of its dust, while the source is on at 15."""
    ends: tuple[End, ...]

    @property
    def dust(self) -> tuple[Cell, ...]:
        """All its dust."""
        return tuple(cell for segment in self.segments for cell in segment)

    @property
    def cells(self) -> frozenset[Cell]:
        """All its dust and repeaters."""
        return frozenset((*self.dust, *self.repeaters))

    def segment_of(self, cell: Cell) -> tuple[Cell, ...]:
        """The dust that hangs together with that in a cell; none where no dust of the line lies."""
        return next((segment for segment in self.segments if cell in segment), ())


def lines(plan: Plan, layout: Layout | None = None) -> tuple[FoundLine, ...]:
    """The lines of a plan, in file order of their first dust. Each dust belongs to one of them.

    ``layout`` saves working out how the rails of the plan lie.
    """
    notices = Notices(Layout(plan) if layout is None else layout)
    return tuple(_Finder(plan, notices).found())


def line_at(found: Iterable[FoundLine], cell: Cell) -> FoundLine | None:
    """The line that has dust or a repeater in a cell."""
    return next((line for line in found if cell in line.strength or cell in line.repeaters), None)


class _Finder:
    """Puts nets together to lines."""

    def __init__(self, plan: Plan, notices: Notices) -> None:
        self._plan = plan
        self._notices = notices
        self._circuit = Circuit(plan.pieces, notices)
        self._nets = nets_of(self._circuit)
        self._net_of = {dust: net for net in self._nets for dust in net.dust}
        self._circuits = {net for net in self._nets if self._is_circuit(net)}
        """The nets that are part of something else than a line."""
        self._behind: dict[Net, list[Net]] = {}
        """By net, those in which it goes on."""

    def found(self) -> Iterator[FoundLine]:
        """The lines; in a ring of repeaters, one begins at the net that comes first in the file."""
        firsts = []
        for net in self._nets:
            before = self._net_before(net)
            if before is None:
                firsts.append(net)
            else:
                self._behind.setdefault(before, []).append(net)
        seen: set[Net] = set()
        runs = {net: list(self._run(net, seen)) for net in (*firsts, *self._nets) if net not in seen}
        for net in self._nets:
            if net in runs:
                yield self._line(runs[net])

    def _run(self, first: Net, seen: set[Net]) -> Iterator[Net]:
        """A net and all those behind it, the nearer ones first."""
        seen.add(first)
        ends = [first]
        for net in ends:
            yield net
            fresh = [other for other in self._behind.get(net, ()) if other not in seen]
            seen.update(fresh)
            ends += fresh

    def _net_before(self, net: Net) -> Net | None:
        """The net whose repeaters feed this one and nothing else does."""
        feeds = {feed for dust in net.dust for feed in dust.feeds}
        before = {self._net_driving(feed) for feed in feeds}
        if len(before) != 1:
            return None
        found = before.pop()
        return None if found is None or found is net or found in self._circuits else found

    def _is_circuit(self, net: Net) -> bool:
        """Whether a comparator looks at it, or what drives it does so for more than its repeaters."""
        outs = {out for dust in net.dust for out in dust.outs}
        if any(isinstance(out, Comparator) for out in outs):
            return True
        if not any(isinstance(source, Torch | Comparator | Detector) for source in net.sources):
            return False
        repeaters = {out for out in outs if isinstance(out, Repeater)}
        return bool(repeaters) and any(True for _ in self._ends({*net.dust, *repeaters}))

    def _net_driving(self, feed: Node) -> Net | None:
        """The net at the back of a repeater, or of the first of several in a row."""
        passed = set()
        while isinstance(feed, Repeater) and feed not in passed:
            passed.add(feed)
            feed = feed.back
        return self._net_of[feed] if isinstance(feed, Dust) and passed else None

    def _line(self, run: list[Net]) -> FoundLine:
        start = self._start(run[0])
        drivers = tuple(source.cell for source in run[0].sources)
        strength: dict[Cell, int] = {}
        repeaters: dict[Repeater, None] = {}
        for number, net in enumerate(run):
            self._switch_on(net, start if number == 0 else None)
            strength |= {dust.cell: dust.value for dust in net.dust}
            repeaters |= dict.fromkeys(() if net in self._circuits else _repeaters_behind(net))
        segments = tuple(_by_strength(net) for net in run)
        own = {*(dust for net in run for dust in net.dust), *repeaters}
        return FoundLine(
            start=start.cell,
            drivers=drivers,
            segments=segments,
            repeaters=tuple(repeater.cell for repeater in repeaters),
            strength=strength,
            ends=tuple(self._ends(own)),
        )

    @staticmethod
    def _start(net: Net) -> Dust:
        fed = [dust for dust in net.dust if dust.feeds]
        return min(fed or net.dust, key=lambda dust: dust.rank)

    @staticmethod
    def _switch_on(net: Net, start: Dust | None) -> None:
        """The first net has its sources on; one behind it, the repeaters that something reaches."""
        if start is not None:
            on = Node(start.cell, -1)
            on.value = STRONGEST
            start.feeds.append(on)
        for feed in {feed for dust in net.dust for feed in dust.feeds}:
            feed.value = STRONGEST if start is not None or _is_reached(feed) else 0
        flow(net.dust)

    def _ends(self, own: set[Node]) -> Iterator[End]:
        """What the line acts on that is not of it, in cell order."""
        heeded: dict[Cell, set[Cell]] = {}
        for node in own:
            for out in node.outs:
                if isinstance(out, Power | StrongPower):
                    heeded.setdefault(out.cell, set()).update(self._heeding(out, own))
                elif out not in own and self._heeds(out):
                    heeded.setdefault(out.cell, set()).add(out.cell)
        for cell in sorted(heeded):
            if heeded[cell] or self._plan.pieces.part_at(cell) is Part.TARGET_BLOCK:
                yield End(cell, tuple(sorted(heeded[cell])))

    def _heeding(self, block: Power | StrongPower, own: set[Node]) -> Iterator[Cell]:
        for out in block.outs:
            if isinstance(out, Power):
                yield from self._heeding(out, own)
            elif out not in own and self._heeds(out):
                yield out.cell

    def _heeds(self, node: Node) -> bool:
        return not isinstance(node, Taker) or heeds_power(self._plan.pieces, self._notices, node.cell)


def _repeaters_behind(net: Net) -> Iterator[Repeater]:
    """Those that the net's dust drives, and those in a row behind them."""
    ends: list[Node] = list(net.dust)
    seen: set[Node] = set()
    for node in ends:
        for out in node.outs:
            if isinstance(out, Repeater) and out.back is node and out not in seen:
                seen.add(out)
                ends.append(out)
                yield out


def _is_reached(feed: Node) -> bool:
    """Whether the first of a row of repeaters has a signal at its back."""
    passed = set()
    while isinstance(feed, Repeater) and feed not in passed:
        passed.add(feed)
        feed = feed.back
    return feed.value > 0


def _by_strength(net: Net) -> tuple[Cell, ...]:
    return tuple(dust.cell for dust in sorted(net.dust, key=lambda dust: (-dust.value, dust.cell)))
