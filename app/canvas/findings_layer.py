"""The markers of findings on the plan view."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter, QPen

from app.canvas.geometry import Area, Viewport
from app.canvas.symbols import draw_marker
from app.canvas.symbols.markers import LARGE, SMALL
from app.theme import Theme
from model.grid import Cell
from model.rules import Finding, Severity

SMALL_BELOW: Final = 20
"""px a cell below which markers are small, and only errors and warnings are marked."""
INWARD: Final = 4
"""px from the cell's north-east corner to the middle of the marker."""
GRAVITY: Final = {severity: rank for rank, severity in enumerate(Severity)}


@dataclass(frozen=True)
class Marker:
    """The gravest finding of a cell, and how many there are."""

    severity: Severity
    aside: bool
    count: int = 1


def markers_of(findings: Iterable[Finding]) -> dict[int, dict[Cell, Marker]]:
    """One marker a cell, by level; findings set aside count only where there is nothing else."""
    by_cell: dict[Cell, list[Finding]] = {}
    for finding in findings:
        if finding.at is not None:
            by_cell.setdefault(finding.at, []).append(finding)
    markers: dict[int, dict[Cell, Marker]] = {}
    for cell, here in by_cell.items():
        markers.setdefault(cell.y, {})[cell] = _marker(here)
    return markers


def _marker(findings: list[Finding]) -> Marker:
    standing = [finding for finding in findings if not finding.waived]
    shown = standing or findings
    gravest = min(shown, key=lambda finding: GRAVITY[finding.severity])
    return Marker(gravest.severity, not standing, len(shown))


def paint_markers(
    painter: QPainter, markers: dict[Cell, Marker], seen: Area, view: Viewport, theme: Theme
) -> None:
    """The markers of a level that are in sight."""
    small = view.scale < SMALL_BELOW
    for cell, marker in markers.items():
        if not seen.holds(cell.x, cell.z) or (small and (marker.severity is Severity.NOTE or marker.aside)):
            continue
        at = marker_middle(cell, view)
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


def paint_leaders(painter: QPainter, finding: Finding, level: int, view: Viewport, theme: Theme) -> None:
    """Narrow lines from the marker of the chosen finding to its other cells."""
    if finding.at is None or finding.at.y != level:
        return
    start = marker_middle(finding.at, view)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    painter.setPen(QPen(theme.ink, 1))
    for cell in finding.cells[1:]:
        if cell.y == level:
            left, top = view.corner(cell.x, cell.z)
            painter.drawLine(start, QPointF(left + view.scale / 2, top + view.scale / 2))
    painter.restore()


def marker_middle(cell: Cell, view: Viewport) -> QPointF:
    """The middle of a cell's marker, in widget pixels."""
    right, top = view.corner(cell.x + 1, cell.z)
    return QPointF(right - INWARD, top + INWARD)
