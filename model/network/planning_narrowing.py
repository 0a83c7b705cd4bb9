"""What every best plan does: defaults and ways that need no search.

A reader through which more ride one way than could ever ride the other has the one as its default. A trip
takes none of the ways on which more readers must be called, whatever the other defaults are, than on another
one at the worst. Each of the two helps the other, so they take turns.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import msgspec

from model.network.planning_conflicts import Conflicts, conflicts
from model.network.planning_task import Journey, Task
from model.network.ways import NO_TURN, Stretch


class Tally(msgspec.Struct, frozen=True):
    """By turn, how many take it a week."""

    sure: list[int]
    """Whatever is decided."""
    maybe: list[int]
    """As far as ways that are left would have it."""
    taken: list[bool]
    """Whether any way that is left has it, though nobody may ride there."""
    anywhere: int
    """Those who might take any turn, since not all of their ways are known."""
    any_incomplete: bool


class Narrowed(msgspec.Struct, frozen=True):
    """A task without what no best plan does."""

    task: Task
    defaults: tuple[int | None, ...]
    journeys: tuple[Journey, ...]
    sure: tuple[tuple[int, ...], ...]
    """By journey the turns on all ways that are left, in order."""
    tally: Tally

    @property
    def open_readers(self) -> list[int]:
        """Those whose default is still to be decided."""
        return [reader for reader, default in enumerate(self.defaults) if default is None]

    @property
    def open_journeys(self) -> list[int]:
        """Those with more than one way left."""
        return [number for number, journey in enumerate(self.journeys) if not journey.only]

    def sure_conflicts(self) -> Conflicts:
        """Readers that any best plan calls, and which of them need different names in any best plan."""
        found = conflicts(self.defaults, self.sure)
        called = found.called
        for reader in self.open_readers:
            # One of the two ways is not the default, and somebody rides there.
            if all(self._surely_taken(2 * reader + way) for way in (0, 1)):
                called |= 1 << reader
        return Conflicts(called, found.before)

    def _surely_taken(self, turn: int) -> bool:
        return self.tally.sure[turn] > 0


def narrowed(task: Task) -> Narrowed:
    """Settles what can be settled without a search.

    Where two readers are pinned to one name what is cheapest may not be allowed, so little is settled then.
    """
    stretches = task.tracks.stretches
    defaults = list(task.given)
    journeys = list(task.journeys)
    sure = [_turns(stretches, journey) for journey in journeys]
    while True:
        if not task.alike:
            _drop_dear_ways(stretches, defaults, journeys, sure)
        tally = _tally(stretches, journeys, sure, len(defaults))
        if not _settle(defaults, tally, may_count=not task.alike):
            return Narrowed(task, tuple(defaults), tuple(journeys), tuple(sure), tally)


def _settle(defaults: list[int | None], tally: Tally, may_count: bool) -> bool:
    """Decides defaults, and tells whether it did."""
    settled = False
    for reader, default in enumerate(defaults):
        if default is None:
            turns = (2 * reader, 2 * reader + 1)
            sure = [turn for turn in turns if _never_called(tally, turn)]
            sure += [turn for turn in turns if may_count and _saves_most(tally, turn)]
            if sure:
                defaults[reader], settled = sure[0] & 1, True
    return settled


def _never_called(tally: Tally, turn: int) -> bool:
    """Whether the reader is called by nobody where this turn is the default: nothing is better than that."""
    return not tally.taken[turn ^ 1] and not tally.any_incomplete


def _saves_most(tally: Tally, turn: int) -> bool:
    """Whether more will take this turn than can take the other one."""
    other = turn ^ 1
    return tally.sure[turn] > tally.sure[other] + tally.maybe[other] + tally.anywhere


def _drop_dear_ways(
    stretches: Sequence[Stretch],
    defaults: Sequence[int | None],
    journeys: list[Journey],
    sure: list[tuple[int, ...]],
) -> None:
    least = turn_costs(defaults, unknown=0)
    most = turn_costs(defaults, unknown=1)
    for number, journey in enumerate(journeys):
        before = None
        while journey != before and not journey.only and journey.weight:
            # A turn on all ways is paid on all of them or on none. Once some are dropped there are more such.
            paid_alike = dict.fromkeys(sure[number], 0)
            before, journey = (
                journey,
                _without_dear_ways(
                    stretches, journey, _changed(least, paid_alike), _changed(most, paid_alike)
                ),
            )
            journeys[number], sure[number] = journey, _turns(stretches, journey)


def _changed(costs: Sequence[int], new: Mapping[int, int]) -> list[int]:
    result = list(costs)
    for turn, cost in new.items():
        result[turn] = cost
    return result


def turn_costs(defaults: Sequence[int | None], unknown: int) -> list[int]:
    """By turn whether the reader must be called for it: 1 or 0. The last is that of no turn, 0."""
    costs: list[int] = []
    for default in defaults:
        costs += (unknown, unknown) if default is None else (default, 1 - default)
    return [*costs, 0]


def _without_dear_ways(
    stretches: Sequence[Stretch], journey: Journey, least: Sequence[int], most: Sequence[int]
) -> Journey:
    """Only stretches on ways that may cost no more than the cheapest does at the worst."""
    ways = [stretches[number] for number in journey.stretches]
    here = {ways[0].start: 0}
    worst = {ways[0].start: 0}
    for start, end, _, _, turn in ways:
        here[end] = min(here[start] + least[turn], here.get(end, len(ways)))
        worst[end] = min(worst[start] + most[turn], worst.get(end, len(ways)))
    onward = {ways[-1].end: 0}
    for start, end, _, _, turn in reversed(ways):
        onward[start] = min(onward[end] + least[turn], onward.get(start, len(ways)))
    limit = worst[ways[-1].end]
    kept = tuple(
        number
        for number, (start, end, _, _, turn) in zip(journey.stretches, ways, strict=True)
        if here[start] + least[turn] + onward[end] <= limit
    )
    only = len({stretches[number].end for number in kept}) == len(kept)
    return msgspec.structs.replace(journey, stretches=kept, only=only)


def _turns(stretches: Sequence[Stretch], journey: Journey) -> tuple[int, ...]:
    """The turns on all ways of a journey, in order."""
    if not journey.complete:
        return ()
    if journey.only:
        turns = [stretches[number].turn for number in journey.stretches]
        return tuple(turn for turn in turns if turn != NO_TURN)
    ways = [stretches[number] for number in journey.stretches]
    here = {ways[0].start: 1}
    for stretch in ways:
        here[stretch.end] = here.get(stretch.end, 0) + here[stretch.start]
    onward = {ways[-1].end: 1}
    for stretch in reversed(ways):
        onward[stretch.start] = onward.get(stretch.start, 0) + onward[stretch.end]
    every = here[ways[-1].end]
    return tuple(
        stretch.turn
        for stretch in ways
        if stretch.turn != NO_TURN and here[stretch.start] * onward[stretch.end] == every
    )


def _tally(
    stretches: Sequence[Stretch],
    journeys: Sequence[Journey],
    sure: Sequence[tuple[int, ...]],
    readers: int,
) -> Tally:
    result = Tally([0] * (2 * readers), [0] * (2 * readers), [False] * (2 * readers), 0, False)
    anywhere = 0
    for journey, turns in zip(journeys, sure, strict=True):
        for turn in turns:
            result.sure[turn] += journey.weight
            result.taken[turn] = True
        if not journey.only:
            for turn in {stretches[number].turn for number in journey.stretches} - {*turns, NO_TURN}:
                result.maybe[turn] += journey.weight
                result.taken[turn] = True
        if not journey.complete:
            anywhere += journey.weight
    incomplete = not all(journey.complete for journey in journeys)
    return msgspec.structs.replace(result, anywhere=anywhere, any_incomplete=incomplete)
