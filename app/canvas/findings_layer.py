"""The markers of findings on the plan view."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import chain
from typing import Final

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter, QPen

from app.canvas.geometry import Area, Viewport
from app.canvas.symbols import draw_marker
from app.canvas.symbols.markers import LARGE, SMALL
from app.theme import Theme
from model.grid import Cell, Heading
from model.rules import Finding, Severity
from model.rules.local import Difference, standing

NAMES_FROM: Final = 40
"""px a cell from which switches carry their names."""
SMALL_BELOW: Final = 20
"""px a cell below which markers are small, and only errors and warnings are marked."""
INWARD: Final = 4
"""px from the cell's north-east corner to the middle of the marker."""
CLEAR_OF_NAME: Final = 12
"""px instead, where a switch's name begins beside that corner."""
GRAVITY: Final = {severity: rank for rank, severity in enumerate(Severity)}


Named = Mapping[Cell, Heading]
"""The switches that carry a name, with the side on which their drive stands."""


@dataclass(frozen=True)
class Marker:
    """The gravest finding of a cell, and how many there are."""

    severity: Severity
    aside: bool
    count: int = 1


class Markers:
    """One marker a cell, by level; findings set aside count only where there is nothing else."""

    def __init__(self, findings: Sequence[Finding] = ()) -> None:
        self.findings = findings
        """All that are marked."""
        self._here: dict[Cell, list[Finding]] = {}
        self._on_level: dict[int, dict[Cell, Marker]] = {}
        for finding in findings:
            if finding.at is not None:
                self._here.setdefault(finding.at, []).append(finding)
        for cell in self._here:
            self._mark(cell)

    def on_level(self, level: int) -> dict[Cell, Marker]:
        """The markers of a level."""
        return self._on_level.get(level, {})

    def follow(self, findings: Sequence[Finding], difference: Difference) -> None:
        """Takes over the findings after an edit; costs what the edit changed, however many there are."""
        self.findings = findings
        for finding in difference.gone:
            if finding.at is not None:
                here = self._here[finding.at]
                here.remove(next(other for other in here if standing(other) == finding))
        for finding in difference.come:
            if finding.at is not None:
                self._here.setdefault(finding.at, []).append(finding)
        for cell in {finding.at for finding in chain(*difference)}:
            if cell is not None:
                self._mark(cell)

    def _mark(self, cell: Cell) -> None:
        on_level = self._on_level.setdefault(cell.y, {})
        if self._here[cell]:
            on_level[cell] = _marker(self._here[cell])
        else:
            del self._here[cell]
            on_level.pop(cell, None)


def _marker(findings: list[Finding]) -> Marker:
    standing = [finding for finding in findings if not finding.waived]
    shown = standing or findings
    gravest = min(shown, key=lambda finding: GRAVITY[finding.severity])
    return Marker(gravest.severity, not standing, len(shown))


def paint_markers(
    painter: QPainter,
    markers: dict[Cell, Marker],
    named: Named,
    seen: Area,
    view: Viewport,
    theme: Theme,
) -> None:
    """The markers of a level that are in sight."""
    small = view.scale < SMALL_BELOW
    for cell, marker in _in_sight(markers, seen):
        if small and (marker.severity is Severity.NOTE or marker.aside):
            continue
        at = marker_middle(cell, named, view)
        draw_marker(
            painter,
            at.x(),
            at.y(),
            marker.severity.value,
            theme,
            SMALL if small else LARGE,
            aside=marker.aside,
            count=marker.count,
        )


def _in_sight(markers: dict[Cell, Marker], seen: Area) -> list[tuple[Cell, Marker]]:
    """Looks through the cells or through the markers, whichever are fewer."""
    columns, rows = range(seen.west, seen.east + 1), range(seen.north, seen.south + 1)
    if len(markers) <= len(columns) * len(rows):
        return [entry for entry in markers.items() if seen.holds(entry[0].x, entry[0].z)]
    level = next(iter(markers)).y
    cells = (Cell(x, level, z) for z in rows for x in columns)
    return [(cell, markers[cell]) for cell in cells if cell in markers]


def paint_leaders(
    painter: QPainter, finding: Finding, named: Named, level: int, view: Viewport, theme: Theme
) -> None:
    """Narrow lines from the marker of the chosen finding to its other cells."""
    if finding.at is None or finding.at.y != level:
        return
    start = marker_middle(finding.at, named, view)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    painter.setPen(QPen(theme.ink, 1))
    for cell in finding.cells[1:]:
        if cell.y == level:
            left, top = view.corner(cell.x, cell.z)
            painter.drawLine(start, QPointF(left + view.scale / 2, top + view.scale / 2))
    painter.restore()


def marker_middle(cell: Cell, named: Named, view: Viewport) -> QPointF:
    """The middle of a cell's marker, in widget pixels."""
    right, top = view.corner(cell.x + 1, cell.z)
    inward = CLEAR_OF_NAME if view.scale >= NAMES_FROM and _begins_a_name(cell, named) else INWARD
    return QPointF(right - inward, top + INWARD)


def _begins_a_name(cell: Cell, named: Named) -> bool:
    """Whether a name stands just east of a cell's north-east corner, below it or above it."""
    east = cell.step(Heading.EAST)
    return named.get(east) is Heading.NORTH or named.get(east.step(Heading.NORTH)) is Heading.SOUTH
