"""Which cells carry the marker of a finding, in buckets, so that painting looks only at what is seen."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from itertools import chain
from typing import Final

from app.canvas.geometry import Area
from model.grid import Cell
from model.pauses import pause, with_pauses
from model.rules import Finding, Severity
from model.rules.local import Difference, standing

BUCKET: Final = 16
"""Cells along the side of a bucket."""
GRAVITY: Final = {severity: rank for rank, severity in enumerate(Severity)}

_Key = tuple[int, int, int]


@dataclass(frozen=True)
class Marker:
    """The gravest finding of a cell, and how many there are."""

    severity: Severity
    aside: bool
    count: int = 1


Marked = tuple[Cell, Marker]


class Bucket:
    """The findings of a square of 16 × 16 cells, and what is seen of them, found once."""

    __slots__ = ("_from_afar", "_near", "findings")

    def __init__(self) -> None:
        self.findings: dict[Cell, list[Finding]] = {}
        self._near: list[Marked] | None = None
        self._from_afar: dict[int, list[Marked]] = {}

    def near(self) -> list[Marked]:
        """All markers, row by row."""
        if self._near is None:
            marked = ((cell, _marker(findings)) for cell, findings in self.findings.items())
            self._near = sorted(marked, key=_by_place)
        return self._near

    def from_afar(self, side: int) -> list[Marked]:
        """The gravest marker of each square of so many cells; neither notes nor what is set aside."""
        if side not in self._from_afar:
            self._from_afar[side] = _gravest(self.near(), side)
        return self._from_afar[side]

    def spoil(self) -> None:
        """A finding came or went."""
        self._near = None
        self._from_afar.clear()


class Markers:
    """One marker a cell, by level; findings set aside count only where there is nothing else."""

    def __init__(self, findings: Iterable[Finding] = ()) -> None:
        self._buckets: dict[_Key, Bucket] = {}
        for finding in with_pauses(findings):
            self._put(finding)
        for bucket in self._buckets.values():
            # Of many findings this takes longer than a frame, which shows them far out.
            bucket.near()
            pause()

    def on_level(self, level: int) -> dict[Cell, Marker]:
        """The markers of a level."""
        here = (bucket for key, bucket in self._buckets.items() if key[0] == level)
        return dict(marked for bucket in here for marked in bucket.near())

    def buckets_in(self, area: Area, level: int) -> Iterator[Bucket]:
        """The buckets that hold a part of an area of a level and a finding, row by row."""
        for row in range(area.north // BUCKET, area.south // BUCKET + 1):
            for column in range(area.west // BUCKET, area.east // BUCKET + 1):
                bucket = self._buckets.get((level, column, row))
                if bucket is not None and bucket.findings:
                    yield bucket

    def follow(self, difference: Difference) -> None:
        """Takes over what an edit made of the findings; costs what it changed, however many there are."""
        for finding in difference.gone:
            self._take(finding)
        for finding in difference.come:
            self._put(finding)

    def _put(self, finding: Finding) -> None:
        if finding.at is None:
            return
        bucket = self._buckets.get(_key(finding.at))
        if bucket is None:
            bucket = self._buckets[_key(finding.at)] = Bucket()
        bucket.findings.setdefault(finding.at, []).append(finding)
        bucket.spoil()

    def _take(self, finding: Finding) -> None:
        if finding.at is None:
            return
        bucket = self._buckets[_key(finding.at)]
        here = bucket.findings[finding.at]
        here.remove(next(other for other in here if standing(other) == finding))
        if not here:
            del bucket.findings[finding.at]
        bucket.spoil()


def marked_cells(difference: Difference) -> frozenset[Cell]:
    """The cells whose marker may be another one."""
    return frozenset(finding.at for finding in chain(*difference) if finding.at is not None)


def _marker(findings: list[Finding]) -> Marker:
    if len(findings) == 1:
        return _single(findings[0].severity, findings[0].waived)
    standing = [finding for finding in findings if not finding.waived]
    shown = standing or findings
    gravest = min(shown, key=lambda finding: GRAVITY[finding.severity])
    return Marker(gravest.severity, not standing, len(shown))


@cache
def _single(severity: Severity, aside: bool) -> Marker:
    return Marker(severity, aside)


def _gravest(row: Iterable[Marked], side: int) -> list[Marked]:
    """Of markers alike the first, row by row."""
    gravest: dict[tuple[int, int], Marked] = {}
    for cell, marker in row:
        if marker.aside or marker.severity is Severity.NOTE:
            continue
        square = cell.x // side, cell.z // side
        before = gravest.get(square)
        if before is None or GRAVITY[marker.severity] < GRAVITY[before[1].severity]:
            gravest[square] = cell, marker
    return list(gravest.values())


def _by_place(marked: Marked) -> tuple[int, int]:
    cell, _ = marked
    return cell.z, cell.x


def _key(cell: Cell) -> _Key:
    return cell.y, cell.x // BUCKET, cell.z // BUCKET
