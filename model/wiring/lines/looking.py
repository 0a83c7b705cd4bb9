"""What each part of a circuit looks at, seen through the blocks between: the circuit without its blocks."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from enum import StrEnum
from typing import Final, NamedTuple

from model.dry_run.circuit import Circuit
from model.dry_run.nodes import NOTHING, Comparator, Dust, Node, Power, Repeater, StrongPower, Taker, Torch
from model.dry_run.notices import Notices
from model.grid import Cell, Facing
from model.parts import TRAITS, Part
from model.pieces import Piece, Pieces
from model.plan import Plan
from model.track.layout import Layout
from model.track.rails import unpack

REACH: Final = 3
"""How far from a piece, along each axis, a part may look at something else because of it.

Dust a step away bends, so that it points into a block beside it, on whose far side the part stands.
"""


class Role(StrEnum):
    """What a part makes of something that it looks at."""

    LINK = "link"
    """Dust takes from dust."""
    FEED = "feed"
    """A source gives to dust."""
    BACK = "back"
    """Of a repeater or comparator."""
    SIDE = "side"
    """Of a comparator."""
    LOCK = "lock"
    """Of a repeater."""
    READ = "read"
    """A comparator reads a container."""
    BASE = "base"
    """The block of a torch."""
    POWER = "power"
    """A rail, lamp, hopper or auto-crafter has its signal from it."""
    NOTICE = "notice"
    """A three-way rail settles again when it changes."""
    ITEMS = "items"
    """Items go between two containers."""


class Look(NamedTuple):
    """What is looked at and how. Two ways from one source through different blocks are one look."""

    role: Role
    source: Cell


Looks = dict[Cell, dict[Look, Cell | None]]
"""By the cell of a part: what it looks at, each with the block through which it does, if any."""


def looks_of(pieces: Pieces) -> Looks:
    """What each part of these pieces looks at; parts that look at nothing are left out."""
    notices = Notices(Layout(Plan(pieces)))
    circuit = Circuit(pieces, notices)
    found: Looks = {}
    for node in (*circuit.outputs.values(), *circuit.takers.values()):
        if not isinstance(node, Taker) or heeds_power(pieces, notices, node.cell):
            _add(found, node.cell, _inputs(node))
        for key in node.noticed:
            _add(found, unpack(key), [(Look(Role.NOTICE, node.cell), None)])
    for piece in pieces:
        for cell in _items_go_between(piece, pieces):
            _add(found, piece.at, [(Look(Role.ITEMS, cell), None)])
            _add(found, cell, [(Look(Role.ITEMS, piece.at), None)])
    return found


def pieces_near(pieces: Pieces, cells: Iterable[Cell]) -> Pieces:
    """The pieces that can have a part in what parts look at because of these cells."""
    around = range(-REACH, REACH + 1)
    columns = {(x + dx, z + dz, y) for x, y, z in cells for dx in around for dz in around}
    near = {Cell(x, y + dy, z) for x, z, y in columns for dy in around}
    if len(near) < len(pieces):
        found = [placed for cell in near if (placed := pieces.placed(cell)) is not None]
        return Pieces.of(placed.piece for placed in sorted(found, key=lambda placed: placed.rank))
    return Pieces.of(piece for piece in pieces if piece.at in near)


def _add(found: Looks, cell: Cell, looks: Iterable[tuple[Look, Cell | None]]) -> None:
    for look, through in looks:
        found.setdefault(cell, {}).setdefault(look, through)


def _inputs(node: Node) -> Iterator[tuple[Look, Cell | None]]:
    if isinstance(node, Dust):
        yield from _seen(Role.FEED, node.feeds)
        yield from _seen(Role.LINK, node.takes)
    elif isinstance(node, Repeater):
        yield from _seen(Role.BACK, [node.back])
        yield from _seen(Role.LOCK, node.lockers)
    elif isinstance(node, Comparator):
        yield from _seen(Role.BACK, [node.back])
        yield from _seen(Role.SIDE, node.sides)
        if node.through is not None:
            yield Look(Role.READ, node.through.cell), None
    elif isinstance(node, Torch):
        yield from _seen(Role.BASE, [node.block])
    elif isinstance(node, Taker):
        yield from _seen(Role.POWER, node.ins)


def _seen(role: Role, nodes: Iterable[Node]) -> Iterator[tuple[Look, Cell | None]]:
    """The sources among these nodes, or those behind the blocks among them."""
    for node in nodes:
        if isinstance(node, Power | StrongPower):
            for source in _powering(node):
                yield Look(role, source.cell), node.cell
        elif node is not NOTHING:
            yield Look(role, node.cell), None


def _powering(block: Power | StrongPower) -> Iterator[Node]:
    for node in block.ins:
        if isinstance(node, StrongPower):
            yield from node.ins
        else:
            yield node


def heeds_power(pieces: Pieces, notices: Notices, cell: Cell) -> bool:
    """Whether a signal changes anything at what takes it: a plain rail that is not three-way lies still."""
    return pieces.part_at(cell) is not Part.RAIL or notices.takes(cell)


def _items_go_between(piece: Piece, pieces: Pieces) -> Iterator[Cell]:
    """The containers to which a hopper or an auto-crafter gives, and the one that a hopper takes from."""
    if piece.part not in (Part.HOPPER, Part.AUTO_CRAFTER):
        return
    beside = {piece.at.beside(piece.facing)}
    if piece.part is Part.HOPPER:
        beside.add(piece.at.beside(Facing.UP))
    for cell in beside:
        part = pieces.part_at(cell)
        if part is not None and TRAITS[part].slots:
            yield cell
