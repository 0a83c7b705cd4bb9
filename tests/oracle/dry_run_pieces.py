"""Pieces in plain words, what stands beside what, and where dust points: what never changes in a run.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from typing import NamedTuple

from tests.oracle.shapes import BACK, STEP, Place

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


class Wiring:
    """The pieces of a plan: which cell lies beside which, and where its dust leads."""

    def __init__(self, pieces: list[Piece]) -> None:
        self.pieces = {piece.at: piece for piece in pieces}
        self.parts = {piece.at: piece.part for piece in pieces}
        self.solids = self.of_parts(*SOLID)
        self.dust = self.of_parts("dust")
        self.beside = {at: self._filled_beside(at) for at in self.pieces}
        self.lockers = {at: self._lockers(at) for at in self.pieces}
        self.takes_from = {at: self._takes_from(at) for at in self.dust}
        self.points_to = {at: self._points_to(at) for at in self.dust}

    def of_parts(self, *parts: str) -> list[Place]:
        """The cells of those parts, in file order."""
        return [at for at, part in self.parts.items() if part in parts]

    def _filled_beside(self, at: Place) -> list[Place]:
        return [cell for cell in (step(at, way) for way in WAYS) if cell in self.pieces]

    def _lockers(self, at: Place) -> list[Place]:
        """The repeaters and comparators that face a repeater from a side."""
        piece = self.pieces[at]
        if piece.part != "repeater":
            return []
        beside = [cell for cell in sides(piece) if self.parts.get(cell) in GIVES_IN_FRONT]
        return [cell for cell in beside if front(self.pieces[cell]) == at]

    def _linked_dust(self, at: Place, way: str) -> list[Place]:
        """The dust that a dust links to on one side: at its level, one up, one down."""
        beside = step(at, way)
        cells = [beside]
        if self.parts.get(step(at, "up")) not in SOLID:
            cells.append(step(beside, "up"))
        if self.parts.get(beside) not in SOLID:
            cells.append(step(beside, "down"))
        return [cell for cell in cells if self.parts.get(cell) == "dust"]

    def _takes_from(self, at: Place) -> list[Place]:
        """The linked dust but the one that is one up and lies on glass or a slab."""
        linked = [cell for way in STEP for cell in self._linked_dust(at, way)]
        return [cell for cell in linked if cell[1] <= at[1] or not self._lies_on_glass(cell)]

    def _lies_on_glass(self, at: Place) -> bool:
        return self.parts.get(step(at, "down")) in ("glass", "slab")

    def _links(self, at: Place, way: str) -> bool:
        beside = step(at, way)
        part = self.parts.get(beside)
        along = part == "repeater" and self.pieces[beside].facing in (way, OPPOSITE[way])
        return along or part in DUST_BENDS_TO or bool(self._linked_dust(at, way))

    def _points_to(self, at: Place) -> list[Place]:
        """The cell under a dust and those that it points into."""
        linked = {way for way in STEP if self._links(at, way)}
        if not linked:
            linked = set(STEP)
        elif linked <= {"north", "south"}:
            linked = {"north", "south"}
        elif linked <= {"east", "west"}:
            linked = {"east", "west"}
        return [step(at, "down"), *(step(at, way) for way in linked)]
