"""Very many states of the same rails at once: a few bits a rail in one whole number, 0 where it is absent.

What happens at one rail depends on the rails within two columns of it and changes only those next to it:
``Track`` looks at the neighbours, at the links of the neighbours, and no further. So the rules of ``shapes``
are asked once for each surrounding that comes up, and the answer serves all states with that surrounding.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Any

import numpy as np
from numpy.typing import NDArray

from tests.oracle.shapes import ENDS, STEP, Place, Track

States = NDArray[Any]
"""Of whole numbers."""

MOST_BITS = 64
FLAT = tuple(shape for shape in ENDS if not shape.startswith("rising-"))
SHAPES = (None, *FLAT, *(shape for shape in ENDS if shape not in FLAT))
"""By code: the flat ones come first, so that rails which cannot rise take three bits."""
CODE = {shape: code for code, shape in enumerate(SHAPES)}


class PackedRails:
    """The rails of a plan by number, and what events at them do to many states."""

    def __init__(
        self, parts: Mapping[Place, str], fixed: Mapping[Place, tuple[str, str]] | None = None
    ) -> None:
        """``fixed`` rails (part, shape) stand in every state and keep their shape; they take no bits."""
        self.parts = dict(parts)
        self.places = list(parts)
        self.fixed = dict(fixed or {})
        self._bits: dict[Place, tuple[int, int]] = {}
        shift = 0
        for at in self.places:
            width = 4 if self._may_rise(at) else 3
            self._bits[at] = shift, (1 << width) - 1
            shift += width
        self.word: type = np.uint64 if shift <= MOST_BITS else int
        """What one state is; the fast one where all bits have room in it."""
        self._answers: dict[tuple[object, Place], dict[int, int]] = {}

    def array(self, states: Iterable[int] = ()) -> States:
        """These states."""
        return np.array(list(states), np.uint64 if self.word is np.uint64 else object)

    def _may_rise(self, at: Place) -> bool:
        """Whether a rail stands one up in a column beside it: without one the slope rule never applies."""
        rails = {*self.parts, *self.fixed}
        return any((at[0] + dx, at[1] + 1, at[2] + dz) in rails for dx, dz in STEP.values())

    def code(self, states: States, at: Place) -> States:
        """The shape of one rail in each state, as a code."""
        shift, most = self._bits[at]
        return (states >> self.word(shift)) & self.word(most)

    def with_code(self, states: States, at: Place, code: int) -> States:
        """The states with another shape of one rail."""
        shift, most = self._bits[at]
        return (states & ~self.word(most << shift)) | self.word(code << shift)

    def mask(self, at: Place, columns: int) -> int:
        """The bits of the rails within so many columns of a place, at all levels."""
        near = (self._bits[other] for other in self.places if apart(at, other) <= columns)
        return sum(most << shift for shift, most in near)

    def pack(self, shapes: Mapping[Place, str]) -> int:
        """One state; shapes of rails that take no bits are passed over. KeyError for one that cannot be."""
        return sum(self._coded(at, shapes[at]) for at in self.places if at in shapes)

    def _coded(self, at: Place, shape: str) -> int:
        shift, most = self._bits[at]
        if CODE[shape] > most:
            raise KeyError(shape)
        return CODE[shape] << shift

    def unpack(self, state: int) -> Track:
        """The track of one state, with the fixed rails."""
        track = Track()
        for at, (part, shape) in self.fixed.items():
            track.part[at], track.shape[at] = part, shape
        for at, (shift, most) in self._bits.items():
            shape = SHAPES[state >> shift & most]
            if shape is not None:
                track.part[at], track.shape[at] = self.parts[at], shape
        return track

    def after(self, states: States, at: Place, what: object, happens: Callable[[Track], None]) -> States:
        """The states after something has happened at a rail; ``what`` names it, for the answers kept."""
        mask = self.mask(at, 2)
        answers = self._answers.setdefault((what, at), {})
        surroundings = states & self.word(mask)
        different = np.unique(surroundings)
        for surrounding in different.tolist():
            if surrounding not in answers:
                track = self.unpack(surrounding)
                happens(track)
                answers[surrounding] = self.pack(track.shape)
        changed = self.array([answers[surrounding] for surrounding in different.tolist()])
        return (states & ~self.word(mask)) | changed[np.searchsorted(different, surroundings)]


def apart(one: Place, other: Place) -> int:
    """How many columns lie between two places, along the grid."""
    return abs(one[0] - other[0]) + abs(one[2] - other[2])
