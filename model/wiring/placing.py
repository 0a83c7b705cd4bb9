"""Puts the drives and readers of one attempt in their places."""

from __future__ import annotations

from typing import Final

from model.grid import Cell, Heading
from model.pieces import Pieces
from model.wiring.drives import Drive, Driven, drives
from model.wiring.laying.laid import Laid, Limits, Line
from model.wiring.modules.fitting import Fitted, fit
from model.wiring.needs import Reading
from model.wiring.readers import Stand
from model.wiring.result import Unwired
from model.wiring.trial import Trial
from model.wording import tr

_SHAKE: Final = 12
"""How far the prices of two places of a reader may be apart for the dearer one to be tried first."""


class Placing:
    """Where drives and readers stand in one attempt, and the pieces of the plan with them."""

    def __init__(self, trial: Trial) -> None:
        self.trial = trial
        self.pieces = trial.plan.pieces
        self.drives: dict[Cell, Drive] = {}
        self.places: dict[str, Stand] = {}

    def place_drives(self) -> bool:
        """Puts a drive under every switch that needs one."""
        return all(map(self._place_drive, self.trial.needs.driven))

    def place_readers(self) -> str | None:
        """Puts down a reader for every arm that needs one; the first arm for which there is no place."""
        blame = self.trial.blame
        in_order = sorted(self.trial.needs.readings, key=lambda reading: -blame.get(reading.arm, 0))
        return next((reading.arm for reading in in_order if not self._place_reader(reading)), None)

    def lines(self) -> list[Line]:
        """What is to be laid for the readers that stand."""
        return [
            Line(
                reading.arm,
                self.places[reading.arm].start,
                tuple((self.drives[switch].target,) for switch in reading.thrown),
            )
            for reading in self.trial.needs.readings
            if reading.arm in self.places
        ]

    def limits(self) -> Limits:
        """How late each line may be at each of its targets."""
        return {
            (reading.arm, place): limit
            for reading in self.trial.needs.readings
            for place, limit in self._limits(reading, self.places[reading.arm]).items()
        }

    def with_lines(self, laid: tuple[Laid, ...]) -> Pieces:
        """All pieces, those of the lines last."""
        return Fitted((), tuple(piece for each in laid for piece in each.pieces)).applied(self.pieces)

    def _place_drive(self, driven: Driven) -> bool:
        found = list(drives(self.trial.ground(self.pieces), driven))
        possible = [drive for drive in found if isinstance(drive, Drive)]
        if not possible:
            for why in found:
                self.trial.note(Unwired(None, driven.at, str(why)))
            return False
        drive = self._chosen(possible, self.trial.drives.get(driven.at))
        self.drives[driven.at] = drive
        self.pieces = drive.fitted.applied(self.pieces)
        return True

    def _chosen(self, possible: list[Drive], before: Drive | None) -> Drive:
        """That of the last attempt where it may stay; else any, the quicker ones more often."""
        if before in possible:
            return before
        share = 0.0 if self.trial.is_first else self.trial.random.random() ** 2
        return possible[int(share * len(possible))]

    def _place_reader(self, reading: Reading) -> bool:
        ground = self.trial.ground(self.pieces)
        whys: list[str] = []
        for stand in self._in_order(reading.arm):
            if any(limit < 0 for limit in self._limits(reading, stand).values()):
                whys.append(tr("its signal would come too late at the first switch."))
                continue
            fitted = fit(ground, stand.module)
            if isinstance(fitted, str):
                whys.append(fitted)
                continue
            before, self.pieces = self.pieces, fitted.applied(self.pieces)
            self.places[reading.arm] = stand
            shut = self._shut()
            if shut is None:
                return True
            self.pieces = before
            del self.places[reading.arm]
            whys.append(tr("it would leave no room for a line at {shut}.", shut=shut))
        whys.append(tr("no straight of it is long enough before the first switch that it must throw."))
        why = tr("There is no place for the reader of {arm}: {whys}", arm=reading.arm, whys=whys[0])
        self.trial.note(Unwired(reading.arm, reading.first, why))
        return False

    def _shut(self) -> Cell | None:
        """A start of a line, or a target block, at which no dust of that line can lie."""
        ground = self.trial.ground(self.pieces)
        for line in self.lines():
            targets = tuple(target for group in line.targets for target in group)
            if not ground.takes_line(line.start, line.start, targets):
                return line.start
            for target in targets:
                sides = (target.step(heading) for heading in Heading)
                if not any(ground.takes_line(side, line.start, targets) for side in sides):
                    return target
        return None

    def _in_order(self, arm: str) -> list[Stand]:
        """The place of the last attempt where it may stay, then the others, the cheap ones mostly first."""
        found, before = list(self.trial.stands[arm]), self.trial.places.get(arm)
        if not self.trial.is_first:
            found.sort(key=lambda stand: stand.price + self.trial.random.random() * _SHAKE)
        return found if before is None else [before, *found]

    def _limits(self, reading: Reading, stand: Stand) -> dict[int, int]:
        return {
            place: slack - self.drives[switch].delay
            for place, switch in enumerate(reading.thrown)
            if (slack := stand.slack[switch]) is not None
        }
