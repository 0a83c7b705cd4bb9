"""A junction with a reader that is wide and slow, but plain: what is proved, and broken, in tests.

Carts come from the west. The hopper under the rail takes the waybill and reads 2; the second dust behind its
comparator is on then, and with it the line, which throws the switch in the east. The hopper below takes the
waybill back after a chain of repeaters has counted the hold, and a torch stops it before it takes another.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from model.grid import Cell, Heading
from model.parts import Part
from model.pieces import Piece
from model.plan import Arm, ArmEnd, Details, Plan, Route, plan_of
from tests.model.dry_run.building import UP, Bench, E, N, W, holding

READER, EMPTYING, SWITCH, RELOCK = Cell(2, 63, 0), Cell(2, 62, 0), Cell(14, 64, 0), Cell(3, 62, 0)
CHAIN = [Cell(x, 63, -5) for x in range(-6, 2)]
"""The repeaters that count the hold."""
LINE = [(x, -5) for x in range(2, 15) if x != 8] + [(14, z) for z in range(-4, 0)]
DELAYED = [(-7, 63, -5), (-7, 62, -4), (-7, 61, -3), *((-7, 60, z) for z in (-2, -1, 0))]
BRANCH = [(5, 63, -4), (5, 62, -3), (5, 61, -2), (5, 61, -1), (5, 61, 0), (4, 61, 0)]


class ReaderLine:
    """From Quay in the west to Fen in the east, or when called to Mill in the south."""

    def __init__(
        self,
        z: int = 0,
        names: Sequence[str] = ("Quay", "Fen", "Mill"),
        waybill: str = "Salt",
        count: int = 22,
        chain: Sequence[int] = (8,) * 8,
    ) -> None:
        self.bench = Bench()
        self._z = z
        self._lay_track()
        self._put(
            "hopper",
            *READER,
            E,
            **holding((f"waybill:{waybill}", count - 4), *[(f"waybill:{waybill}", 1)] * 4),
        )
        self._lay_line()
        self._empty(chain)
        start, idle, called = names
        self._arm(start, (-2, 0), Heading.EAST, is_in=True)
        self._arm(idle, (17, 0), Heading.EAST)
        self._arm(called, (14, 3), Heading.SOUTH)
        self.routes = (Route(start, idle, called, waybill),)

    def plan(self, *without: Cell, more: Sequence[Piece] = ()) -> Plan:
        """The plan, without the pieces in some cells, and with some more."""
        pieces = [piece for piece in self.bench.pieces.values() if piece.at not in without]
        return plan_of([*pieces, *more], Details(arms=tuple(self.bench.arms), routes=self.routes))

    def _put(self, part: str, x: int, y: int, z: int, facing: Any = None, **more: Any) -> None:
        self.bench.put(part, x, z + self._z, facing, y, **more)

    def _lay_track(self) -> None:
        # A solid block over the torch that stops the lower hopper would stop the upper one, too.
        self._put("glass", 3, 63, 0)
        for x in range(-2, 18):
            if x == READER.x:
                self.bench.pieces[Cell(x, 64, self._z)] = Piece(Part.RAIL, Cell(x, 64, self._z), E)
            else:
                self._put("rail", x, 64, 0, E)
        for z in (1, 2, 3):
            self._put("rail", SWITCH.x, 64, z, N)

    def _lay_line(self) -> None:
        self._put("comparator", 2, 63, -1, N)
        self._put("dust", 2, 63, -2)
        self._put("dust", 2, 63, -3)
        self._put("repeater", 2, 63, -4, N)
        for x, z in LINE:
            self._put("dust", x, 63, z)
        self._put("repeater", 8, 63, -5, E)

    def _empty(self, chain: Sequence[int]) -> None:
        self._put("hopper", *EMPTYING, W)
        self._put("barrel", 1, 62, 0)
        for x, y, z in BRANCH:
            self._put("dust", x, y, z)
        self._put("solid-block", 3, 61, 0)
        self._put("torch", *RELOCK, UP)
        self._put("solid-block", 2, 60, 0)
        self._put("torch", 2, 61, 0, UP)
        for x, delay in zip(range(1, 1 - len(chain), -1), chain, strict=True):
            self._put("repeater", x, 63, -5, W, delay=delay)
        for x in range(1 - len(chain), -7, -1):
            self._put("dust", x, 63, -5)
        for at in [*DELAYED, *((x, 60, 0) for x in range(-6, 2))]:
            self._put("dust", *at)

    def _arm(self, name: str, at: tuple[int, int], heading: Heading, *, is_in: bool = False) -> None:
        end = ArmEnd(Cell(at[0], 64, at[1] + self._z), heading)
        self.bench.arms.append(Arm(name, end if is_in else None, None if is_in else end))
