"""From a plan to the steps in which it is built."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence

from model.collector import collector_paused
from model.grid import Cell
from model.parts import CARRIERS, RAILS, SIGNAL_PARTS
from model.pieces import Piece, rests_on
from model.plan import Plan
from model.steps.areas import Area, areas
from model.steps.bound import ordered_rails
from model.steps.facing import facing_marks
from model.steps.laying import laid_in_runs
from model.steps.reasons import why_rails_wait, why_signals_wait, why_uncarried
from model.steps.runs import Run
from model.steps.sights import sight_of_area, sight_of_run
from model.steps.signals import rails_before, rails_touched
from model.steps.step import Step
from model.steps.words import title_of_area, title_of_run
from model.steps.world import World
from model.track.layout import Layout
from model.track.rails import pack, unpack
from model.track.shapes import Shape
from model.track.switches import PowerStates, power_states


def build_steps(plan: Plan, layout: Layout | None = None) -> tuple[Step, ...]:
    """The steps in which to build a plan: placed one after another they give all of it as built.

    On each level what carries comes first, then the rails, then the signal parts. ``layout`` is that of the
    plan, where there is one already.
    """
    with collector_paused():
        return tuple(_Building(plan, Layout(plan) if layout is None else layout).steps())


ByLevel = dict[int, list[Piece]]


class _Building:
    """A plan that is built. A stage is the highest level that has been begun."""

    def __init__(self, plan: Plan, layout: Layout) -> None:
        self._pieces = plan.pieces
        self._layout = layout
        self._runs: dict[int, list[Run]] = {}
        self._stage_of: dict[int, int] = {}
        self._step_of: dict[int, int] = {}
        self._world = World(layout)
        self._number = 0
        runs = laid_in_runs(plan, layout)
        for run in runs:
            self._runs.setdefault(run.stage, []).append(run)
            self._stage_of |= dict.fromkeys(run.keys, run.stage)
        laid = [self._rail(key) for run in runs for key in run.keys]
        self._marks = facing_marks(plan, laid, ordered_rails(plan))

    def steps(self) -> Iterator[Step]:
        """All steps."""
        carriers, signals = self._what_is_no_rail()
        for stage in sorted({*carriers, *self._runs, *signals}):
            yield from map(self._area_step, areas(carriers.get(stage, ())))
            for run in self._runs.get(stage, ()):
                yield from (self._run_step(part, run, faced=faced) for part, faced in self._parts(run))
            for level, pieces in sorted(signals.get(stage, {}).items()):
                yield from (self._area_step(area, late=level < stage) for area in areas(pieces))

    def _what_is_no_rail(self) -> tuple[ByLevel, dict[int, ByLevel]]:
        """What carries, by level, and signal parts, by the stage at which they may be placed and by level."""
        carriers: ByLevel = {}
        signals: dict[int, ByLevel] = {}
        for piece in self._pieces:
            if piece.part in CARRIERS:
                carriers.setdefault(piece.at.y, []).append(piece)
            elif piece.part not in RAILS:
                signals.setdefault(self._stage(piece), {}).setdefault(piece.at.y, []).append(piece)
        return carriers, signals

    def _stage(self, piece: Piece) -> int:
        stages = [self._stage_of[pack(cell)] for cell in rails_before(self._layout, piece)]
        support = rests_on(piece)
        if support is not None and support in self._pieces:
            stages.append(support.y)
        return max((piece.at.y, *stages))

    def _rail(self, key: int) -> Piece:
        piece = self._pieces.get(unpack(key))
        assert piece is not None
        return piece

    def _parts(self, run: Run) -> Iterator[tuple[list[Piece], bool]]:
        """A run in parts, and whether the facing matters: if so all of the part face alike."""
        pieces = [*map(self._rail, run.keys)]
        seen = self._world.shows_facing(pieces)
        part: list[Piece] = []
        faced = False
        for piece in pieces:
            matters = seen or piece.at in self._marks
            if part and (faced or matters) and any(other.facing is not piece.facing for other in part):
                yield part, faced
                part, faced = [], False
            part.append(piece)
            faced = faced or matters
        yield part, faced

    def _run_step(self, pieces: Sequence[Piece], run: Run, *, faced: bool) -> Step:
        sight = self._world.lay(pieces)
        why = [] if run.after is None else [why_rails_wait(unpack(run.after), self._step_of[run.after])]
        step = self._step(pieces, title_of_run(pieces, faced=faced), why, sight_of_run(sight), sight.shapes)
        self._step_of |= {pack(piece.at): step.number for piece in pieces}
        return step

    def _area_step(self, area: Area, *, late: bool = False) -> Step:
        why = [self._why_late(area.pieces)] if late else []
        return self._step(area.pieces, title_of_area(area), why, sight_of_area(area, self._noticed(area)), {})

    def _why_late(self, pieces: Sequence[Piece]) -> str:
        touched = self._above(pieces, lambda piece: rails_touched(self._pieces, piece))
        near = self._above(pieces, lambda piece: rails_before(self._layout, piece))
        return why_signals_wait(touched, near, self._above(pieces, lambda piece: [rests_on(piece)]))

    def _above(
        self, pieces: Sequence[Piece], cells: Callable[[Piece], Iterable[Cell | None]]
    ) -> Sequence[Cell]:
        """Of cells around pieces those in which something is placed after the next level has been begun."""
        level = pieces[0].at.y
        found = dict.fromkeys(cell for piece in pieces for cell in cells(piece) if cell is not None)
        return [cell for cell in found if self._stage_of.get(pack(cell), cell.y) > level]

    def _noticed(self, area: Area) -> dict[Cell, PowerStates]:
        """The three-way rails that notice of signal parts may turn, with what becomes of them."""
        signals = (piece for piece in area.pieces if piece.part in SIGNAL_PARTS)
        cells = dict.fromkeys(cell for piece in signals for cell in rails_touched(self._pieces, piece))
        states = {cell: power_states(self._layout, cell) for cell in cells}
        return {cell: both for cell, both in states.items() if both.is_switch or self._settles(cell, both)}

    def _settles(self, cell: Cell, states: PowerStates) -> bool:
        return states.resting is not self._layout.shape(cell)

    def _step(
        self, pieces: Sequence[Piece], title: str, why: Sequence[str], see: str, shapes: dict[Cell, Shape]
    ) -> Step:
        self._number += 1
        reasons = " ".join((*why, *why_uncarried(self._layout, pieces)))
        return Step(self._number, pieces[0].at.y, title, tuple(pieces), reasons or None, see, shapes)
