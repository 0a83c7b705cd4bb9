"""What gives a signal to what, worked out anew from what every part puts out.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from tests.oracle.dry_run_items import Slots
from tests.oracle.dry_run_pieces import (
    GIVES_ALL_ROUND,
    GIVES_IN_FRONT,
    OPPOSITE,
    Piece,
    Wiring,
    back,
    front,
    sides,
    step,
    support,
)
from tests.oracle.shapes import ENDS, Place, Track

RUN_OF_BOOSTERS = 8


def reading(part: str, slots: Slots) -> int:
    """What a container reads as."""
    used = [slot[1] for slot in slots if slot is not None]
    if part == "auto-crafter":
        return len(used)
    if not used:
        return 0
    return 1 + (14 * sum(used)) // (64 * len(slots))


class Signals:
    """Dust, the power in blocks, and what each cell gets, once the given outputs have spread."""

    def __init__(self, wiring: Wiring, out: dict[Place, int]) -> None:
        self.wiring = wiring
        self.pieces = wiring.pieces
        self.parts = wiring.parts
        self.out = dict(out)
        self.strong = {at: self._strong(at) for at in wiring.solids}
        self.dust = {at: self._from_sources(at) for at in wiring.dust}
        self._spread()
        self.block = {at: max(self.strong[at], self._weak(at)) for at in wiring.solids}
        self.signal = {at: self._signal(at) for at in self.pieces}
        self.boosted: set[Place] = set()

    # What a part gives to a cell beside it.

    def given(self, source: Place, to: Place) -> int:
        """What the part in ``source`` gives to the cell ``to`` beside it; blocks are no parts here."""
        part = self.parts.get(source)
        if part == "torch":
            return 0 if to == support(self.pieces[source]) else self.out[source]
        if part in GIVES_ALL_ROUND:
            return self.out[source]
        if part in GIVES_IN_FRONT:
            return self.out[source] if to == front(self.pieces[source]) else 0
        if part == "dust":
            return self.dust[source] if to in self.wiring.points_to[source] else 0
        return 0

    def from_cell(self, source: Place, to: Place) -> int:
        """What comes out of a cell into the one beside it: of the part, or of the powered block there."""
        return max(self.given(source, to), self.block.get(source, 0))

    def _signal(self, at: Place) -> int:
        return max((self.from_cell(cell, at) for cell in self.wiring.beside[at]), default=0)

    # Blocks.

    def _strong(self, at: Place) -> int:
        """A torch under it, a repeater or comparator facing it, a lever or button or detector rail on it."""
        found = [0]
        for cell in self.wiring.beside[at]:
            part = self.parts[cell]
            if part in GIVES_IN_FRONT or (part == "torch" and cell == step(at, "down")):
                found.append(self.given(cell, at))
            elif part in GIVES_ALL_ROUND and support(self.pieces[cell]) == at:
                found.append(self.out[cell])
        return max(found)

    def _weak(self, at: Place) -> int:
        """Dust on it or pointing into it."""
        dust = [cell for cell in self.wiring.beside[at] if self.parts[cell] == "dust"]
        return max((self.given(cell, at) for cell in dust), default=0)

    # Dust.

    def _spread(self) -> None:
        """Each dust is one weaker than the strongest that it takes from."""
        changed = True
        while changed:
            changed = False
            for at in self.dust:
                strongest = max((self.dust[other] - 1 for other in self.wiring.takes_from[at]), default=0)
                if strongest > self.dust[at]:
                    self.dust[at] = strongest
                    changed = True

    def _from_sources(self, at: Place) -> int:
        """From the parts that give to the cell and from strongly powered blocks, but not from dust."""
        beside = [cell for cell in self.wiring.beside[at] if self.parts[cell] != "dust"]
        return max((max(self.given(cell, at), self.strong.get(cell, 0)) for cell in beside), default=0)

    # Rails.

    def pass_along_boosters(self, track: Track) -> None:
        """A booster with a direct signal passes it along live links to 8 more boosters."""
        boosters = [at for at, part in track.part.items() if part == "booster-rail"]
        self.boosted = {at for at in boosters if self.signal[at]}
        last = set(self.boosted)
        for _ in range(RUN_OF_BOOSTERS):
            found = {rail for at in last for rail in linked_rails(track, at) if rail in boosters}
            last = found - self.boosted
            self.boosted |= last

    def has_signal(self, at: Place) -> bool:
        """Whether a rail, lamp, hopper or auto-crafter has a signal."""
        return at in self.boosted or self.signal[at] > 0

    # What the parts with a delay are asked for.

    def asked(self, at: Place, slots: dict[Place, Slots]) -> int:
        """What a torch, repeater or comparator should put out."""
        piece = self.pieces[at]
        if piece.part == "torch":
            return 0 if self.block.get(support(piece), 0) else 15
        if piece.part == "repeater":
            return 15 if self.from_cell(back(piece), at) else 0
        behind, beside = self._behind(piece, slots), self._beside(piece)
        if piece.mode == "subtract":
            return max(0, behind - beside)
        return 0 if beside > behind else behind

    def _behind(self, piece: Piece, slots: dict[Place, Slots]) -> int:
        """A container's reading alone, or a signal, or a reading through one solid block."""
        behind = back(piece)
        beyond = step(behind, OPPOSITE[piece.facing])
        if behind in slots:
            return reading(self.parts[behind], slots[behind])
        power = self.from_cell(behind, piece.at)
        if behind in self.block and beyond in slots and power < 15:
            return reading(self.parts[beyond], slots[beyond])
        return power

    def _beside(self, piece: Piece) -> int:
        """At the sides only dust and the front of a repeater or comparator count."""
        counting = [at for at in sides(piece) if self.parts.get(at) in ("dust", *GIVES_IN_FRONT)]
        return max((self.given(at, piece.at) for at in counting), default=0)

    def is_locked(self, at: Place) -> bool:
        """Whether a repeater or comparator that faces it from the side is powered."""
        return any(self.out[other] for other in self.wiring.lockers[at])

    # For watching.

    def on(self) -> set[Place]:
        """The signal parts that put something out."""
        return {at for at, strength in (self.out | self.dust).items() if strength}

    def probe(self, at: Place) -> int:
        """What a probe reads."""
        if at in self.out:
            return self.out[at]
        if at in self.dust:
            return self.dust[at]
        if self.parts.get(at) in ("rail", "booster-rail", "lamp", "hopper", "auto-crafter"):
            return 15 if self.has_signal(at) else 0
        return self.block.get(at, 0)


def linked_rails(track: Track, at: Place) -> list[Place]:
    """The rails at the other end of the live links of a rail."""
    links = track.live_links(at)
    found = [track.found_by_end(at, way, rise) for way, rise in ENDS[track.shape[at]] if way in links]
    return [rail for rail in found if rail is not None]
