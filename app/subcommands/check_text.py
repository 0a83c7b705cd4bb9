"""A check in words for people: the rails first and the findings last, where a terminal stops."""

from __future__ import annotations

from collections.abc import Iterator

from app.subcommands.streams import columns, plain
from app.turn_words import turn_words
from model.edits.words import counted, part_word
from model.routing.junction import Junction, RouteResult, Switch
from model.routing.orientations import Orientation
from model.rules.check import Check
from model.rules.rule import Finding, Severity


def check_text(file: str, check: Check, *, first: bool) -> str:
    """The report on one file; an empty line keeps it apart from the one before."""
    title = check.junction.plan.details.title
    head = plain(f"{file}: {title}" if title else file)
    sections = "".join(_sections(check))
    return f"{'' if first else chr(10)}{head}\n{sections}{_summary(check.findings)}\n"


def _sections(check: Check) -> Iterator[str]:
    tables = {
        "Rails": list(_rails(check.junction)),
        "Switches": [_switch(switch) for switch in check.junction.switches],
        "Routes": [row for route in check.junction.routes for row in _route(route)],
        "Orientations": [_orientation(orientation) for orientation in check.orientations],
        "Findings": [finding_row(finding) for finding in check.findings],
    }
    for heading, rows in tables.items():
        if rows:
            yield f"{heading}\n{columns(rows)}"


def _rails(junction: Junction) -> Iterator[list[str]]:
    for cell, shape in junction.layout.shapes.items():
        part = junction.plan.pieces.part_at(cell)
        yield [str(cell), part_word(part) if part else "", shape.word]


def _switch(switch: Switch) -> list[str]:
    return [
        switch.name,
        str(switch.at),
        f"rests {switch.resting.word}",
        f"powered {switch.powered.word}",
        f"idle {switch.idle.word}" if switch.idle is not None else "not wired",
        f"called by {', '.join(switch.called_by)}" if switch.called_by else "",
        "inverter" if switch.inverter else "",
    ]


def _route(route: RouteResult) -> Iterator[list[str]]:
    yield [route.start, "idle", route.idle, _reached(route.idle_reached)]
    if route.called is not None:
        yield [route.start, "called", route.called, _reached(bool(route.called_reached))]


def _reached(reached: bool) -> str:
    return "reached" if reached else "not reached"


def _orientation(orientation: Orientation) -> list[str]:
    turn = orientation.turn
    wiring = "not buildable" if orientation.inverters is None else counted(orientation.inverters, "inverter")
    return [str(turn.number), turn_words(turn), wiring]


def finding_row(finding: Finding) -> list[str]:
    """A finding as every command tells it: what, where, and what follows."""
    place = str(finding.at) if finding.at is not None else ""
    aside = f" (set aside: {finding.reason})" if finding.waived else ""
    return [finding.severity, finding.rule, place, finding.message + aside]


def _summary(findings: list[Finding]) -> str:
    """How many of each count that are not set aside, and how many are."""
    counts = [
        counted(sum(f.severity is severity and not f.waived for f in findings), severity.value)
        for severity in Severity
    ]
    aside = sum(finding.waived for finding in findings)
    return ", ".join(counts) + (f"; {aside:,} set aside" if aside else "")
