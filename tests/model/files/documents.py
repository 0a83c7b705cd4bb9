"""Plan files as JSON values, for the tests to bend. The company is invented."""

from __future__ import annotations

import json
from typing import Any

from model.files.plan_file import parse_plan
from model.plan import Plan

FULL: dict[str, Any] = {
    "format": "platelayer-plan",
    "version": 1,
    "title": "Beacon Wye",
    "running_side": "left",
    "pieces": [
        {"part": "solid-block", "at": [0, 63, 0]},
        {"part": "rail", "at": [0, 64, 0], "facing": "east"},
        {"part": "booster-rail", "at": [0, 64, 1]},
        {"part": "repeater", "at": [2, 62, 0], "facing": "east", "delay": 4},
        {"part": "comparator", "at": [3, 62, 0], "facing": "west", "mode": "subtract"},
        {"part": "torch", "at": [3, 62, 1]},
        {"part": "lever", "at": [3, 62, 2], "facing": "down"},
        {"part": "button", "at": [3, 62, 3], "wooden": True},
        {"part": "hopper", "at": [4, 63, 0], "holds": [{"item": "waybill:Salt", "count": 22}]},
        {"part": "barrel", "at": [4, 62, 0], "facing": "south", "holds": [{"item": "ingot", "count": 1728}]},
        {"part": "auto-crafter", "at": [4, 61, 0], "facing": "up", "holds": [{"item": "nugget", "count": 9}]},
    ],
    "arms": [
        {
            "name": "Quay",
            "in": {"at": [0, 64, 4], "heading": "north"},
            "out": {"at": [2, 64, 4], "heading": "south"},
        },
        {"name": "Tithe Barn", "out": {"at": [2, 64, -4], "heading": "north"}},
    ],
    "routes": [{"from": "Quay", "idle": "Mill", "called": "Fen", "waybill": "Salt"}],
    "waivers": [
        {
            "rule": "running-side",
            "cells": [[0, 64, 4]],
            "arms": ["Mill"],
            "reason": "old loop, goes in spring",
        }
    ],
    "sheet": {
        "owner": "Brinepan Tramway",
        "number": "BW-003",
        "revision": "A",
        "date": "2026-11-25",
        "created_by": "Drawing office",
        "approved_by": "",
    },
}


def document(**members: Any) -> dict[str, Any]:
    """The least plan, with these keys added or replaced; a key given as ``...`` is left out."""
    least = {"format": "platelayer-plan", "version": 1, "pieces": []}
    return {key: value for key, value in (least | members).items() if value is not ...}


def one_piece(part: str, **members: Any) -> dict[str, Any]:
    """A plan of a single piece at the origin."""
    return document(pieces=[{"part": part, "at": [0, 64, 0], **members}])


def read(value: Any) -> Plan:
    """The plan that a JSON value stands for."""
    return parse_plan(json.dumps(value).encode(), "beacon.plan.json")
