"""The rails of a plan as built, kept up to date edit by edit.

A rail's shape depends on the order of placing. Each placing is an event, ranked as its piece is, that looks
at rails near it and writes its own shape and those of at most two others. A layout keeps what each event
wrote; after an edit, only the events that could see a difference run again, in order, and the wave ends
where an event writes what it wrote before.
"""

from __future__ import annotations

import heapq
from bisect import insort
from collections.abc import Generator, Iterable, Mapping
from itertools import chain
from typing import Final

from model.collector import collector_paused
from model.grid import Cell, Facing, Heading
from model.parts import RAILS, STOPPERS, Part
from model.pauses import pause, with_pauses
from model.pieces import Piece, Placed
from model.plan import EMPTY_PLAN, Change, Plan
from model.progress import Progress, result_of
from model.track.rails import STEP, pack, unpack
from model.track.remembered import Get
from model.track.settling import placed
from model.track.shapes import Shape
from model.wording import QT_TR_NOOP, tr

_COLUMNS: Final = sorted({a + b for a in (0, *STEP) for b in (0, *STEP)})
SEEN_FROM: Final = tuple(column + level for column in _COLUMNS for level in range(-4, 3))
"""Added to a packed cell: where an event may stand that looks at this cell.

A placing looks two columns far, and from two levels below its own (a level end of a neighbour one down) to
four above (the raised end of a neighbour two up).
"""

ANEW_FROM: Final = 500
"""Pieces from which on it costs less to lay a plan anew than to follow, when they are much of it."""
TOLD_EVERY: Final = 2_048
"""Pieces between two words on how far the laying is."""
LAYING: Final = QT_TR_NOOP("Laying the rails")
Event = tuple[int, int]
"""The rank of a rail and its packed cell."""
History = list[tuple[int, Shape]]
"""What was written into a cell: the rank of the event and the shape, the earliest first."""


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
        self._rank_at: dict[int, int] = {}
        self._bent: dict[int, History] = {}
        """Of the rails that another event wrote, too; the others lie as their own event wrote them."""
        self._wrote: dict[Event, tuple[int, ...]] = {}
        """Of the events that wrote other rails, too: the packed cells of all that they wrote."""
        self._previewed: tuple[Plan, Change, Mapping[Cell, Shape | None]] | None = None
        """What the last preview found: a gesture asks it for its ghost, for its words and at its end."""
        result_of(self._lay_all())

    @classmethod
    def of(cls, plan: Plan) -> Generator[Progress, None, Layout]:
        """The layout of a plan, which tells how far it is; it is what the generator returns."""
        layout = cls(EMPTY_PLAN)
        layout.plan = plan
        yield from layout._lay_all()
        return layout

    def copy(self) -> Layout:
        """One that follows on its own; costs far less than laying the plan."""
        other = Layout(EMPTY_PLAN)
        other.plan = self.plan
        other.rails, other._rank_at, other._wrote = (
            self.rails.copy(),
            self._rank_at.copy(),
            self._wrote.copy(),
        )
        other.straight_only, other.stoppers = self.straight_only.copy(), self.stoppers.copy()
        other._bent = {key: history.copy() for key, history in self._bent.items()}
        return other

    def become(self, other: Layout) -> None:
        """Takes all over from another one, which must not be used any more."""
        vars(self).update(vars(other))

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
        return result_of(self.following(change))

    def following(self, change: Change) -> Generator[Progress, None, frozenset[Cell]]:
        """As ``follow``, and tells how far it is. Until it has returned, the layout is of no plan at all."""
        self.plan = change.applied(self.plan)
        if len(change.placed) > max(ANEW_FROM, len(self.plan.pieces) // 4):
            return (yield from self._lay_anew())
        bared = {entry.rank: self._remove(entry) for entry in change.taken}
        events = {event for entry in change.placed if (event := self._add(entry)) is not None}
        for rank, cells in bared.items():
            events |= self._later_events_that_see(cells, rank)
        return self._settle_again(events | self._joiners_of_changed_parts(change), bared.values())

    def preview(self, change: Change) -> Mapping[Cell, Shape | None]:
        """The shapes that ``follow`` would change, as they would be; the layout stays as it is."""
        plan = self.plan
        if self._previewed is not None and self._previewed[0] is plan and self._previewed[1] is change:
            return self._previewed[2]
        changed = self.follow(change)
        shapes = {cell: self.shape(cell) for cell in changed}
        self.follow(change.inverse())
        self.plan = plan
        self._previewed = plan, change, shapes
        return shapes

    def _lay_all(self) -> Generator[Progress, None, None]:
        entries = self.plan.pieces.in_order()
        with collector_paused():
            for done, entry in enumerate(with_pauses(entries), 1):
                if not done % TOLD_EVERY:
                    yield Progress(tr(LAYING), done, len(entries))
                event = self._add(entry)
                if event is not None:
                    self._run_last(event, entry.piece)

    def _lay_anew(self) -> Generator[Progress, None, frozenset[Cell]]:
        """Forgets all and lays the whole plan; returns where the shape is another."""
        before = dict(self.rails)
        for known in (self.rails, self.straight_only, self.stoppers, self._rank_at, self._bent, self._wrote):
            known.clear()
        yield from self._lay_all()
        now = self.rails
        return frozenset(unpack(key) for key in before.keys() | now.keys() if before.get(key) != now.get(key))

    def _add(self, entry: Placed) -> Event | None:
        """Takes up a piece; returns its event when it is a rail."""
        rank, piece = entry
        part, key = piece.part, pack(piece.at)
        if part in RAILS:
            self._rank_at[key] = rank
            if part is not Part.RAIL:
                self.straight_only.add(key)
            return rank, key
        if part in STOPPERS:
            self.stoppers.add(key)
        return None

    def _remove(self, entry: Placed) -> tuple[int, ...]:
        """Forgets a piece, and takes back what its event wrote; returns the packed cells of that."""
        rank, piece = entry
        key = pack(piece.at)
        self.stoppers.discard(key)
        if piece.part not in RAILS:
            return ()
        cells = self._wrote.pop((rank, key), (key,))
        for cell in cells:
            self._take_back(cell, rank)
        self.straight_only.discard(key)
        del self._rank_at[key]
        return cells

    def _run_last(self, event: Event, piece: Piece) -> None:
        """Runs an event that comes after all others so far, on the shapes as they are now."""
        rank, key = event
        changes = placed(self.rails.get, self.straight_only, key, _BUILDER_HEADING[piece.facing]).changes
        for offset, shape in changes:
            if offset:
                self._history(key + offset).append((rank, shape))
            self.rails[key + offset] = shape
        if len(changes) > 1:
            self._wrote[event] = tuple(key + offset for offset, _ in changes)

    def _history(self, key: int) -> History:
        """The history of a cell into which another event is about to write."""
        history = self._bent.get(key)
        if history is None:
            shape = self.rails.get(key)
            history = self._bent[key] = [] if shape is None else [(self._rank_at[key], shape)]
        return history

    def _settle_again(self, events: set[Event], bared: Iterable[Iterable[int]]) -> frozenset[Cell]:
        """Runs these events again, and those that see a difference; ``bared`` are cells changed already."""
        queue = sorted(events)
        queued = set(queue)
        touched = set(chain.from_iterable(bared))
        while queue:
            pause()
            event = heapq.heappop(queue)
            written, different = self._run_again(event)
            touched |= written
            for later in self._later_events_that_see(different, event[0]):
                if later not in queued:
                    queued.add(later)
                    heapq.heappush(queue, later)
            queued.discard(event)
        return frozenset(unpack(key) for key in touched if self._update_last_shape(key))

    def _run_again(self, event: Event) -> tuple[set[int], set[int]]:
        """Takes back what an event wrote and runs it.

        Returns where it wrote before or writes now, and where the one differs from the other.
        """
        rank, key = event
        before = {at: self._take_back(at, rank) for at in self._wrote.pop(event, (key,))}
        piece = self.plan.pieces.get(unpack(key))
        assert piece is not None
        past = self._shapes_before(rank)
        leaf = placed(past, self.straight_only, key, _BUILDER_HEADING[piece.facing])
        after = {key + offset: shape for offset, shape in leaf.changes}
        if len(after) > 1:
            self._wrote[event] = tuple(after)
        for at, shape in after.items():
            insort(self._history(at), (rank, shape))
        written = before.keys() | after.keys()
        return written, {at for at in written if before.get(at) != after.get(at)}

    def _shapes_before(self, rank: int) -> Get:
        """The rails as they stood just before an event."""
        rails, rank_at, bent = self.rails, self._rank_at, self._bent

        def get(key: int) -> Shape | None:
            history = bent.get(key)
            if history is None:
                return rails.get(key) if rank_at.get(key, rank) < rank else None
            for written, shape in reversed(history):
                if written < rank:
                    return shape
            return None

        return get

    def _joiners_of_changed_parts(self, change: Change) -> set[Event]:
        """Later events near rails that became another part in their rank: joining shows who can curve."""
        parts = {(entry.rank, entry.piece.at): entry.piece.part for entry in change.taken}
        events: set[Event] = set()
        for rank, piece in change.placed:
            if parts.get((rank, piece.at), piece.part) is not piece.part:
                events |= self._later_events_that_see((pack(piece.at),), rank)
        return events

    def _take_back(self, key: int, rank: int) -> Shape | None:
        """Takes what an event wrote out of the history of a cell; ``None`` where it has not run yet."""
        history = self._history(key)
        for index, (written, shape) in enumerate(history):
            if written == rank:
                del history[index]
                return shape
        return None

    def _later_events_that_see(self, keys: Iterable[int], rank: int) -> set[Event]:
        rank_at = self._rank_at.get
        return {
            (later, near)
            for key in keys
            for offset in SEEN_FROM
            if (later := rank_at(near := key + offset, rank)) > rank
        }

    def _update_last_shape(self, key: int) -> bool:
        """Takes over the end of a rail's history; tells whether the shape came, went or changed."""
        before = self.rails.get(key)
        history = self._bent[key]
        if history:
            self.rails[key] = history[-1][1]
        else:
            self.rails.pop(key, None)
        if len(history) <= 1:
            del self._bent[key]
        return before != self.rails.get(key)


_BUILDER_HEADING: Final = {
    facing: Heading.NORTH if facing.heading is None else facing.heading for facing in Facing
}
"""Where a builder looks who places a rail with that facing."""
