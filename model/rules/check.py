"""A plan checked: all that is worked out of it and all findings, also as plain data."""

from __future__ import annotations

from typing import Any

import msgspec

from model.plan import Plan
from model.routing.junction import Junction, RouteResult, Switch
from model.routing.orientations import Orientation, orientations
from model.rules.registry import find_all
from model.rules.rule import Finding, Severity
from model.track.switches import PowerStates

Json = dict[str, Any]


class Check(msgspec.Struct, frozen=True):
    """A junction with its findings and its eight orientations."""

    junction: Junction
    findings: list[Finding]
    orientations: tuple[Orientation, ...]

    @property
    def has_errors(self) -> bool:
        """Whether an error was found that is not set aside."""
        return any(f.severity is Severity.ERROR and not f.waived for f in self.findings)

    def as_json(self, file: str) -> Json:
        """What ``check --json`` prints of a file."""
        return {
            "file": file,
            "rails": _rails(self.junction),
            "switches": [_switch(switch) for switch in self.junction.switches],
            "routes": [_route(route) for route in self.junction.routes],
            "orientations": [_orientation(orientation) for orientation in self.orientations],
            "findings": [finding_json(finding) for finding in self.findings],
        }


def check(plan: Plan) -> Check:
    """Works out everything that is said of a plan."""
    junction = Junction(plan)
    return Check(junction, find_all(junction), orientations(junction))


def _rails(junction: Junction) -> list[Json]:
    return [
        {
            "at": list(cell),
            "part": str(junction.plan.pieces.part_at(cell)),
            "shape": shape.word,
            "resting": states.resting.word,
            "powered": states.powered.word,
            "switch": states.is_switch,
        }
        for cell, shape in junction.layout.shapes.items()
        for states in [junction.three_way_states.get(cell, PowerStates(shape, shape))]
    ]


def _switch(switch: Switch) -> Json:
    return {
        "at": list(switch.at),
        "name": switch.name,
        "resting": switch.resting.word,
        "powered": switch.powered.word,
        "idle": None if switch.idle is None else switch.idle.word,
        "called_by": list(switch.called_by),
        "inverter": switch.inverter,
    }


def _route(route: RouteResult) -> Json:
    return {
        "from": route.start,
        "idle": route.idle,
        "idle_reached": route.idle_reached,
        "called": route.called,
        "called_reached": route.called_reached,
    }


def _orientation(orientation: Orientation) -> Json:
    return {
        "quarter": orientation.turn.quarter,
        "mirror": orientation.turn.mirror,
        "inverters": orientation.inverters,
        "buildable": orientation.buildable,
    }


def finding_json(finding: Finding) -> Json:
    """A finding as every command prints it."""
    return {
        "rule": finding.rule,
        "severity": str(finding.severity),
        "at": None if finding.at is None else list(finding.at),
        "cells": [list(cell) for cell in finding.cells],
        "arms": list(finding.arms),
        "message": finding.message,
        "waived": finding.waived,
    }
