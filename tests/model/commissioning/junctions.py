"""Junctions worked out by the model and by trying, side by side."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import islice
from pathlib import Path

from model.commissioning import Commissioning, Fault, Run
from model.grid import Cell
from model.plan import Plan
from model.routing.junction import Junction
from tests.oracle.adapter import WORD_OF, drawn_from, plan_from
from tests.oracle.commissioning import Designed, Tried
from tests.oracle.commissioning import Fault as PlainFault
from tests.oracle.random_junctions import junctions

EXAMPLES = sorted((Path(__file__).parents[3] / "resources" / "examples").glob("*.plan.json"))


class Pair:
    """One junction on both sides; the signals as designed are the model's."""

    def __init__(self, plan: Plan) -> None:
        self.junction = Junction(plan)
        self.model = Commissioning(self.junction)
        choice = self.junction.choice
        thrown = {arm: plain_cells(cells) for arm, cells in choice.thrown.items()}
        self.tried = Tried(Designed(drawn_from(plan), plain_cells(choice.idle), thrown))

    def sent(self, run: Run) -> tuple[str, bool]:
        """A run in plain words."""
        return run.start, run.waybill is not None

    def tried_outcome(self, run: Run, faults: Iterable[Fault]) -> str:
        """Where the cart goes, by trying."""
        return self.tried.outcome(self.sent(run), tuple(map(plain, faults)))


def plain_cells(cells: Iterable[Cell]) -> frozenset[tuple[int, int, int]]:
    return frozenset(map(tuple, cells))


def plain(fault: Fault) -> PlainFault:
    """A fault in plain words."""
    at = None if fault.at is None else tuple(fault.at)
    return str(fault.kind), fault.arm, at, None if fault.shape is None else WORD_OF[fault.shape]


def random_plans(first_seed: int, how_many: int) -> Iterator[tuple[int, Plan]]:
    """Random junctions in which something is wired, with the seed of each."""
    wired = (
        (seed, plan)
        for seed, made in junctions(first_seed)
        if Junction(plan := plan_from(*made)).choice.wired
    )
    return islice(wired, how_many)
