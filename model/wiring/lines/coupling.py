"""What new pieces would join or disturb that is not theirs, and what would disturb them.

Two circuits are compared: the plan near the pieces without them, and with them. They are those that the dry
run works with, so no rule of signals is said here. Not looked at: what carts meet (a block in their way, a
hopper under their track), and how rails lie among which some are new.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from itertools import chain

from msgspec import Struct

from model.grid import Cell
from model.pieces import Piece, Pieces
from model.plan import Plan
from model.wiring.lines.coupling_words import cut_words, joining_words
from model.wiring.lines.looking import Look, Looks, Role, looks_of, pieces_near


class Coupling(Struct, frozen=True):
    """A new piece and something else of which one would act on the other."""

    cell: Cell
    """Of the new piece."""
    other: Cell
    """Of the part that is not among the new ones."""
    why: str
    """A sentence for the user."""
    through: Cell | None = None
    """The block through which it acts, if any."""


def couplings(plan: Plan, pieces: Sequence[Piece], wired: Collection[Cell] = ()) -> tuple[Coupling, ...]:
    """What new pieces would join, disturb, or be disturbed by, each pair of cells once, in cell order.

    The pieces take the place of what stands in their cells. ``wired`` are the switches meant to be thrown:
    that they get notice of new wiring beside them does not matter. Power into a block counts only where
    something heeds it. With no couplings the other parts do in a dry run what they did, tick for tick.
    """
    own = {piece.at for piece in pieces}
    before = pieces_near(plan.pieces, own)
    return tuple(_Comparison(before, _with_pieces(before, pieces), own, wired).found())


def disturbed_without(pieces: Pieces, taken: Collection[Cell]) -> frozenset[Cell]:
    """The parts that would look at something else if what stands in these cells were taken away."""
    before = pieces_near(pieces, taken)
    after = Pieces.of(piece for piece in before if piece.at not in taken)
    was, becomes = looks_of(before), looks_of(after)
    return frozenset(
        cell for cell in was.keys() | becomes.keys() if cell in after and was.get(cell) != becomes.get(cell)
    )


class _Comparison:
    """The parts near the new pieces, and what each looks at without them and with them."""

    def __init__(self, before: Pieces, after: Pieces, own: set[Cell], wired: Collection[Cell]) -> None:
        self._was: Looks = looks_of(before)
        self._becomes: Looks = looks_of(after)
        self._before = before
        self._after = after
        self._own = own
        self._wired = wired

    def found(self) -> list[Coupling]:
        """One for each pair of cells: the first of several that there may be."""
        found: dict[frozenset[Cell], Coupling] = {}
        for cell in sorted(self._was.keys() | self._becomes.keys()):
            for coupling in self._of_new(cell) if cell in self._own else self._of_old(cell):
                found.setdefault(frozenset((coupling.cell, coupling.other)), coupling)
        return sorted(found.values(), key=lambda coupling: (coupling.cell, coupling.other))

    def _of_new(self, cell: Cell) -> Iterator[Coupling]:
        """What a new part looks at that is not new."""
        for look, through in self._becomes.get(cell, {}).items():
            if look.source not in self._own and not self._is_meant(cell, look):
                # Of two dusts that join, the new one is said to do so.
                ends = (look.source, cell) if look.role is Role.LINK else (cell, look.source)
                why = joining_words(self._after, ends[0], Look(look.role, ends[1]), through)
                yield Coupling(cell, look.source, why, through)

    def _of_old(self, cell: Cell) -> Iterator[Coupling]:
        """What a part looks at that it did not look at before, or no longer does."""
        was, becomes = self._was.get(cell, {}), self._becomes.get(cell, {})
        for look, through in becomes.items():
            if look in was or self._is_meant(cell, look):
                continue
            new = look.source if look.source in self._own else self._cause(cell, look.source, through)
            yield Coupling(new, cell, joining_words(self._after, cell, look, through), through)
        for look, through in was.items():
            if look not in becomes and not self._is_meant(cell, look):
                new = look.source if look.source in self._own else self._cause(cell, look.source, through)
                yield Coupling(new, cell, cut_words(self._before, self._after, cell, look, new), through)

    def _is_meant(self, cell: Cell, look: Look) -> bool:
        return look.role is Role.NOTICE and cell in self._wired

    def _cause(self, cell: Cell, source: Cell, through: Cell | None) -> Cell:
        """The new piece because of which a part looks at another, or no longer does: the nearest to both."""
        if through in self._own:
            return through
        return min(self._own, key=lambda new: (_apart(new, source) + _apart(new, cell), new))


def _apart(one: Cell, other: Cell) -> int:
    return sum(abs(a - b) for a, b in zip(one, other, strict=True))


def _with_pieces(pieces: Pieces, new: Iterable[Piece]) -> Pieces:
    """The pieces with new ones in the place of what stands in their cells, after all others."""
    made = tuple(new)
    own = {piece.at for piece in made}
    return Pieces.of(chain((piece for piece in pieces if piece.at not in own), made))
