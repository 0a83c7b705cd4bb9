"""A remembered rule says what the rule itself says, also where its tree grows no more."""

from __future__ import annotations

from random import Random

import pytest

from model.track import remembered
from model.track.layout import Layout
from model.track.rails import Overlay, pack
from model.track.remembered import Remembered, Sight
from model.track.settling import notice
from tests.oracle.adapter import plan_from
from tests.oracle.random_plans import random_pieces


def powered_notice(sight: Sight, key: int) -> None:
    notice(sight, sight, key, powered=True)


@pytest.mark.parametrize("leaves", [0, 5, 4_000])
def test_it_says_what_the_rule_says(monkeypatch: pytest.MonkeyPatch, leaves: int) -> None:
    monkeypatch.setattr(remembered, "MOST_LEAVES", leaves)
    rule = Remembered(powered_notice)
    turned = 0
    for seed in range(100):
        layout = Layout(plan_from(random_pieces(Random(seed))))
        for cell in layout.shapes:
            rails = Overlay(layout.rails)
            notice(rails, layout.straight_only, pack(cell), powered=True)
            leaf = rule.asked(layout.rails.get, layout.straight_only, pack(cell))
            assert {pack(cell) + offset: shape for offset, shape in leaf.writes} == rails.changed
            changed = {key: shape for key, shape in rails.changed.items() if layout.rails[key] is not shape}
            assert {pack(cell) + offset: shape for offset, shape in leaf.changes} == changed
            turned += bool(changed)
    assert turned > 20
    assert rule._leaves <= leaves


def test_a_place_that_was_seen_before_is_not_asked_again() -> None:
    asked = []

    def rule(sight: Sight, key: int) -> None:
        asked.append(key)
        powered_notice(sight, key)

    remembering = Remembered(rule)
    track = [("rail", (x, 64, 0), "east") for x in range(9)]
    layout = Layout(plan_from(track))
    for cell in layout.shapes:
        remembering.asked(layout.rails.get, layout.straight_only, pack(cell))
    assert len(asked) == 3  # the west end, the east end, and one for all between
