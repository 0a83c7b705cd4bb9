"""The registry: every rule is there with its severity and its texts, and findings come in order."""

from __future__ import annotations

import pytest

from model.routing.junction import Junction
from model.rules import RULES, Rule, Severity, find_all
from model.text_drawing import plan_from_drawing
from tests.model.rules.cases import cases_of

PROMISED = {
    Severity.ERROR: {
        "route-not-reached",
        "conflict",
        "order-dependent",
        "unsupported",
        "arm-off-track",
        "unknown-arm",
        "name-doubled",
    },
    Severity.WARNING: {
        "constant-signal",
        "throw-bends-rail",
        "four-way",
        "cannot-curve",
        "loose-end",
        "wiring-beside",
        "detector-arm",
        "running-side",
        "head-on",
        "booster-unpowered",
        "booster-far",
        "misled-while-held",
    },
    Severity.NOTE: {"inverter-needed", "built-not-resting", "unreached"},
}
"""The rules that other programs rely on, written down apart from the code."""


def test_the_promised_rules_are_there_and_no_others() -> None:
    found = {
        severity: {rule.id for rule in RULES.values() if rule.severity is severity} for severity in Severity
    }
    assert found == PROMISED


def test_each_rule_is_registered_under_its_own_id() -> None:
    assert all(rule.id == name for name, rule in RULES.items())


@pytest.mark.parametrize("rule", RULES.values(), ids=lambda rule: rule.id)
def test_a_rule_says_what_it_is_why_it_matters_and_what_to_do(rule: Rule) -> None:
    assert rule.title[0].isupper()
    assert not rule.title.endswith(".")
    for sentence in (rule.why, rule.remedy):
        assert sentence[0].isupper()
        assert sentence.endswith(".")
        assert ". " not in sentence
    assert len({rule.title, rule.why, rule.remedy}) == 3


def test_titles_tell_the_rules_apart() -> None:
    assert len({rule.title for rule in RULES.values()}) == len(RULES)


@pytest.mark.parametrize("rule", RULES)
def test_messages_are_sentences_that_name_a_place_or_an_arm(rule: str) -> None:
    for case in cases_of(rule):
        junction = Junction(plan_from_drawing(case.drawing))
        for finding in RULES[rule].findings(junction):
            assert finding.message[0].isupper() or finding.message[0].isdigit()
            assert finding.message.endswith(".")
            names = [*map(str, finding.cells), *finding.arms, *(switch.name for switch in junction.switches)]
            assert any(name in finding.message for name in names)


def test_the_gravest_come_first_and_then_go_by_place() -> None:
    plan = plan_from_drawing("""
        level 64
        ──────
        ······
        ··═·──
        arm Mill: in 9 64 9 east
        arm Quay: in 0 64 0 east, out 5 64 0 east
        route Quay: idle Quay, called Fen
        """)
    found = [
        (str(finding.severity), finding.rule, finding.at and finding.at[::2])
        for finding in find_all(Junction(plan))
    ]
    unsupported = [
        ("error", "unsupported", at)
        for at in [(1, 0), (2, 0), (2, 2), (3, 0), (4, 0), (4, 2), (5, 0), (5, 2)]
    ]
    assert found == [
        ("error", "unknown-arm", None),
        ("error", "route-not-reached", (0, 0)),
        ("error", "unsupported", (0, 0)),
        *unsupported,
        ("error", "arm-off-track", (9, 9)),
        ("warning", "booster-unpowered", (2, 2)),
        ("note", "unreached", (2, 2)),
        ("note", "unreached", (4, 2)),
    ]
