"""Turning and moving: a selection about its own middle, or the whole plan with all that names a cell."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

import msgspec

from model.edits.changes import carried, selected
from model.edits.pieces import set_build_order
from model.edits.refusals import check_cell
from model.grid import Cell, Facing, Heading, Turn
from model.pieces import Piece, Placed
from model.plan import ArmEnd, Change, Details, Plan
from model.wording import QT_TR_NOOP, tr

CellMap = Callable[[Cell], Cell]


def turn_pieces(plan: Plan, cells: Iterable[Cell], turn: Turn) -> Change:
    """The pieces in ``cells`` turned about the middle of their bounding box; they keep their ranks.

    Where the middle would fall between cells the box comes to lie so that turning back is exact. The pieces
    replace what stands there, and the label says how many. Raises EditRefused for cells out of reach.
    """
    taken = selected(plan, cells)
    new_cell = _about_middle([entry.piece.at for entry in taken], turn) if taken else turn.cell
    said = QT_TR_NOOP("Mirror %n piece(s)") if turn.mirror else QT_TR_NOOP("Turn %n piece(s)")
    return carried(plan, said, taken, _turned(taken, turn, new_cell))


def turn_plan(plan: Plan, turn: Turn) -> Change:
    """The whole plan turned about x = z = 0, the mirror first; the order of placing stays.

    Facings, headings, arms and the cells of waivers follow; a mirror changes the running side.
    """
    details = _mapped(plan.details, turn.cell, turn.heading)
    if turn.mirror and details.running_side is not None:
        details = details.replace(running_side=details.running_side.other)
    taken = plan.pieces.in_order()
    label = tr("Turn plan to orientation {number}", number=turn.number)
    return _whole(plan, label, _turned(taken, turn, turn.cell), details)


def turn_and_order(plan: Plan, turn: Turn, rails: Sequence[tuple[Cell, Facing]]) -> Change:
    """The whole plan turned, and then its rails in the sequence given, as one step.

    The cells and facings are those of the turned plan. Raises as ``set_build_order`` does.
    """
    turned = turn_plan(plan, turn)
    after = turned.applied(plan)
    placed = set_build_order(after, rails).applied(after).pieces.in_order()
    label = tr("{label} and set the build order", label=turned.label)
    return Change(label, turned.taken, placed, turned.before, turned.after)


def move_plan(plan: Plan, dx: int, dy: int, dz: int) -> Change:
    """The whole plan that many cells to the east, up and to the south, with arms and the cells of waivers.

    Raises EditRefused when a piece or an arm would come out of reach.
    """

    def new_cell(cell: Cell) -> Cell:
        moved = cell.moved(dx, dy, dz)
        check_cell(moved)
        return moved

    pieces = [msgspec.structs.replace(piece, at=new_cell(piece.at)) for piece in plan.pieces]
    details = _mapped(plan.details, new_cell, lambda heading: heading)
    return _whole(plan, tr("Move plan by {move}", move=Cell(dx, dy, dz)), pieces, details)


def _whole(plan: Plan, label: str, pieces: Sequence[Piece], details: Details) -> Change:
    taken = plan.pieces.in_order()
    placed = tuple(Placed(old.rank, new) for old, new in zip(taken, pieces, strict=True))
    if details == plan.details:
        return Change(label, taken, placed)
    return Change(label, taken, placed, plan.details, details)


def _turned(entries: Sequence[Placed], turn: Turn, new_cell: CellMap) -> list[Piece]:
    return [
        msgspec.structs.replace(piece, at=new_cell(piece.at), facing=turn.facing(piece.facing))
        for _, piece in entries
    ]


def _about_middle(cells: Sequence[Cell], turn: Turn) -> CellMap:
    west, north, wide, deep = _box(cells)
    new_west, new_north, new_wide, new_deep = _box([turn.cell(cell) for cell in cells])
    # Half a cell over is dropped towards zero, so that it comes back the same way.
    dx = west + int((wide - new_wide) / 2) - new_west
    dz = north + int((deep - new_deep) / 2) - new_north
    return lambda cell: turn.cell(cell).moved(dx, 0, dz)


def _box(cells: Sequence[Cell]) -> tuple[int, int, int, int]:
    """The bounding box seen from above: least x, least z, width and depth in cells."""
    xs, zs = [cell.x for cell in cells], [cell.z for cell in cells]
    return min(xs), min(zs), max(xs) - min(xs) + 1, max(zs) - min(zs) + 1


def _mapped(details: Details, new_cell: CellMap, new_heading: Callable[[Heading], Heading]) -> Details:
    def end(old: ArmEnd | None) -> ArmEnd | None:
        if old is None:
            return None
        return ArmEnd(new_cell(old.at), new_heading(old.heading), old.kept)

    replace = msgspec.structs.replace
    return details.replace(
        arms=tuple(replace(arm, enter=end(arm.enter), leave=end(arm.leave)) for arm in details.arms),
        waivers=tuple(replace(w, cells=tuple(map(new_cell, w.cells))) for w in details.waivers),
    )
