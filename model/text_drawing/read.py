"""Reading a drawing in which each rail is given by the way it faces."""

from __future__ import annotations

import re
from textwrap import dedent
from typing import Final

import msgspec

from model.grid import Cell, Facing, Heading
from model.parts import TRAITS, Part
from model.pieces import Piece, rests_on
from model.plan import Arm, ArmEnd, Details, Plan, Route, Side, plan_of
from model.text_drawing.glyphs import EMPTY, LETTERS, RAIL_GLYPHS, TYPED
from model.text_drawing.settings import piece_from_words

ORDER_MARKS: Final = "123456789abcdefghijklmnopqrstuvwxyz"

_NUMBER: Final = r"(-?\d+)"
_LEVEL: Final = re.compile(rf"level {_NUMBER}( on blocks)?(?:, from {_NUMBER} {_NUMBER})?")
_LEGEND: Final = re.compile(r"(\S): ([a-z].*)")
_ARM: Final = re.compile(r"arm (.+?): ((?:in|out) .*)")
_END: Final = re.compile(rf"(in|out) {_NUMBER} {_NUMBER} {_NUMBER} (north|east|south|west)")
_ROUTE: Final = re.compile(r"route (.+?): idle ([^,]+)(?:, called ([^,]+))?(?:, waybill ([^,]+))?")
_SIDE: Final = re.compile(r"running side (left|right)")


class DrawingError(ValueError):
    """A line that says nothing in this notation; the message names it."""


def plan_from_drawing(text: str) -> Plan:
    """The plan of a drawing; raises DrawingError for a line that it cannot read.

    A straight rail mark says the part and the way it faces: ``│ ║ ┆`` north, ``─ ═ ┄`` east; in place of
    line work ``| - = .`` may be typed. Pieces are placed in reading order. After the rows of a level a line
    ``order`` may begin rows of the same size: pieces under ``1`` to ``9``, then ``a`` to ``z`` come after
    all others, in that order. ``on blocks`` puts a solid block under each piece of the level that needs
    something below and has nothing there; these come before all others.
    """
    return _Reader(dedent(text).strip("\n")).plan()


class _Level(msgspec.Struct):
    corner: Cell
    on_blocks: bool
    rows: list[str] = []
    order: list[str] | None = None


class _Reader:
    """Takes a drawing line by line."""

    def __init__(self, text: str) -> None:
        self._levels: list[_Level] = []
        self._letters = {
            letter: Piece(part, Cell(0, 0, 0), TRAITS[part].first_facing) for part, letter in LETTERS.items()
        }
        self._details = Details()
        self._in_rows = False
        for line in text.splitlines():
            self._read(line.rstrip())

    def plan(self) -> Plan:
        """The plan of all lines read."""
        placed = [entry for level in self._levels for entry in self._pieces(level)]
        placed.sort(key=lambda entry: entry[0])
        pieces = [piece for _, piece in placed]
        return plan_of([*self._blocks(pieces), *pieces], self._details)

    def _read(self, line: str) -> None:
        if line == "":
            self._in_rows = False
        elif not (self._read_level(line) or self._read_order(line) or self._read_details(line)):
            self._read_row(line)

    def _read_level(self, line: str) -> bool:
        found = _LEVEL.fullmatch(line.replace("−", "-"))
        if found is None:
            return False
        y, on_blocks, x, z = found.groups()
        self._levels.append(_Level(Cell(int(x or 0), int(y), int(z or 0)), on_blocks is not None))
        self._in_rows = True
        return True

    def _read_order(self, line: str) -> bool:
        if line != "order" or not self._in_rows:
            return False
        self._levels[-1].order = []
        return True

    def _read_row(self, line: str) -> None:
        if not self._in_rows:
            raise DrawingError(f"this line says nothing: {line!r}")
        level = self._levels[-1]
        (level.rows if level.order is None else level.order).append(line)

    def _read_details(self, line: str) -> bool:
        details = self._details
        if found := _ARM.fullmatch(line):
            details = details.replace(arms=(*details.arms, _arm(*found.groups())))
        elif found := _ROUTE.fullmatch(line):
            details = details.replace(routes=(*details.routes, _route(found)))
        elif found := _SIDE.fullmatch(line):
            details = details.replace(running_side=Side(found[1]))
        elif found := _LEGEND.fullmatch(line):
            self._letters[found[1]] = piece_from_words(found[2])
        else:
            return False
        self._details, self._in_rows = details, False
        return True

    def _pieces(self, level: _Level) -> list[tuple[int, Piece]]:
        """The pieces of a level, each with when it comes: 0 in reading order, or its number."""
        return [
            (_number(level.order, row, column), self._piece(mark, level.corner.moved(dx=column, dz=row)))
            for row, line in enumerate(level.rows)
            for column, mark in enumerate(line)
            if TYPED.get(mark, mark) not in (EMPTY, " ")
        ]

    def _piece(self, mark: str, at: Cell) -> Piece:
        mark = TYPED.get(mark, mark)
        for part, glyphs in RAIL_GLYPHS.items():
            if mark in glyphs[:2]:
                return Piece(part, at, Facing.NORTH if mark == glyphs[0] else Facing.EAST)
        if mark not in self._letters:
            raise DrawingError(f"{mark!r} in {at} is no part, and no rail by the way it faces")
        return msgspec.structs.replace(self._letters[mark], at=at)

    def _blocks(self, pieces: list[Piece]) -> list[Piece]:
        on_blocks = {level.corner.y for level in self._levels if level.on_blocks}
        filled = {piece.at for piece in pieces}
        below = [piece.at.moved(dy=-1) for piece in pieces if piece.at.y in on_blocks and _stands(piece)]
        return [Piece(Part.SOLID_BLOCK, cell) for cell in below if cell not in filled]


def _stands(piece: Piece) -> bool:
    return rests_on(piece) == piece.at.moved(dy=-1)


def _number(order: list[str] | None, row: int, column: int) -> int:
    mark = order[row][column : column + 1] if order is not None and row < len(order) else ""
    return ORDER_MARKS.find(mark) + 1 if mark else 0


def _route(found: re.Match[str]) -> Route:
    return Route(found[1], found[2], called=found[3], waybill=found[4])


def _arm(name: str, ends: str) -> Arm:
    found = {match[1]: match for match in map(_END.fullmatch, ends.replace("−", "-").split(", ")) if match}
    if len(found) != len(ends.split(", ")):
        raise DrawingError(f"the ends of arm {name} are not 'in x y z heading' or 'out x y z heading'")
    enter, leave = (_end(found[word]) if word in found else None for word in ("in", "out"))
    return Arm(name, enter, leave)


def _end(found: re.Match[str]) -> ArmEnd:
    return ArmEnd(Cell(int(found[2]), int(found[3]), int(found[4])), Heading[found[5].upper()])
