"""How strong new dust would be while every source is on."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from model.dry_run.circuit import Circuit
from model.dry_run.dust_flow import flow
from model.dry_run.nets import nets_of
from model.dry_run.nodes import Dust, Node, Repeater
from model.dry_run.notices import Notices
from model.grid import Cell
from model.pieces import Piece, Pieces
from model.plan import EMPTY_PLAN, Plan
from model.signals.containers import STRONGEST
from model.track.layout import Layout
from model.wiring.lines.looking import pieces_near


class Strengths:
    """New dust and repeaters over the pieces near them, with what they get."""

    def __init__(self, near: Iterable[Piece], new: Iterable[Piece], known: Mapping[Cell, int]) -> None:
        """``known`` is the strength of the dust that there is; where it is left out, none."""
        pieces = list(new)
        whole = Pieces.of([*near, *pieces])
        # Which rails get notice does not matter here, so it is not worked out.
        self._circuit = Circuit(whole, Notices(Layout(EMPTY_PLAN)))
        outputs = self._circuit.outputs
        own = {piece.at: outputs[piece.at] for piece in pieces if piece.at in outputs}
        self._dust = [node for node in own.values() if isinstance(node, Dust)]
        self._repeaters = [node for node in own.values() if isinstance(node, Repeater)]
        for cell, node in outputs.items():
            if cell not in own:
                node.value = known.get(cell, 0) if isinstance(node, Dust) else STRONGEST
        self._run()

    @property
    def by_cell(self) -> dict[Cell, int]:
        """The strength of each new dust."""
        return {dust.cell: dust.value for dust in self._dust}

    def feed(self, cell: Cell) -> None:
        """As if a source stood beside the new dust in a cell."""
        source = Node(cell, -1)
        source.value = STRONGEST
        next(dust for dust in self._dust if dust.cell == cell).feeds.append(source)
        self._run()

    def holds_itself(self) -> Cell | None:
        """A new repeater that dust leads back to from its front, so that what is on would stay on."""
        net_of = {dust: net for net in nets_of(self._circuit) for dust in net.dust}
        for repeater in self._repeaters:
            fronts = {net_of[out] for out in repeater.outs if isinstance(out, Dust)}
            if isinstance(repeater.back, Dust) and net_of[repeater.back] in fronts:
                return repeater.cell
        return None

    def _run(self) -> None:
        """Dust follows its sources, and repeaters the dust, until nothing changes."""
        pending = True
        while pending:
            for strong in self._circuit.strong.values():
                strong.value = strong.called_for()
            flow(self._dust)
            for power in self._circuit.power.values():
                power.value = power.called_for()
            turned = [each for each in self._repeaters if each.called_for() != each.value]
            for repeater in turned:
                repeater.value = repeater.called_for()
            pending = bool(turned)


def near_cells(plan: Plan, cells: Iterable[Cell]) -> Pieces:
    """The pieces of a plan that dust and blocks in these cells can have to do with."""
    known = list(cells)
    return pieces_near(plan.pieces, [*known, *(cell.moved(dy=-1) for cell in known)])
