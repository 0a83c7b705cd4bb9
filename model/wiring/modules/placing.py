"""Putting a module down by hand: anywhere, as long as nothing stands in the way and nothing couples."""

from __future__ import annotations

from msgspec import Struct

from model.edits.changes import appended
from model.edits.words import part_word
from model.grid import Cell
from model.pieces import Piece, Placed
from model.plan import Change, Plan
from model.wiring.lines.coupling import Coupling, couplings
from model.wiring.modules.fitting import in_place_of
from model.wiring.modules.modules import Module
from model.wording import tr


class Placing(Struct, frozen=True):
    """A module over a plan: what putting it down would do, and why it may not be."""

    change: Change
    """The change that puts it down, "Place module latch"; for looking at only where there is a problem."""
    in_the_way: tuple[Cell, ...] = ()
    """Cells with pieces in whose place the module's may not come."""
    couplings: tuple[Coupling, ...] = ()
    """What it would couple with, but through its ports."""

    @property
    def problem(self) -> str | None:
        """The sentence that says why it may not be put down; ``None`` where it may."""
        if self.in_the_way:
            first, more = self.in_the_way[0], len(self.in_the_way) - 1
            word = next(part_word(entry.piece.part) for entry in self.change.taken if entry.piece.at == first)
            if more:
                return tr(
                    "The {word} at {first} stands in the way, and {more} more.",
                    word=word,
                    first=first,
                    more=more,
                )
            return tr("The {word} at {first} stands in the way.", word=word, first=first)
        return self.couplings[0].why if self.couplings else None

    @property
    def marked(self) -> frozenset[Cell]:
        """The cells of the module in which something is wrong."""
        return frozenset((*self.in_the_way, *(coupling.cell for coupling in self.couplings)))


def place_module(plan: Plan, module: Module) -> Placing:
    """What putting the module down would do.

    A block or rail in whose place a piece of the module may come gives it its rank, and one that is as good
    stays; all other pieces come last, in the module's order. Raises EditRefused where the module would come
    out of reach or the plan would have too many pieces.
    """
    taken: list[Placed] = []
    replaced: list[Placed] = []
    new: list[Piece] = []
    in_the_way: list[Cell] = []
    for piece in module.pieces:
        there = plan.pieces.placed(piece.at)
        if there is None:
            new.append(piece)
            continue
        better = in_place_of(plan.pieces, there.piece, piece)
        if better is None:
            in_the_way.append(piece.at)
        if better != there.piece:
            taken.append(there)
            replaced.append(Placed(there.rank, piece if better is None else better))
    added = appended(plan, tr("Place module {module}", module=module.name), new)
    change = Change(added.label, tuple(taken), (*replaced, *added.placed))
    return Placing(change, tuple(in_the_way), () if in_the_way else _foreign(plan, module, change))


def _foreign(plan: Plan, module: Module, change: Change) -> tuple[Coupling, ...]:
    """What the module would couple with otherwise than through a port."""
    ports = {port.at for port in module.ports}
    pieces = [entry.piece for entry in change.placed]
    return tuple(
        coupling
        for coupling in couplings(plan, pieces)
        if ports.isdisjoint((coupling.other, coupling.through))
    )
