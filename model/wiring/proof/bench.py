"""The bench on which a wired plan is proved: trains run over it, and what is wrong is told in words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from math import ceil
from typing import Final

from model.dry_run import Arrival, DryRun, EventRefused, Lost, Why
from model.dry_run.carts import TICKS_A_CELL
from model.grid import Cell
from model.parts import RAILS, SIGNAL_PARTS, Part
from model.plan import Plan
from model.signals.items import items_in
from model.wiring.proof.runs import Drive, Run
from model.wiring.proof.ways import takes_from_carts
from model.wiring.proof.words import elsewhere_words, lost_words
from model.wording import tr

TICKS_LEFT: Final = 2_000
"""Ticks that a train may take beside those in which a cart crosses every rail of the plan four times."""
LOOKS: Final = 100
"""Ticks from look to look at the torches: one that has burnt out stays out for longer."""


class Bench:
    """A plan that runs, and how its parts are while nothing happens."""

    def __init__(self, plan: Plan) -> None:
        self._run = DryRun(plan)
        self._outputs = [piece.at for piece in plan.pieces if piece.part in SIGNAL_PARTS]
        self._torches = [piece.at for piece in plan.pieces if piece.part is Part.TORCH]
        self._readers = [piece.at for piece in plan.pieces if takes_from_carts(plan, piece)]
        rails = sum(piece.part in RAILS for piece in plan.pieces)
        self._limit = TICKS_LEFT + ceil(4 * TICKS_A_CELL * rails)
        self._sent = 0
        self._rest = self._state()
        self.unsure: list[tuple[Cell, Cell]] = []
        """The pairs whose order within a tick decided anything in the last run."""
        self.headways: dict[str, int] = {}
        """By arm, the most ticks from the last cart of a called train coming in until all is at rest."""

    def faults(self, run: Run) -> list[str]:
        """What goes wrong in a run; nothing where it is passed. After a failed one all begins afresh."""
        if run.is_fresh:
            self._begin()
        self._run.unsure.clear()
        found: list[str] = []
        for drive in run.drives:
            found = list(self._drive(drive))
            if found:
                self._begin()
                break
        return found

    def _begin(self) -> None:
        self._run.reset()
        self._sent = 0

    def _drive(self, drive: Drive) -> Iterator[str]:
        """Sends a train, and looks at it when all is quiet again."""
        run = self._run
        arrived, lost, begun = len(run.arrivals), len(run.lost), run.tick
        try:
            burnt = self._send(drive)
        except EventRefused as refused:
            yield f"{refused}"
            return
        first = self._sent + 1
        self._sent += len(drive.send.loads)
        self.unsure = [unsure.at for unsure in run.unsure]
        yield from self._carts(drive, first, run.arrivals[arrived:], [*run.lost[lost:], *run.running])
        yield from (tr("the torch at {torch} burns out", torch=torch) for torch in burnt)
        if run.is_quiet:
            yield from self._not_at_rest()
        else:
            yield tr("it is not at rest {ticks} ticks after the train was sent", ticks=run.tick - begun)
        if drive.route.called:
            self._measure(drive, begun)

    def _send(self, drive: Drive) -> dict[Cell, None]:
        """Until all is quiet again; returns the torches that burnt out. Raises EventRefused."""
        run = self._run
        burnt: dict[Cell, None] = {}
        end = run.tick + self._limit
        run.step([drive.send])
        while not run.is_quiet and run.tick < end:
            run.step()
            if run.tick % LOOKS == 0:
                burnt.update((torch, None) for torch in self._torches if run.is_burnt_out(torch))
        return burnt

    def _carts(
        self, drive: Drive, first: int, arrivals: Sequence[Arrival], lost: Sequence[Lost]
    ) -> Iterator[str]:
        of = len(drive.send.loads)
        missing: dict[tuple[Why, Cell], list[int]] = {}
        for one in lost:
            missing.setdefault((one.why, one.at), []).append(one.cart - first)
        elsewhere: dict[str, list[int]] = {}
        for arrival in arrivals:
            if arrival.arm != drive.route.goal:
                elsewhere.setdefault(arrival.arm, []).append(arrival.cart - first)
        yield from (lost_words(why, cell, carts, of) for (why, cell), carts in missing.items())
        yield from (elsewhere_words(arm, drive.route.goal, carts, of) for arm, carts in elsewhere.items())
        if not lost:
            yield from _taken(drive, arrivals)

    def _not_at_rest(self) -> Iterator[str]:
        """The first signal that is not as it was, and each reader that holds more or less."""
        outputs, counts = self._state()
        before_outputs, before_counts = self._rest
        for cell, before, after in zip(self._outputs, before_outputs, outputs, strict=True):
            if before != after:
                yield tr(
                    "the signal at {cell} stays at {after}, and was {before}",
                    cell=cell,
                    after=after,
                    before=before,
                )
                break
        for cell, before, after in zip(self._readers, before_counts, counts, strict=True):
            if before != after:
                yield tr(
                    "the reader at {cell} has {after} items, and had {before}",
                    cell=cell,
                    after=after,
                    before=before,
                )

    def _state(self) -> tuple[list[int], list[int]]:
        run = self._run
        counts = [items_in(run.contents(cell)) for cell in self._readers]
        return [run.strength(cell) for cell in self._outputs], counts

    def _measure(self, drive: Drive, begun: int) -> None:
        """From the last cart on: the next train may come in with the tick to come."""
        cells = (len(drive.send.loads) - 1) * (drive.send.gap + 1)
        ticks = self._run.tick - begun - ceil(TICKS_A_CELL * cells)
        self.headways[drive.route.start] = max(ticks, self.headways.get(drive.route.start, 0))


def _taken(drive: Drive, arrivals: Sequence[Arrival]) -> Iterator[str]:
    """Each reader on the way takes its own waybill only, one of a cart at most, and none where none calls."""
    left = [dict(arrival.carries) for arrival in sorted(arrivals, key=lambda arrival: arrival.cart)]
    taken = Counter[str]()
    for before, after in zip(drive.send.loads, left, strict=True):
        taken.update({name: count - after[name] for name, count in before})
    carts = len(drive.send.loads)
    own = 0 if drive.waybill is None else taken.pop(drive.waybill)
    if not min(1, drive.takers) <= own <= carts * drive.takers:
        yield tr("readers took {own} of {waybill} from %n cart(s)", "", carts, own=own, waybill=drive.waybill)
    yield from (tr("a reader took {name}", name=name) for name, count in taken.items() if count)
