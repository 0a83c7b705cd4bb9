"""The proof of a wired plan: it is run dry, train after train, and everything must arrive and come to rest.

Common practice of the trade, written from memory, no published source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from model.grid import Cell
from model.parts import RAILS
from model.plan import Plan, plan_of
from model.routing.junction import Junction
from model.wiring.proof.bench import Bench
from model.wiring.proof.runs import Run, runs_of
from model.wording import tr


class Headway(Struct, frozen=True):
    """How soon after a called train the next one may come in, by whatever arm."""

    arm: str
    """That of the called train."""
    ticks: int
    """From its last cart coming in until all is at rest again."""


class Proof(Struct, frozen=True):
    """How far a proof is, and what came of it so far."""

    of: int
    """How many runs there are in all."""
    runs: int = 0
    passed: int = 0
    failed: tuple[str, ...] = ()
    """Of each run that failed, what it was and what went wrong."""
    headways: tuple[Headway, ...] = ()
    """Of the arms with a called route, in the order in which they were first run."""

    @property
    def holds(self) -> bool:
        """Whether all runs were made, and passed."""
        return self.passed == self.of


def prove(plan: Plan) -> Iterator[Proof]:
    """One before the first run, one after each; the last is the result. A caller may stop between two."""
    runs = runs_of(Junction(plan))
    bench, otherwise = Bench(plan), _Otherwise(plan)
    passed, failed = 0, list[str]()
    yield Proof(len(runs))
    for number, run in enumerate(runs, start=1):
        faults = bench.faults(run) or otherwise.faults(run, bench.unsure)
        if faults:
            failed.append(tr("{run}: {faults}", run=run.words, faults="; ".join(faults)))
        else:
            passed += 1
        headways = tuple(Headway(arm, ticks) for arm, ticks in bench.headways.items())
        yield Proof(len(runs), number, passed, tuple(failed), headways)


class _Otherwise:
    """The same runs where the order within a tick was not sure: they must pass the other way round, too."""

    def __init__(self, plan: Plan) -> None:
        self._plan = plan
        self._bench: Bench | None = None

    def faults(self, run: Run, unsure: Sequence[tuple[Cell, Cell]]) -> list[str]:
        """What goes wrong the other way round; rails are not tried so: their shapes hang on the order."""
        for one, other in unsure:
            if self._plan.pieces.part_at(one) in RAILS:
                said = tr(
                    "which of the rails at {one} and {other} turns first decides something",
                    one=one,
                    other=other,
                )
                return [said]
        if not unsure:
            return []
        self._bench = self._bench or Bench(_other_way_round(self._plan))
        one, other = unsure[0]
        return [
            tr(
                "where {first} comes before {second} within a tick, {fault}",
                first=other,
                second=one,
                fault=fault,
            )
            for fault in self._bench.faults(run)
        ]


def _other_way_round(plan: Plan) -> Plan:
    """Rails in their order, all other parts in the opposite one."""
    rails = [piece for piece in plan.pieces if piece.part in RAILS]
    others = [piece for piece in plan.pieces if piece.part not in RAILS]
    return plan_of([*others[::-1], *rails], plan.details)
