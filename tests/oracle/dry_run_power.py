"""What gives a signal to what, worked out anew from what every part puts out.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from typing import NamedTuple

from tests.oracle.shapes import BACK, ENDS, STEP, Place, Track

WAYS = {"north": (0, 0, -1), "east": (1, 0, 0), "south": (0, 0, 1), "west": (-1, 0, 0)}
WAYS |= {"up": (0, 1, 0), "down": (0, -1, 0)}
OPPOSITE = {**BACK, "up": "down", "down": "up"}

SOLID = ("solid-block", "target-block", "barrel", "auto-crafter", "lamp")
CARRIES = (*SOLID, "hopper", "glass", "slab")
SLOTS = {"hopper": 5, "barrel": 27, "auto-crafter": 9}
GIVES_ALL_ROUND = ("lever", "button", "detector-rail")
GIVES_IN_FRONT = ("repeater", "comparator")
HUNG = ("torch", "lever", "button")
SIGNAL_PARTS = ("dust", "torch", *GIVES_IN_FRONT, *GIVES_ALL_ROUND)
DUST_BENDS_TO = ("comparator", "torch", "target-block", *GIVES_ALL_ROUND)
RUN_OF_BOOSTERS = 8


class Piece(NamedTuple):
    """A piece as the plan file has it, with all that it may leave out."""

    part: str
    at: Place
    facing: str
    delay: int = 2
    mode: str = "compare"
    wooden: bool = False
    holds: tuple[tuple[str, int], ...] = ()


def step(at: Place, way: str) -> Place:
    """The cell beside this one."""
    dx, dy, dz = WAYS[way]
    return (at[0] + dx, at[1] + dy, at[2] + dz)


def front(piece: Piece) -> Place:
    """The cell that a piece faces."""
    return step(piece.at, piece.facing)


def back(piece: Piece) -> Place:
    """The cell that a piece turns its back to."""
    return step(piece.at, OPPOSITE[piece.facing])


def support(piece: Piece) -> Place:
    """The cell whose part carries the piece: below, or at the back of what hangs or stands."""
    return back(piece) if piece.part in HUNG else step(piece.at, "down")


def sides(piece: Piece) -> list[Place]:
    """The two cells beside a repeater or comparator."""
    ways = ("east", "west") if piece.facing in ("north", "south") else ("north", "south")
    return [step(piece.at, way) for way in ways]


def reading(part: str, slots: list[tuple[str, int] | None]) -> int:
    """What a container reads as."""
    used = [slot[1] for slot in slots if slot is not None]
    if part == "auto-crafter":
        return len(used)
    if not used:
        return 0
    return 1 + (14 * sum(used)) // (64 * len(slots))


class Signals:
    """Dust, the power in blocks, and what each cell gets, once the given outputs have spread."""

    def __init__(self, pieces: dict[Place, Piece], out: dict[Place, int], track: Track) -> None:
        self.pieces = pieces
        self.out = out
        self.solids = [at for at, piece in pieces.items() if piece.part in SOLID]
        self.dust: dict[Place, int] = {}
        self.strong = {at: self._strong(at) for at in self.solids}
        self._spread()
        self.block = {at: max(self.strong[at], self._weak(at)) for at in self.solids}
        self.signal = {at: self._signal(at) for at in pieces}
        self._pass_along_boosters(track)

    def part(self, at: Place) -> str | None:
        """The part in a cell."""
        return self.pieces[at].part if at in self.pieces else None

    # What a part gives to a cell beside it.

    def given(self, source: Place, to: Place) -> int:
        """What the part in ``source`` gives to the cell ``to`` beside it; blocks are no parts here."""
        part = self.part(source)
        if part == "torch":
            return 0 if to == support(self.pieces[source]) else self.out[source]
        if part in GIVES_ALL_ROUND:
            return self.out[source]
        if part in GIVES_IN_FRONT:
            return self.out[source] if to == front(self.pieces[source]) else 0
        if part == "dust":
            return self.dust[source] if to in self.points_to(source) else 0
        return 0

    def from_cell(self, source: Place, to: Place) -> int:
        """What comes out of a cell into the one beside it: of the part, or of the powered block there."""
        return max(self.given(source, to), self.block.get(source, 0))

    def _signal(self, at: Place) -> int:
        return max(self.from_cell(step(at, way), at) for way in WAYS)

    # Blocks.

    def _strong(self, at: Place) -> int:
        """A torch under it, a repeater or comparator facing it, a lever or button or detector rail on it."""
        found = [0]
        for way in WAYS:
            source = step(at, way)
            part = self.part(source)
            if part == "torch" and way == "down":
                found.append(self.given(source, at))
            elif part in GIVES_IN_FRONT:
                found.append(self.given(source, at))
            elif part in GIVES_ALL_ROUND and support(self.pieces[source]) == at:
                found.append(self.out[source])
        return max(found)

    def _weak(self, at: Place) -> int:
        """Dust on it or pointing into it."""
        beside = [step(at, way) for way in WAYS]
        return max((self.given(cell, at) for cell in beside if self.part(cell) == "dust"), default=0)

    # Dust.

    def _spread(self) -> None:
        dust = [at for at, piece in self.pieces.items() if piece.part == "dust"]
        self.dust = {at: self._from_sources(at) for at in dust}
        changed = True
        while changed:
            changed = False
            for at in dust:
                strongest = max((self.dust[other] - 1 for other in self._takes_from(at)), default=0)
                if strongest > self.dust[at]:
                    self.dust[at] = strongest
                    changed = True

    def _from_sources(self, at: Place) -> int:
        """From the parts that give to the cell and from strongly powered blocks, but not from dust."""
        beside = [step(at, way) for way in WAYS]
        parts = [self.given(cell, at) for cell in beside if self.part(cell) != "dust"]
        return max(*parts, *(self.strong.get(cell, 0) for cell in beside))

    def _linked_dust(self, at: Place, way: str) -> list[Place]:
        """The dust that a dust links to on one side: at its level, one up, one down."""
        beside = step(at, way)
        cells = [beside]
        if self.part(step(at, "up")) not in SOLID:
            cells.append(step(beside, "up"))
        if self.part(beside) not in SOLID:
            cells.append(step(beside, "down"))
        return [cell for cell in cells if self.part(cell) == "dust"]

    def _takes_from(self, at: Place) -> list[Place]:
        """The linked dust but the one that is one up and lies on glass or a slab."""
        linked = [cell for way in STEP for cell in self._linked_dust(at, way)]
        return [cell for cell in linked if cell[1] <= at[1] or not self._lies_on_glass(cell)]

    def _lies_on_glass(self, at: Place) -> bool:
        return self.part(step(at, "down")) in ("glass", "slab")

    def _links(self, at: Place, way: str) -> bool:
        beside = step(at, way)
        part = self.part(beside)
        if part == "repeater":
            return self.pieces[beside].facing in (way, OPPOSITE[way])
        return part in DUST_BENDS_TO or bool(self._linked_dust(at, way))

    def points_to(self, at: Place) -> list[Place]:
        """The cell under a dust and those that it points into."""
        linked = {way for way in STEP if self._links(at, way)}
        if not linked:
            linked = set(STEP)
        elif linked <= {"north", "south"}:
            linked = {"north", "south"}
        elif linked <= {"east", "west"}:
            linked = {"east", "west"}
        return [step(at, "down"), *(step(at, way) for way in linked)]

    # Rails.

    def _pass_along_boosters(self, track: Track) -> None:
        """A booster with a direct signal passes it along live links to 8 more boosters."""
        boosters = [at for at, part in track.part.items() if part == "booster-rail"]
        reached = {at for at in boosters if self.signal[at]}
        last = set(reached)
        for _ in range(RUN_OF_BOOSTERS):
            last = {rail for at in last for rail in linked_rails(track, at) if rail in boosters} - reached
            reached |= last
        self.signal |= dict.fromkeys(reached, 15)

    # What the parts with a delay are asked for.

    def asked(self, at: Place, slots: dict[Place, list[tuple[str, int] | None]]) -> int:
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

    def _behind(self, piece: Piece, slots: dict[Place, list[tuple[str, int] | None]]) -> int:
        """A container's reading alone, or a signal, or a reading through one solid block."""
        behind = back(piece)
        beyond = step(behind, OPPOSITE[piece.facing])
        if behind in slots:
            return reading(self.pieces[behind].part, slots[behind])
        power = self.from_cell(behind, piece.at)
        if behind in self.block and beyond in slots and power < 15:
            return reading(self.pieces[beyond].part, slots[beyond])
        return power

    def _beside(self, piece: Piece) -> int:
        counting = ("dust", *GIVES_IN_FRONT)
        return max(self.given(at, piece.at) if self.part(at) in counting else 0 for at in sides(piece))

    def lockers(self, at: Place) -> list[Place]:
        """The repeaters and comparators that face a repeater from a side."""
        piece = self.pieces[at]
        beside = [self.pieces[cell] for cell in sides(piece) if self.part(cell) in GIVES_IN_FRONT]
        return [other.at for other in beside if front(other) == at] if piece.part == "repeater" else []

    def is_locked(self, at: Place) -> bool:
        """Whether a repeater or comparator from the side is powered."""
        return any(self.out[other] for other in self.lockers(at))

    # For watching.

    def on(self) -> set[Place]:
        """The signal parts that put something out."""
        return {at for at, strength in (self.out | self.dust).items() if strength}

    def probe(self, at: Place) -> int:
        """What a probe reads."""
        part = self.part(at)
        if at in self.out:
            return self.out[at]
        if part == "dust":
            return self.dust[at]
        if part in ("rail", "booster-rail", "lamp", "hopper", "auto-crafter"):
            return 15 if self.signal[at] else 0
        return self.block.get(at, 0)


def linked_rails(track: Track, at: Place) -> list[Place]:
    """The rails at the other end of the live links of a rail."""
    links = track.live_links(at)
    found = [track.found_by_end(at, way, rise) for way, rise in ENDS[track.shape[at]] if way in links]
    return [rail for rail in found if rail is not None]
