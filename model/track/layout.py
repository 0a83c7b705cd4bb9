"""The rails of a plan as built, kept up to date edit by edit.

A rail's shape depends on the order of placing. Each placing is an event, ranked as its piece is, that looks
at rails near it and writes its own shape and those of at most two others. A layout keeps what each event
wrote; after an edit, only the events that could see a difference run again, in order, and the wave ends
where an event writes what it wrote before.
"""

from __future__ import annotations

import heapq
from bisect import insort
from collections.abc import Iterable, Mapping
from typing import Final, NamedTuple

from model.collector import collector_paused
from model.grid import Cell, Heading
from model.parts import RAILS, STOPPERS, Part
from model.pieces import Piece, Placed
from model.plan import Change, Plan
from model.track.rails import STEP, pack, unpack
from model.track.settling import place
from model.track.shapes import Shape

_COLUMNS: Final = sorted({a + b for a in (0, *STEP) for b in (0, *STEP)})
SEEN_FROM: Final = tuple(column + level for column in _COLUMNS for level in range(-4, 3))
"""Added to a packed cell: where an event may stand that looks at this cell.

A placing looks two columns far, and from two levels below its own (a level end of a neighbour one down) to
four above (the raised end of a neighbour two up).
"""


class _Event(NamedTuple):
    key: int
    heading: Heading


class Layout:
    """The shapes of a plan's rails as built. Follows its plan: the one mutable thing in the model."""

    def __init__(self, plan: Plan) -> None:
        self.plan = plan
        self.rails: dict[int, Shape] = {}
        """Shape by packed cell, as built."""
        self.straight_only: set[int] = set()
        """Packed cells of the booster and detector rails, which never curve."""
        self.stoppers: set[int] = set()
        """Packed cells that a cart cannot run into."""
        self._events: dict[int, _Event] = {}
        self._rank_at: dict[int, int] = {}
        self._history: dict[int, list[tuple[int, Shape]]] = {}
        self._wrote: dict[int, tuple[int, ...]] = {}
        with collector_paused():
            for entry in plan.pieces.in_order():
                self._add(entry)
                if entry.rank in self._events:
                    self._run_last(entry.rank)

    @property
    def shapes(self) -> Mapping[Cell, Shape]:
        """The shape of every rail, in file order."""
        rails = ((piece.at, self.rails.get(pack(piece.at))) for piece in self.plan.pieces)
        return {cell: shape for cell, shape in rails if shape is not None}

    def shape(self, cell: Cell) -> Shape | None:
        """The shape of the rail in a cell as built; ``None`` where no rail stands."""
        return self.rails.get(pack(cell))

    def follow(self, change: Change) -> frozenset[Cell]:
        """Applies a change; returns the cells whose shape came, went or became another."""
        self.plan = change.applied(self.plan)
        ranks = {rank for entry in change.taken if (rank := self._remove(entry)) is not None}
        for entry in change.placed:
            self._add(entry)
            if entry.piece.part in RAILS:
                ranks.add(entry.rank)
        return self._settle_again(ranks | self._joiners_of_changed_parts(change))

    def preview(self, change: Change) -> dict[Cell, Shape | None]:
        """The shapes that ``follow`` would change, as they would be; the layout stays as it is."""
        changed = self.follow(change)
        shapes = {cell: self.shape(cell) for cell in changed}
        self.follow(change.inverse())
        return shapes

    def _add(self, entry: Placed) -> None:
        piece = entry.piece
        if piece.part in RAILS:
            self._add_rail(entry.rank, piece)
        elif piece.part in STOPPERS:
            self.stoppers.add(pack(piece.at))

    def _add_rail(self, rank: int, piece: Piece) -> None:
        key = pack(piece.at)
        heading = piece.facing.heading
        self._events[rank] = _Event(key, Heading.NORTH if heading is None else heading)
        self._rank_at[key] = rank
        if piece.part is not Part.RAIL:
            self.straight_only.add(key)

    def _remove(self, entry: Placed) -> int | None:
        """Forgets a piece; returns its rank when it is a rail."""
        key = pack(entry.piece.at)
        self.stoppers.discard(key)
        if entry.piece.part not in RAILS:
            return None
        self.straight_only.discard(key)
        del self._events[entry.rank], self._rank_at[key]
        return entry.rank

    def _run_last(self, rank: int) -> None:
        """Runs an event that comes after all others so far, on the shapes as they are now."""
        key, heading = self._events[rank]
        present = _Written(self.rails)
        place(present, self.straight_only, key, heading)
        self._wrote[rank] = tuple(present.written)
        for written in present.written:
            self._history.setdefault(written, []).append((rank, self.rails[written]))

    def _settle_again(self, ranks: Iterable[int]) -> frozenset[Cell]:
        """Runs the events of these ranks again, and those that see a difference."""
        queue = sorted(ranks)
        queued = set(queue)
        touched: set[int] = set()
        while queue:
            rank = heapq.heappop(queue)
            different = self._run_again(rank)
            touched.update(different)
            for later in self._later_events_that_see(different, rank):
                if later not in queued:
                    queued.add(later)
                    heapq.heappush(queue, later)
            queued.discard(rank)
        return frozenset(unpack(key) for key in touched if self._update_last_shape(key))

    def _run_again(self, rank: int) -> set[int]:
        """Takes back what an event wrote and runs it, where it still is; returns where it wrote otherwise."""
        before = {key: self._take_back(key, rank) for key in self._wrote.pop(rank, ())}
        after: dict[int, Shape] = {}
        event = self._events.get(rank)
        if event is not None:
            past = _Past(self._history, rank)
            place(past, self.straight_only, event.key, event.heading)
            after = past.written
            self._wrote[rank] = tuple(after)
            for key, shape in after.items():
                insort(self._history.setdefault(key, []), (rank, shape))
        return {key for key in before.keys() | after.keys() if before.get(key) != after.get(key)}

    def _joiners_of_changed_parts(self, change: Change) -> set[int]:
        """Later events near rails that became another part in their rank: joining shows who can curve."""
        parts = {(entry.rank, entry.piece.at): entry.piece.part for entry in change.taken}
        ranks: set[int] = set()
        for rank, piece in change.placed:
            if parts.get((rank, piece.at), piece.part) is not piece.part:
                ranks |= self._later_events_that_see((pack(piece.at),), rank)
        return ranks

    def _take_back(self, key: int, rank: int) -> Shape:
        entries = self._history[key]
        index = next(i for i, (written, _) in enumerate(entries) if written == rank)
        return entries.pop(index)[1]

    def _later_events_that_see(self, keys: Iterable[int], rank: int) -> set[int]:
        rank_at = self._rank_at
        near = (rank_at.get(key + offset) for key in keys for offset in SEEN_FROM)
        return {other for other in near if other is not None and other > rank}

    def _update_last_shape(self, key: int) -> bool:
        """Takes over the end of a rail's history; tells whether the shape came, went or changed."""
        before = self.rails.get(key)
        entries = self._history.get(key)
        if entries:
            self.rails[key] = entries[-1][1]
        else:
            self._history.pop(key, None)
            self.rails.pop(key, None)
        return before != self.rails.get(key)


class _Written:
    """The present rails, noting which are written."""

    __slots__ = ("get", "rails", "written")

    def __init__(self, rails: dict[int, Shape]) -> None:
        self.rails = rails
        self.get = rails.get
        self.written: dict[int, None] = {}

    def __setitem__(self, key: int, shape: Shape, /) -> None:
        self.rails[key] = shape
        self.written[key] = None


class _Past:
    """The rails as they stood just before a rank, with what its event writes."""

    __slots__ = ("_history", "_rank", "written")

    def __init__(self, history: dict[int, list[tuple[int, Shape]]], rank: int) -> None:
        self._history = history
        self._rank = rank
        self.written: dict[int, Shape] = {}

    def get(self, key: int, /) -> Shape | None:
        """The last shape written before the rank, or by its event."""
        shape = self.written.get(key)
        if shape is not None:
            return shape
        for rank, earlier in reversed(self._history.get(key, ())):
            if rank < self._rank:
                return earlier
        return None

    def __setitem__(self, key: int, shape: Shape, /) -> None:
        self.written[key] = shape
