"""One line wired anew: it is taken away and led another way from its start to the same ends."""

from __future__ import annotations

from collections.abc import Collection, Generator, Iterator
from typing import Final

from msgspec import Struct

from model.edits.changes import appended, selected
from model.grid import Cell, Facing, Heading
from model.parts import RAILS, Part
from model.plan import Change, Plan
from model.progress import Progress
from model.wiring.laying.ground import Ground
from model.wiring.laying.laid import Laid, Limits, Line, Routed
from model.wiring.laying.laying import lay_lines
from model.wiring.lines.coupling import couplings
from model.wiring.lines.coupling_words import named
from model.wiring.lines.lines import FoundLine
from model.wiring.lines.own_supports import own_supports
from model.wiring.proof.proof import prove
from model.wording import QT_TR_NOOP, tr

LABEL: Final = QT_TR_NOOP("Re-wire line")
GROW: Final = 1
DEPTH: Final = 6
TRIES: Final = 6
"""Seeds that are tried: each leads the line in another order of its ends, or round other corners."""


class Rewired(Struct, frozen=True):
    """What came of wiring a line anew."""

    change: Change | None
    """``None`` where the line stays as it is."""
    message: str
    """How much shorter it is, or why it stays, as a sentence."""


def rewire(plan: Plan, line: FoundLine, wired: Collection[Cell] = ()) -> Iterator[Progress | Rewired]:
    """Wires a line anew; the last that comes is the result. A caller may stop between two.

    It ends at the same target blocks, at none of them later than before, and the result is only given where
    it takes fewer pieces, or where some end of the line was out of reach; and where the wanted routes are as
    good as before in the dry run. ``wired`` are the switches meant to be thrown. It goes below the track, as
    far as wiring a whole junction may, or as far as the line went.
    """
    problem = _why_not(plan, line)
    if problem:
        yield Rewired(None, problem)
        return
    taken = line.cells | own_supports(plan.pieces, line)
    rest = Plan(plan.pieces.replaced(selected(plan, taken), ()), plan.details)
    ground = _ground(rest, line, taken)
    wanted = Line("line", line.start, tuple((end.at,) for end in line.ends))
    limits = _limits(plan, line)
    best: Laid | None = None
    reason = ""
    for seed in range(TRIES):
        yield Progress("lines", seed, TRIES)
        for step in lay_lines(ground, [wanted], seed, limits):
            if isinstance(step, Progress):
                yield Progress("lines", seed, TRIES)
            else:
                found, reason = _checked(rest, line, step, wired, reason)
                best = min((each for each in (best, found) if each), key=_size, default=None)
    result = _result(plan, line, taken, best, reason)
    if result.change is not None and plan.routes:
        fault = yield from _new_fault(plan, result.change.applied(plan))
        if fault:
            result = Rewired(
                None, tr("The line stays as it is. Led anew it failed in the dry run: {fault}.", fault=fault)
            )
    yield result


def _new_fault(plan: Plan, after: Plan) -> Generator[Progress, None, str]:
    """What goes wrong in a dry run of the wanted routes and did not before; empty where nothing does."""
    failed = yield from _failed(after)
    known = set((yield from _failed(plan)) if failed else ())
    return next((fault for fault in failed if fault not in known), "")


def _failed(plan: Plan) -> Generator[Progress, None, tuple[str, ...]]:
    failed: tuple[str, ...] = ()
    for proof in prove(plan):
        yield Progress("proof", proof.runs, proof.of)
        failed = proof.failed
    return failed


def _why_not(plan: Plan, line: FoundLine) -> str:
    if not any(piece.part in RAILS for piece in plan.pieces):
        return tr("Lines are wired below track, and there is no track here.")
    if not line.ends:
        return tr("The line acts on nothing, so there is nowhere to lead it to.")
    for end in line.ends:
        if plan.pieces.part_at(end.at) is not Part.TARGET_BLOCK or not _dust_beside(line, end.at):
            where = named(plan.pieces, end.at)
            return tr(
                "The line acts on the {where}; only lines that end beside target blocks are wired anew.",
                where=where,
            )
    return ""


def _dust_beside(line: FoundLine, block: Cell) -> list[Cell]:
    return [cell for side in Heading if (cell := block.step(side)) in line.strength]


def _ground(rest: Plan, line: FoundLine, taken: Collection[Cell]) -> Ground:
    """The ground without the line, as wide and deep as it went, open where the line starts."""
    rails = [piece.at for piece in rest.pieces if piece.part in RAILS]
    xs, zs = [rail.x for rail in rails], [rail.z for rail in rails]
    lowest = min(rail.y for rail in rails)
    depth = max(DEPTH, *(lowest - cell.y for cell in taken))
    wide = [max(min(xs) - x, x - max(xs), min(zs) - z, z - max(zs)) for x, _, z in taken]
    ground = Ground(rest, max(GROW, *wide), depth)
    # What drives the line bars its start to others; that nothing else does is looked at afterwards.
    ground.dust_barred.discard(line.start)
    return ground


def _limits(plan: Plan, line: FoundLine) -> Limits:
    """The delay to each end as it is now, where a signal comes there at all."""
    reached = _delays(plan, line)
    limits = {}
    for place, end in enumerate(line.ends):
        live = [reached[cell] for cell in _dust_beside(line, end.at) if line.strength[cell]]
        if live:
            limits["line", place] = min(live)
    return limits


def _delays(plan: Plan, line: FoundLine) -> dict[Cell, int]:
    """Ticks from the start of the line to each of its dust."""
    delays = dict.fromkeys(line.segments[0], 0)
    behind = {cell: segment for segment in line.segments for cell in segment}
    waiting = [plan.pieces.get(cell) for cell in line.repeaters]
    for _ in line.repeaters:
        for piece in waiting:
            assert piece is not None
            since = delays.get(piece.at.beside(piece.facing.opposite))
            if since is None:
                continue
            front = piece.at.beside(piece.facing)
            for cell in (piece.at, *behind.get(front, ())):
                delays[cell] = min(delays.get(cell, since + piece.delay), since + piece.delay)
    return delays


def _checked(
    rest: Plan, line: FoundLine, routed: Routed, wired: Collection[Cell], reason: str
) -> tuple[Laid | None, str]:
    """What was laid, when it couples with nothing but its ends and its source; else why not."""
    if not routed.laid:
        return None, routed.failed[0].reason
    laid = routed.laid[0]
    meant = {*line.drivers, *(end.at for end in line.ends), line.start.beside(Facing.DOWN)}
    for coupling in couplings(rest, laid.pieces, wired):
        if meant.isdisjoint((coupling.other, coupling.through)):
            return None, coupling.why
    return laid, reason


def _size(laid: Laid) -> tuple[int, int, int]:
    """First how long it is, then how many of it are repeaters, then what it takes with its blocks."""
    return laid.dust + laid.repeaters, laid.repeaters, len(laid.pieces)


def _result(plan: Plan, line: FoundLine, taken: Collection[Cell], best: Laid | None, reason: str) -> Rewired:
    if best is None:
        return Rewired(None, tr("The line stays as it is. {reason}", reason=reason))
    before, after = (len(line.cells), len(line.repeaters), len(taken)), _size(best)
    is_alive = all(any(line.strength[cell] for cell in _dust_beside(line, end.at)) for end in line.ends)
    if is_alive and after >= before:
        return Rewired(
            None, tr("No shorter way was found; the line keeps its {length}.", length=_length(*_counts(line)))
        )
    change = appended(plan, tr(LABEL), best.pieces)
    old = selected(plan, {*taken, *(entry.piece.at for entry in change.taken)})
    length, before_length = _length(best.dust, best.repeaters), _length(*_counts(line))
    return Rewired(
        Change(tr(LABEL), tuple(old), change.placed),
        tr("The line is wired anew: {length} instead of {before}.", length=length, before=before_length),
    )


def _counts(line: FoundLine) -> tuple[int, int]:
    return len(line.dust), len(line.repeaters)


def _length(dust: int, repeaters: int) -> str:
    if not repeaters:
        return tr("{dust} dust", dust=dust)
    return tr("{dust} dust and {repeaters}", dust=dust, repeaters=tr("%n repeater(s)", "", repeaters))
