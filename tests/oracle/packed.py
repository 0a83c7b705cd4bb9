"""Very many states of the same rails at once: four bits a rail in one whole number, 0 where it is absent.

What happens at one rail depends on the rails within two columns of it and changes only those next to it:
``Track`` looks at the neighbours, at the links of the neighbours, and no further. So the rules of ``shapes``
are asked once for each surrounding that comes up, and the answer serves all states with that surrounding.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

import numpy as np
from numpy.typing import NDArray

from tests.oracle.shapes import ENDS, Place, Track

States = NDArray[np.uint64]

BITS = 4
MOST_RAILS = 64 // BITS
SHAPES = (None, *ENDS)
CODE = {shape: code for code, shape in enumerate(SHAPES)}


class PackedRails:
    """The rails of a plan by number, and what events at them do to many states."""

    def __init__(self, parts: Mapping[Place, str], fixed: Mapping[Place, tuple[str, str]] | None = None) -> None:
        """``fixed`` rails (part, shape) stand in every state and keep their shape; they take no bits."""
        if len(parts) > MOST_RAILS:
            raise ValueError(f"{len(parts)} rails matter, more than {MOST_RAILS}")
        self.parts = dict(parts)
        self.places = list(parts)
        self.number = {at: number for number, at in enumerate(self.places)}
        self.fixed = dict(fixed or {})
        self._answers: dict[tuple[object, Place], dict[int, int]] = {}

    def code(self, states: States, at: Place) -> States:
        """The shape of one rail in each state, as a code."""
        return (states >> np.uint64(BITS * self.number[at])) & np.uint64(15)

    def with_code(self, states: States, at: Place, code: int) -> States:
        """The states with another shape of one rail."""
        shift = BITS * self.number[at]
        return (states & ~np.uint64(15 << shift)) | np.uint64(code << shift)

    def mask(self, at: Place, columns: int) -> int:
        """The bits of the rails within so many columns of a place, at all levels."""
        near = (other for other in self.places if apart(at, other) <= columns)
        return sum(15 << BITS * self.number[other] for other in near)

    def pack(self, shapes: Mapping[Place, str]) -> int:
        """One state; shapes of rails that take no bits are passed over."""
        return sum(CODE[shapes[at]] << BITS * self.number[at] for at in self.places if at in shapes)

    def unpack(self, state: int) -> Track:
        """The track of one state, with the fixed rails."""
        track = Track()
        for at, (part, shape) in self.fixed.items():
            track.part[at], track.shape[at] = part, shape
        for number, at in enumerate(self.places):
            shape = SHAPES[state >> BITS * number & 15]
            if shape is not None:
                track.part[at], track.shape[at] = self.parts[at], shape
        return track

    def after(self, states: States, at: Place, what: object, happens: Callable[[Track], None]) -> States:
        """The states after something has happened at a rail; ``what`` names it, for the answers kept."""
        mask = self.mask(at, 2)
        answers = self._answers.setdefault((what, at), {})
        surroundings = states & np.uint64(mask)
        different = np.unique(surroundings)
        for surrounding in different.tolist():
            if surrounding not in answers:
                track = self.unpack(surrounding)
                happens(track)
                answers[surrounding] = self.pack(track.shape)
        changed = np.array([answers[surrounding] for surrounding in different.tolist()], np.uint64)
        return (states & ~np.uint64(mask)) | changed[np.searchsorted(different, surroundings)]


def apart(one: Place, other: Place) -> int:
    """How many columns lie between two places, along the grid."""
    return abs(one[0] - other[0]) + abs(one[2] - other[2])
