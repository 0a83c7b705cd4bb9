"""A line drawn by hand: where a drag leads it, what it joins, how strong it is, and what is wrong with it."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from msgspec import Struct

from model.edits.lay_line import lay_line
from model.edits.words import part_word
from model.grid import Cell, Facing
from model.plan import Change, Plan
from model.wiring.lines.coupling import Coupling, couplings
from model.wiring.lines.coupling_words import named
from model.wiring.lines.fed_line import FedLine
from model.wiring.lines.line_joints import joints
from model.wiring.lines.lines import FoundLine
from model.wording import tr


class DrawnLine(Struct, frozen=True):
    """What a drag would lay."""

    change: Change
    strength: Mapping[Cell, int]
    """Of each new dust, while its source is on at 15."""
    repeaters: tuple[Cell, ...]
    left: int
    """The strength at the far end; 0 where it has run out before."""
    skipped: frozenset[Cell]
    """Cells of the drag that take no dust, though what is there does not belong to the line."""
    couplings: tuple[Coupling, ...]
    """What it would couple with beside what it begins and ends on."""
    dead: tuple[Cell, ...]
    """New dust that no signal reaches, the nearest first."""
    problem: str
    """The gravest thing wrong with it, as a sentence; empty where nothing is."""

    @property
    def marked(self) -> frozenset[Cell]:
        """The cells in which something is wrong."""
        return self.skipped | {coupling.cell for coupling in self.couplings} | set(self.dead[:1])


def draw_line(
    plan: Plan,
    found: Sequence[FoundLine],
    cells: Sequence[Cell],
    wired: Collection[Cell] = (),
    *,
    with_repeaters: bool = True,
) -> DrawnLine:
    """The line along a drag; ``found`` are the lines of the plan, ``wired`` the switches meant to be thrown.

    The signal runs from that end of the drag that is on to the other; where neither is, from the first. With
    repeaters, one is set at the last place where it can stand before the strength runs out. Raises
    EditRefused for cells out of reach.
    """
    fed = FedLine(plan, found, cells)
    if with_repeaters:
        fed.set_repeaters()
    repeaters = fed.repeaters
    change = lay_line(plan, cells, repeaters)
    pieces = [entry.piece for entry in change.placed]
    meant = joints(plan, found, cells)
    foreign = tuple(
        coupling
        for coupling in couplings(plan, pieces, wired)
        if meant.isdisjoint((coupling.other, coupling.through))
    )
    by_cell = fed.strength
    dead = tuple(cell for cell in fed.order if by_cell.get(cell) == 0)
    skipped = frozenset(cell for cell in fed.skipped if cell not in meant)
    last = next((cell for cell in reversed(fed.order) if cell in by_cell), None)
    return DrawnLine(
        change=change,
        strength=by_cell,
        repeaters=tuple(cell for cell in fed.order if cell in repeaters),
        left=0 if last is None else by_cell[last],
        skipped=skipped,
        couplings=foreign,
        dead=dead,
        problem=_problem(plan, skipped, foreign, dead),
    )


def _problem(plan: Plan, skipped: frozenset[Cell], foreign: Sequence[Coupling], dead: Sequence[Cell]) -> str:
    if skipped:
        first = min(skipped)
        if first in plan.pieces:
            return tr("The {names} is in the way.", names=named(plan.pieces, first))
        below = plan.pieces.get(first.beside(Facing.DOWN))
        what = tr("the line itself") if below is None else tr("the {part} below", part=part_word(below.part))
        return tr("At {first} {what} leaves no room for a block under the dust.", first=first, what=what)
    if foreign:
        return foreign[0].why
    return tr("No signal comes as far as {dead}.", dead=dead[0]) if dead else ""
