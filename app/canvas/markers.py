"""Which cells carry the marker of a finding, in buckets, so that painting looks only at what is seen."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import chain
from typing import Final

from app.canvas.geometry import Area
from model.grid import Cell
from model.pauses import with_pauses
from model.rules import Finding, Severity
from model.rules.local import Difference, standing

BUCKET: Final = 16
"""Cells along the side of a bucket."""
GRAVITY: Final = {severity: rank for rank, severity in enumerate(Severity)}

_Key = tuple[int, int, int]
_Bucket = dict[Cell, list[Finding]]


@dataclass(frozen=True)
class Marker:
    """The gravest finding of a cell, and how many there are."""

    severity: Severity
    aside: bool
    count: int = 1

    @property
    def weight(self) -> tuple[bool, int]:
        """The less the graver; findings set aside come last."""
        return self.aside, GRAVITY[self.severity]


class Markers:
    """One marker a cell, by level; findings set aside count only where there is nothing else."""

    def __init__(self, findings: Iterable[Finding] = ()) -> None:
        self._buckets: dict[_Key, _Bucket] = {}
        for finding in with_pauses(findings):
            self._put(finding)

    def on_level(self, level: int) -> dict[Cell, Marker]:
        """The markers of a level."""
        here = (bucket for key, bucket in self._buckets.items() if key[0] == level)
        return {cell: _marker(findings) for bucket in here for cell, findings in bucket.items()}

    def rows_in(self, area: Area, level: int) -> Iterator[list[tuple[Cell, Marker]]]:
        """The markers inside an area of a level, a row of buckets at a time from north to south."""
        columns = range(area.west // BUCKET, area.east // BUCKET + 1)
        for row in range(area.north // BUCKET, area.south // BUCKET + 1):
            buckets = (self._buckets.get((level, column, row)) for column in columns)
            found = [
                (cell, _marker(findings))
                for bucket in buckets
                if bucket
                for cell, findings in bucket.items()
                if area.holds(cell.x, cell.z)
            ]
            if found:
                yield found

    def follow(self, difference: Difference) -> None:
        """Takes over what an edit made of the findings; costs what it changed, however many there are."""
        for finding in difference.gone:
            self._take(finding)
        for finding in difference.come:
            self._put(finding)

    def _put(self, finding: Finding) -> None:
        if finding.at is not None:
            bucket = self._buckets.setdefault(_key(finding.at), {})
            bucket.setdefault(finding.at, []).append(finding)

    def _take(self, finding: Finding) -> None:
        if finding.at is None:
            return
        bucket = self._buckets[_key(finding.at)]
        here = bucket[finding.at]
        here.remove(next(other for other in here if standing(other) == finding))
        if not here:
            del bucket[finding.at]


def marked_cells(difference: Difference) -> frozenset[Cell]:
    """The cells whose marker may be another one."""
    return frozenset(finding.at for finding in chain(*difference) if finding.at is not None)


def _marker(findings: list[Finding]) -> Marker:
    standing = [finding for finding in findings if not finding.waived]
    shown = standing or findings
    gravest = min(shown, key=lambda finding: GRAVITY[finding.severity])
    return Marker(gravest.severity, not standing, len(shown))


def _key(cell: Cell) -> _Key:
    return cell.y, cell.x // BUCKET, cell.z // BUCKET
