"""A watch over a dry run: after each tick it looks at what changed, and keeps what is wrong."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from model.dry_run.dry_run import DryRun
from model.dry_run.findings import RunFinding, Trouble, wrong_readers
from model.dry_run.nets import Net, nets_of, sources_of
from model.dry_run.nodes import Delayed, Dust, Node, Power
from model.grid import Cell
from model.wording import QT_TR_NOOP, tr

LONG: Final = 400
"""Ticks, 20 seconds: signals that still change so long after the last cart, item or event do not settle."""


class Watch:
    """Made before tick 0; ``note`` comes after each tick."""

    def __init__(self, run: DryRun) -> None:
        self._run = run
        self._nets = nets_of(run.circuit)
        self._net_of: dict[Node, Net] = {dust: net for net in self._nets for dust in net.dust}
        self._throws = run.throws()
        self._lines: dict[Node, list[Net]] = {}
        self._wet: set[Dust] = set()
        self._dry: dict[Dust, int] = {}
        self._shared: dict[Node, list[Power]] = {}
        """What powers a block that another line can power, too."""
        self._powered_by: dict[Power, set[Node | Net]] = {}
        self._passed: dict[tuple[int, Cell], tuple[int, bool]] = {}
        self._found: dict[tuple[Trouble, Cell], RunFinding] = {}
        for finding in wrong_readers(run.plan.pieces, run.circuit):
            self._found[finding.trouble, finding.cells[0]] = finding
        for net in self._nets:
            if len(net.sources) > 1 and net.throws(self._throws.values()):
                self._watch_line(net)
        for node in run.circuit.nodes():
            if isinstance(node, Power) and node.outs:
                self._watch_power(node)

    def findings(self) -> tuple[RunFinding, ...]:
        """What was found so far, by tick."""
        found = [*self._found.values(), *self._out_of_reach()]
        return tuple(sorted(found, key=lambda finding: finding.tick))

    def note(self) -> None:
        """Looks at the tick that was done last."""
        tick = self._run.tick - 1
        for node in self._run.signals.before:
            if isinstance(node, Dust):
                self._note_dust(node, tick)
            for net in self._lines.get(node, ()):
                self._note_sources(net, tick)
            for power in self._shared.get(node, ()):
                self._note_power(power, tick)
            if isinstance(node, Delayed) and tick - self._run.last_outside > LONG:
                self._find(Trouble.NEVER_SETTLES, (node.cell,), tick, tr(_NEVER, at=node.cell))
        for torch in self._run.signals.burnt:
            if torch.is_burnt_out:
                self._find(Trouble.TORCH_BURNS_OUT, (torch.cell,), tick, tr(_BURNS, at=torch.cell))
        self._note_carts(tick)

    def _note_dust(self, dust: Dust, tick: int) -> None:
        if dust.value:
            self._wet.add(dust)
        if dust.value == 1:
            for other in dust.gives:
                if not other.value:
                    self._dry.setdefault(other, tick)

    def _out_of_reach(self) -> Iterator[RunFinding]:
        for dust, tick in self._dry.items():
            if dust not in self._wet:
                said = tr(_DRY, at=dust.cell)
                yield RunFinding(Trouble.DUST_OUT_OF_REACH, (dust.cell,), tick, said)

    def _watch_line(self, net: Net) -> None:
        for source in net.sources:
            self._lines.setdefault(source, []).append(net)
        self._note_sources(net, 0)

    def _watch_power(self, power: Power) -> None:
        """A second line need not make the power any stronger, so what feeds it is watched."""
        sources = [source for node in power.ins for source in sources_of(node)]
        if len({self._net_of.get(source, source) for source in sources}) > 1:
            for source in sources:
                self._shared.setdefault(source, []).append(power)
            self._note_power(power, 0)

    def _note_power(self, power: Power, tick: int) -> None:
        lines = self._powered_by.setdefault(power, set())
        on = (source for node in power.ins for source in sources_of(node) if source.value)
        lines.update(self._net_of.get(source, source) for source in on)
        if len(lines) > 1:
            said = tr(_TWO, at=power.cell)
            self._find(Trouble.BLOCK_FROM_TWO_LINES, (power.cell,), tick, said)

    def _note_sources(self, net: Net, tick: int) -> None:
        on = [source for source in net.sources if source.value]
        off = [source for source in net.sources if not source.value]
        if on and off:
            one, other = on[0].cell, off[0].cell
            said = tr(_TOUCH, one=one, other=other)
            self._find(Trouble.LINES_TOUCH, (net.dust[0].cell, one, other), tick, said)

    def _note_carts(self, tick: int) -> None:
        """Carts that leave a switch in the next tick go by the signal of now."""
        for cart in self._run.traffic.leaving(self._run.tick):
            cell = cart.cell
            node = self._throws.get(cell)
            if node is None:
                continue
            on = node.value > 0
            before = self._passed.setdefault((cart.train, cell), (cart.number, on))
            if before[1] != on:
                said = tr(_HOLD, at=cell, one=before[0], other=cart.number)
                self._find(Trouble.HOLD_TOO_SHORT, (cell,), tick, said)

    def _find(self, trouble: Trouble, cells: tuple[Cell, ...], tick: int, message: str) -> None:
        self._found.setdefault((trouble, cells[0]), RunFinding(trouble, cells, tick, message))


_BURNS: Final = QT_TR_NOOP("The torch at {at} changes more than 8 times in 60 ticks and burns out for 160.")
_NEVER: Final = QT_TR_NOOP("The part at {at} still changes 20 seconds after the last cart, item or event.")
_DRY: Final = QT_TR_NOOP(
    "The dust at {at} is out of reach: the dust beside it has strength 1, and it never has any."
)
_TWO: Final = QT_TR_NOOP("The block at {at} is powered from two lines.")
_TOUCH: Final = QT_TR_NOOP("Two lines meet: what is on at {one} throws what {other} throws, too.")
_HOLD: Final = QT_TR_NOOP(
    "The switch at {at} changed between the carts {one} and {other} of one train: "
    "the hold is shorter than the gap between them, or came after the first."
)
