"""A booster rail that no signal can reach."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import Final

from model.grid import Cell, Facing, Heading
from model.parts import SIGNAL_PARTS, TRAITS, Part
from model.pieces import Piece, Pieces, rests_on
from model.routing.junction import Junction
from model.rules.rule import Found, Nearby, Rule, Severity
from model.signals.dust import links
from model.track.around import linked_rails
from model.track.layout import Layout
from model.wording import tr

REACH: Final = 8
"""Boosters to which a run of boosters passes a signal on, each way."""


def find(junction: Junction) -> Iterator[Found]:
    """No signal part beside it or on a block that it touches, and none within 8 boosters along its run.

    A part that powers such a block from below or from the side counts as one on it.

    Bad::

        level 64 on blocks
        ─═─

    Good::

        level 64 on blocks
        ─═─
        ·T·
    """
    boosters = [piece.at for piece in junction.plan.pieces if piece.part is Part.BOOSTER_RAIL]
    yield from _unpowered(junction.layout, boosters, boosters)


def _unpowered(layout: Layout, boosters: Iterable[Cell], givers: Iterable[Cell]) -> Iterator[Found]:
    """Those that no signal reaches; ``givers`` are the boosters that may pass one on to them."""
    pieces = layout.plan.pieces
    reached = _along_runs(layout, [cell for cell in givers if _is_beside_signal(pieces, cell)], linked_rails)
    for cell in boosters:
        if cell not in reached:
            yield Found(
                tr("The booster rail at {cell} gets no signal and brakes every cart.", cell=cell), (cell,)
            )


def _unpowered_at(layout: Layout, cells: Iterable[Cell]) -> Iterator[Found]:
    boosters = _boosters(layout, cells)
    return _unpowered(layout, boosters, _along_runs(layout, boosters, _linked_from))


def _along_changed_runs(layout: Layout, changed: frozenset[Cell]) -> set[Cell]:
    """The boosters that see a changed block, link or dust, and those to which these pass a signal on."""
    if not layout.straight_only:
        return {*changed}
    near = {cell.moved(dx, dy, dz) for cell in changed for dx, dy, dz in _SEEN}
    return {*changed, *_along_runs(layout, _boosters(layout, near), linked_rails)}


_SEEN: Final = tuple(
    (x, y, z) for x in range(-3, 4) for y in range(-3, 4) for z in range(-3, 4) if abs(x) + abs(z) <= 3
)
"""Around a booster: the block that it touches, the part that powers this, and what that part is linked to."""


def _boosters(layout: Layout, cells: Iterable[Cell]) -> list[Cell]:
    part_at = layout.plan.pieces.part_at
    return [cell for cell in cells if part_at(cell) is Part.BOOSTER_RAIL]


def _along_runs(
    layout: Layout, sources: Iterable[Cell], linked: Callable[[Layout, Cell], Iterable[Cell]]
) -> set[Cell]:
    """The boosters given and those that can be reached from them along runs, as far as a signal is passed."""
    reached = set(sources)
    edge = list(reached)
    for _ in range(REACH):
        beyond = {other for cell in edge for other in linked(layout, cell) if other not in reached}
        edge = _boosters(layout, beyond)
        reached.update(edge)
    return reached


def _linked_from(layout: Layout, cell: Cell) -> Iterator[Cell]:
    """The boosters that have a live link to a rail."""
    beside = (cell.step(heading, rise) for heading in Heading for rise in range(-2, 3))
    return (other for other in _boosters(layout, beside) if cell in linked_rails(layout, other))


def _is_beside_signal(pieces: Pieces, rail: Cell) -> bool:
    for beside in rail.six_beside():
        piece = pieces.get(beside)
        if piece is not None and (piece.part in SIGNAL_PARTS or _may_be_powered(pieces, piece)):
            return True
    return False


def _may_be_powered(pieces: Pieces, block: Piece) -> bool:
    if not TRAITS[block.part].solid:
        return False
    around = (pieces.get(cell) for cell in block.at.six_beside())
    return any(piece is not None and _gives_to(pieces, piece, block.at) for piece in around)


def _gives_to(pieces: Pieces, piece: Piece, block: Cell) -> bool:
    """Whether a part beside a solid block stands on it, hangs from it, or may power it."""
    match piece.part:
        case Part.REPEATER | Part.COMPARATOR:
            return block in (rests_on(piece), piece.at.beside(piece.facing))
        case Part.TORCH:
            return block in (rests_on(piece), piece.at.beside(Facing.UP))
        case Part.DUST:
            points_into = (piece.at.step(side) for side in links(pieces, piece.at))
            return block == rests_on(piece) or block in points_into
        case _:
            return piece.part in SIGNAL_PARTS and rests_on(piece) == block


RULE = Rule(
    id="booster-unpowered",
    severity=Severity.WARNING,
    title="A booster rail without a signal",
    why="A booster rail without a signal holds the cart instead of driving it.",
    remedy="Set a torch, a lever or a line beside it or on the block that it lies on.",
    find=find,
    nearby=Nearby(_along_changed_runs, _unpowered_at),
)
