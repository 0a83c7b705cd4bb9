"""A line drawn by hand: where a drag leads it, what it joins, how strong it is, and what is wrong with it."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from itertools import islice
from typing import Final

from msgspec import Struct

from model.edits.lay_line import is_free_for_line, lay_line
from model.edits.words import part_word
from model.grid import FACING_OF, VECTORS, Cell, Facing, Heading
from model.pieces import Piece
from model.plan import Change, Plan
from model.wiring.lines.coupling import Coupling, couplings
from model.wiring.lines.coupling_words import named
from model.wiring.lines.line_joints import joints
from model.wiring.lines.lines import FoundLine
from model.wiring.lines.strengths import Strengths, near_cells
from model.wording import tr

TRIES: Final = 4
"""Places at which a repeater is tried before a line is left to run out."""


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
    drawing = _Drawing(plan, found, cells)
    if with_repeaters:
        drawing.set_repeaters()
    repeaters = drawing.repeaters
    change = lay_line(plan, cells, repeaters)
    pieces = [entry.piece for entry in change.placed]
    meant = joints(plan, found, cells)
    foreign = tuple(
        coupling
        for coupling in couplings(plan, pieces, wired)
        if meant.isdisjoint((coupling.other, coupling.through))
    )
    by_cell = drawing.strengths.by_cell
    dead = tuple(cell for cell in drawing.order if by_cell.get(cell) == 0)
    skipped = frozenset(cell for cell in drawing.skipped if cell not in meant)
    last = next((cell for cell in reversed(drawing.order) if cell in by_cell), None)
    return DrawnLine(
        change=change,
        strength=by_cell,
        repeaters=tuple(cell for cell in drawing.order if cell in repeaters),
        left=0 if last is None else by_cell[last],
        skipped=skipped,
        couplings=foreign,
        dead=dead,
        problem=_problem(plan, skipped, foreign, dead),
    )


class _Drawing:
    """A drag, in the order in which the signal runs."""

    def __init__(self, plan: Plan, found: Sequence[FoundLine], cells: Sequence[Cell]) -> None:
        self._plan = plan
        self._cells = cells
        self.order = tuple(dict.fromkeys(cells))
        self._near = near_cells(plan, cells)
        driven = [line for line in found if line.drivers]
        self._known = {cell: strength for line in driven for cell, strength in line.strength.items()}
        self._source: Cell | None = None
        """The first dust, where nothing drives the line."""
        free = [cell for cell in self.order if is_free_for_line(plan, cells, cell)]
        self.skipped = frozenset(cell for cell in self.order if cell not in free)
        self.repeaters: dict[Cell, Facing] = {}
        self.strengths = self._with(self.repeaters)
        if free:
            self._find_source(found, free)

    def _find_source(self, found: Sequence[FoundLine], free: Sequence[Cell]) -> None:
        """Sees to it that there is a source, and turns the order round where it is at the other end."""
        if not self._is_fed:
            # What nothing drives is as strong as its own first dust would make it.
            self._known |= {cell: each for line in found for cell, each in line.strength.items()}
            self.strengths = self._with(self.repeaters)
        if not self._is_fed:
            self._source = free[0]
            self.strengths = self._with(self.repeaters)
        strength = self.strengths.by_cell
        if strength[free[-1]] > strength[free[0]]:
            self.order = self.order[::-1]

    @property
    def _is_fed(self) -> bool:
        return any(self.strengths.by_cell.values())

    def _with(self, repeaters: Mapping[Cell, Facing]) -> Strengths:
        """How strong it is with these repeaters in the place of dust."""
        pieces: list[Piece] = [entry.piece for entry in lay_line(self._plan, self._cells, repeaters).placed]
        made = Strengths(self._near, pieces, self._known)
        if self._source is not None:
            made.feed(self._source)
        return made

    def set_repeaters(self) -> None:
        """Sets repeaters that keep the line alive, as far as they can."""
        while (end := self._first_dead(self.strengths)) is not None and self._set_before(end):
            pass

    def _first_dead(self, strengths: Strengths) -> int | None:
        by_cell = strengths.by_cell
        return next((at for at, cell in enumerate(self.order) if by_cell.get(cell) == 0), None)

    def _set_before(self, end: int) -> bool:
        """Sets a repeater at the last place up to where the strength ends; whether there is one."""
        for at in islice(self._places_before(end), TRIES):
            facing = self._straight_through(at)
            assert facing is not None
            repeaters = {**self.repeaters, self.order[at]: facing}
            made = self._with(repeaters)
            dead = self._first_dead(made)
            # Beyond what stands in the way no repeater helps.
            if made.holds_itself() is None and (dead is None or dead > end):
                self.repeaters, self.strengths = repeaters, made
                return True
        return False

    def _places_before(self, end: int) -> Iterator[int]:
        """Where the line runs straight from dust that is alive, the last place first."""
        strength = self.strengths.by_cell
        for at in range(end, 0, -1):
            before, cell = self.order[at - 1 : at + 1]
            is_alive = strength.get(before) or self._known.get(before)
            if cell in strength and is_alive and self._straight_through(at) is not None:
                yield at

    def _straight_through(self, at: int) -> Facing | None:
        """The way the line runs through a place, where it neither bends nor climbs there."""
        if at + 1 >= len(self.order):
            return None
        before, cell, after = self.order[at - 1 : at + 2]
        step = (cell.x - before.x, cell.y - before.y, cell.z - before.z)
        onward = (after.x - cell.x, after.y - cell.y, after.z - cell.z)
        if step != onward or step[1] or (step[0], step[2]) not in VECTORS:
            return None
        return FACING_OF[Heading(VECTORS.index((step[0], step[2])))]


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
