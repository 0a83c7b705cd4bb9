"""All ways in which the rails of a plan can come out, over all orders of placing and both axes of each rail.

The states (which rails stand, and how they lie) are worked out layer by layer: those with one rail, with two,
and so on. Nothing is guessed or sampled.

**Plain runs.** A *run* is a line of rails c1, c2, … on one level that leads straight away from the rest and
ends, with no other rail in any column beside it; c1 stands next to the rail b of the rest. All that b can
tell of the run is whether c1 stands, whether c1 has room, and whether c1 points to b.

* c1 always has room for b: it has two live links only when one of them leads to b.
* c1 lies along the run or across it. Across it only while c2 is absent: whichever of the two comes later
  finds the other with room, takes the axis of the run, and is joined by the other.
* c2 has the axis of the run whenever c1 stands, by the same reasoning; while c1 is absent, b cannot tell how
  c2 lies. So c3 and all beyond tell b nothing: they can be left out, and come out along the run.
* c2 does one thing: it brings a c1 that lies across into line, without a join at b. Placed when c1 is absent
  or in line it does nothing that b can tell, apart from taking from c1 the choice to lie across. So c2 can be
  left out too when "c1 comes into line" may happen at any moment and must have happened at the end.

``whole=True`` leaves nothing out; the tests compare both.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from tests.oracle.packed import CODE, PackedRails, States
from tests.oracle.shapes import BACK, RAIL_PARTS, STEP, Place, Rail, Track, build

AXES = ("north", "east")


class Run(NamedTuple):
    """A plain run: its rails from the inside out, at least two, and the codes of c1 in line and across."""

    rails: tuple[Place, ...]
    in_line: str
    across: str


class Orders:
    """The reachable ways in which the rails of a plan can lie when all are placed.

    ``sequence`` keeps to the orders in which those rails come one after another in just that order.
    """

    def __init__(self, pieces: list[Rail], *, whole: bool = False, sequence: Sequence[Place] = ()) -> None:
        self.parts = {at: part for part, at, _ in pieces if part in RAIL_PARTS}
        self.runs = [] if whole else plain_runs(list(self.parts))
        left_out = {at for run in self.runs for at in run.rails[1:]}
        self.packed = PackedRails({at: part for at, part in self.parts.items() if at not in left_out})
        self.sequence = list(sequence)
        self.layers: list[States] = [self.packed.array([0])]
        for _ in self.packed.places:
            self.layers.append(self._next_layer(self.layers[-1]))
        self.states = self._finished()
        """The ways, each as one number of ``packed``."""

    def shapes(self, state: int) -> dict[Place, str]:
        """A way in which all rails can lie."""
        shapes = dict(self.packed.unpack(int(state)).shape)
        for run in self.runs:
            shapes.update((at, run.in_line) for at in run.rails[1:])
        return shapes

    def can_give(self, shapes: dict[Place, str]) -> bool:
        """Whether some order gives just these shapes."""
        try:
            state = self.packed.pack(shapes)
        except KeyError:
            return False
        return is_among(state, self.states) and self.shapes(state) == shapes

    def witness(self, state: int) -> list[Rail]:
        """An order of placing, with the facings, that gives this way; checked by placing."""
        moves: list[tuple[Place, str]] = []
        here = int(state)
        count = len(self.packed.places)
        while count:
            found = self._placed_last(here, self.layers[count - 1])
            if found is not None:
                here, at, axis = found
                moves.append((at, axis))
                count -= 1
            else:
                here, run = self._brought_into_line(here, self.layers[count])
                moves.append((run.rails[1], AXES[0]))
        order = self._with_the_rest(moves[::-1])
        pieces = [(self.parts[at], at, axis) for at, axis in order]
        if build(pieces).shape != self.shapes(state):
            raise AssertionError("the order does not give the shapes that it is a witness for")
        return pieces

    def _next_layer(self, states: States) -> States:
        made = [self.packed.array()]
        for at in self.packed.places:
            ready = states[self._may_come(states, at)]
            made += [np.unique(self._place(ready, at, axis)) for axis in AXES]
        layer = np.unique(np.concatenate(made))
        for run in self.runs:
            across = layer[self.packed.code(layer, run.rails[0]) == CODE[run.across]]
            in_line = self.packed.with_code(across, run.rails[0], CODE[run.in_line])
            layer = np.unique(np.concatenate([layer, in_line]))
        return layer

    def _may_come(self, states: States, at: Place) -> np.ndarray:
        absent = self.packed.code(states, at) == 0
        if at in self.sequence[1:]:
            earlier = self.sequence[self.sequence.index(at) - 1]
            return absent & (self.packed.code(states, earlier) != 0)
        return absent

    def _place(self, states: States, at: Place, axis: str) -> States:
        def happens(track: Track) -> None:
            track.place(self.parts[at], at, axis)

        return self.packed.after(states, at, axis, happens)

    def _finished(self) -> States:
        states = self.layers[-1]
        for run in self.runs:
            states = states[self.packed.code(states, run.rails[0]) == CODE[run.in_line]]
        return states

    def _placed_last(self, state: int, before: States) -> tuple[int, Place, str] | None:
        """A state before, with the rail that was placed then: only that rail and those beside it differ."""
        for at in self.packed.places:
            same = ~self.packed.word(self.packed.mask(at, 1))
            alike = before[(before & same) == (self.packed.word(state) & same)]
            alike = alike[self._may_come(alike, at)]
            for axis in AXES:
                hits = alike[self._place(alike, at, axis) == self.packed.word(state)]
                if hits.size:
                    return int(hits[0]), at, axis
        return None

    def _brought_into_line(self, state: int, layer: States) -> tuple[int, Run]:
        """The same state before the first rail of a run came into line."""
        for run in self.runs:
            one = self.packed.array([state])
            if self.packed.code(one, run.rails[0])[0] == CODE[run.in_line]:
                before = self.packed.with_code(one, run.rails[0], CODE[run.across])[0]
                if is_among(int(before), layer):
                    return int(before), run
        raise AssertionError("a state that nothing leads to")

    def _with_the_rest(self, order: list[tuple[Place, str]]) -> list[tuple[Place, str]]:
        """The rails that were left out come at the end, from the inside out."""
        placed = {at for at, _ in order}
        rest = [(at, AXES[0]) for run in self.runs for at in run.rails if at not in placed]
        return [*order, *rest]


def is_among(state: int, states: States) -> bool:
    """Whether sorted states hold this one."""
    here = int(np.searchsorted(states, np.array(state, states.dtype)))
    return here < len(states) and int(states[here]) == state


def plain_runs(rails: list[Place]) -> list[Run]:
    """The runs of two rails and more; of two that share rails (a line alone with two ends) the first."""
    columns: dict[tuple[int, int], list[Place]] = {}
    for at in rails:
        columns.setdefault((at[0], at[2]), []).append(at)
    runs: list[Run] = []
    for end in rails:
        line = _line_from(end, columns)
        if len(line) >= 2 and not any(set(line) & set(run.rails) for run in runs):
            runs.append(Run(tuple(reversed(line)), *_in_line_and_across(line)))
    return runs


def _line_from(end: Place, columns: dict[tuple[int, int], list[Place]]) -> list[Place]:
    """The rails of a run from its outer end to c1; too short where there is none."""

    def beside(at: Place) -> dict[str, list[Place]]:
        found = {way: columns.get((at[0] + dx, at[2] + dz), []) for way, (dx, dz) in STEP.items()}
        return {way: there for way, there in found.items() if there}

    ways = list(beside(end))
    if len(ways) != 1 or columns[end[0], end[2]] != [end]:
        return []
    (inward,) = ways
    line = [end]
    while True:
        there = beside(line[-1])[inward]
        if len(there) != 1 or there[0][1] != end[1]:
            return line[:-1]  # The last one found stands next to another level: it is no c1, but the rail b.
        if set(beside(there[0])) != {inward, BACK[inward]}:
            return line
        line.append(there[0])


def _in_line_and_across(line: list[Place]) -> tuple[str, str]:
    lies_north_south = line[0][0] == line[1][0]
    return ("north-south", "east-west") if lies_north_south else ("east-west", "north-south")
