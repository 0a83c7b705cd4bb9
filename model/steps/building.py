"""From a plan to the steps in which it is built."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from model.collector import collector_paused
from model.grid import Cell, Heading
from model.parts import CARRIERS, RAILS
from model.pieces import Piece, rests_on
from model.plan import Plan
from model.steps.areas import Area, areas
from model.steps.bound import ordered_rails
from model.steps.facing import facing_marks
from model.steps.laying import laid_in_runs
from model.steps.runs import Run
from model.steps.signals import rails_before, rails_touched
from model.steps.step import Step
from model.steps.words import places, sight_of_area, sight_of_run, title_of_area, title_of_run
from model.track.layout import Layout
from model.track.rails import pack, unpack
from model.track.settling import place
from model.track.shapes import Shape


def build_steps(plan: Plan, layout: Layout | None = None) -> tuple[Step, ...]:
    """The steps in which to build a plan: placed one after another they give all of it as built.

    On each level what carries comes first, then the rails, then the signal parts. ``layout`` is that of the
    plan, where there is one already.
    """
    with collector_paused():
        return tuple(_Building(plan, layout or Layout(plan)).steps())


class _Building:
    """The world as it is built up step by step."""

    def __init__(self, plan: Plan, layout: Layout) -> None:
        self._plan = plan
        self._layout = layout
        self._runs = laid_in_runs(plan, layout)
        laid = [self._piece(key) for run in self._runs for key in run.keys]
        self._marks = facing_marks(plan, laid, ordered_rails(plan))
        self._stage_of = {key: run.stage for run in self._runs for key in run.keys}
        self._shapes: dict[int, Shape] = {}
        self._number = 0
        self._step_of: dict[int, int] = {}

    def steps(self) -> Iterator[Step]:
        """All steps."""
        carriers, others = self._by_stage()
        runs: dict[int, list[Run]] = {}
        for run in self._runs:
            runs.setdefault(run.stage, []).append(run)
        for stage in sorted({*carriers, *others, *runs}):
            yield from (self._area_step(area, stage) for area in areas(carriers.get(stage, ())))
            for run in runs.get(stage, ()):
                yield from (self._run_step(pieces, run) for pieces in self._split(run))
            levels: dict[int, list[Piece]] = {}
            for piece in others.get(stage, ()):
                levels.setdefault(piece.at.y, []).append(piece)
            for level in sorted(levels):
                yield from (self._area_step(area, stage) for area in areas(levels[level]))

    def _by_stage(self) -> tuple[dict[int, list[Piece]], dict[int, list[Piece]]]:
        """What carries, and the signal parts, by the level that has been begun when they are placed."""
        carriers: dict[int, list[Piece]] = {}
        others: dict[int, list[Piece]] = {}
        for piece in self._plan.pieces:
            if piece.part in CARRIERS:
                carriers.setdefault(piece.at.y, []).append(piece)
            elif piece.part not in RAILS:
                others.setdefault(self._stage(piece), []).append(piece)
        return carriers, others

    def _stage(self, piece: Piece) -> int:
        stages = [self._stage_of[pack(cell)] for cell in rails_before(self._layout, piece)]
        support = rests_on(piece)
        if support is not None and self._plan.pieces.part_at(support) in CARRIERS:
            stages.append(support.y)
        return max(piece.at.y, *stages) if stages else piece.at.y

    def _piece(self, key: int) -> Piece:
        piece = self._plan.pieces.get(unpack(key))
        assert piece is not None
        return piece

    def _split(self, run: Run) -> Iterator[list[Piece]]:
        """A run in parts: where a facing matters all of the part must face so."""
        part: list[Piece] = []
        marked = False
        for key in run.keys:
            piece = self._piece(key)
            marks = piece.at in self._marks
            if part and (marked or marks) and any(other.facing is not piece.facing for other in part):
                yield part
                part, marked = [], False
            part.append(piece)
            marked = marked or marks
        yield part

    def _run_step(self, pieces: Sequence[Piece], run: Run) -> Step:
        written: dict[int, Shape | None] = {}
        world = _Watched(self._shapes, written)
        for piece in pieces:
            heading = piece.facing.heading or Heading.NORTH
            place(world, self._layout.straight_only, pack(piece.at), heading)
        laid = {piece.at: self._shapes[pack(piece.at)] for piece in pieces}
        bent = {
            unpack(key): (was, self._shapes[key])
            for key, was in written.items()
            if was is not None and self._shapes[key] is not was
        }
        shapes = laid | {cell: after for cell, (_, after) in bent.items()}
        later = {cell for cell, shape in shapes.items() if self._layout.rails[pack(cell)] is not shape}
        self._number += 1
        for piece in pieces:
            self._step_of[pack(piece.at)] = self._number
        return Step(
            self._number,
            pieces[0].at.y,
            title_of_run(pieces, faced=any(piece.at in self._marks for piece in pieces)),
            tuple(pieces),
            self._why_run(pieces, run),
            sight_of_run(laid, bent, later),
            shapes,
        )

    def _why_run(self, pieces: Sequence[Piece], run: Run) -> str | None:
        said = []
        if run.after is not None:
            number = self._step_of[run.after]
            blocker = f"{unpack(run.after)} (step {number:,})"
            said.append(f"It comes after {blocker}: laid before it, the rails would lie otherwise.")
        return " ".join([*said, *self._uncarried(pieces)]) or None

    def _area_step(self, area: Area, stage: int) -> Step:
        self._number += 1
        level = area.pieces[0].at.y
        return Step(
            self._number,
            level,
            title_of_area(area),
            area.pieces,
            self._why_area(area.pieces, late=level < stage),
            sight_of_area(area),
            {},
        )

    def _why_area(self, pieces: Sequence[Piece], *, late: bool) -> str | None:
        said = []
        if late:
            said.append(self._why_late(pieces))
        return " ".join([*said, *self._uncarried(pieces)]) or None

    def _why_late(self, pieces: Sequence[Piece]) -> str:
        touched = list(
            dict.fromkeys(
                cell
                for piece in pieces
                for cell in rails_touched(self._plan.pieces, piece)
                if cell.y > piece.at.y
            )
        )
        if touched:
            return f"Placed before, it would give its signal to {places(touched)} while the rails are laid."
        held = [cell for piece in pieces if (cell := rests_on(piece)) is not None and cell.y > piece.at.y]
        if held:
            return f"It hangs from {places(held)}."
        return "Placed before, it would turn a rail while others are laid beside it."

    def _uncarried(self, pieces: Iterable[Piece]) -> Iterator[str]:
        cells: list[Cell] = []
        for piece in pieces:
            needed = [rests_on(piece)]
            shape = self._layout.rails.get(pack(piece.at))
            if shape is not None and shape.rises_to is not None:
                needed.append(piece.at.step(shape.rises_to))
            cells += [c for c in needed if c is not None and self._plan.pieces.part_at(c) not in CARRIERS]
        if cells:
            yield f"The plan has nothing that carries it at {places(cells)}."


class _Watched:
    """Rails that note what a cell held before it was first written."""

    __slots__ = ("_before", "_rails", "get")

    def __init__(self, rails: dict[int, Shape], before: dict[int, Shape | None]) -> None:
        self._rails = rails
        self._before = before
        self.get = rails.get

    def __setitem__(self, key: int, shape: Shape, /) -> None:
        if key not in self._before:
            self._before[key] = self._rails.get(key)
        self._rails[key] = shape
