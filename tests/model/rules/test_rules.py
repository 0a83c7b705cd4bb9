"""Every rule flags the plans that it must, in the places where it must, and no others."""

from __future__ import annotations

from functools import cache

import pytest

from model.routing.junction import Junction
from model.rules import RULES, Rule
from model.text_drawing import draw, plan_from_drawing
from tests.model.rules.cases import DRAWINGS, Case, cases_of

CASES = [case for rule in RULES for case in cases_of(rule)]


@cache
def junction_of(case: Case) -> Junction:
    """What a rule looks at."""
    return Junction(plan_from_drawing(case.drawing))


def flags_where_it_must(rule: Rule, case: Case) -> bool:
    """In all the places, and in no others."""
    found = [finding.at for finding in rule.findings(junction_of(case))]
    return sorted(map(repr, found)) == sorted(map(repr, case.places))


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.rule}: {case.shows}")
def test_a_plan_is_flagged_where_it_must_be(case: Case) -> None:
    assert flags_where_it_must(RULES[case.rule], case), draw(junction_of(case).layout)


@pytest.mark.parametrize("rule", RULES)
def test_no_other_rule_would_pass_for_this_one(rule: str) -> None:
    """The control: the plans of a rule tell it from every other, so they would tell it from a wrong one."""
    others = [other for other in RULES.values() if other.id != rule]
    passing = [
        other.id for other in others if all(flags_where_it_must(other, case) for case in cases_of(rule))
    ]
    assert passing == []


@pytest.mark.parametrize("rule", RULES)
def test_each_rule_has_five_plans_that_must_flag_and_five_that_must_not(rule: str) -> None:
    bad = {case.drawing for case in cases_of(rule) if case.places}
    good = {case.drawing for case in cases_of(rule) if not case.places}
    assert len(bad) >= 5
    assert len(good) >= 5


def test_no_drawings_lie_unused() -> None:
    assert {path.stem for path in DRAWINGS.iterdir()} == set(RULES)


@pytest.mark.parametrize("rule", RULES.values(), ids=lambda rule: rule.id)
def test_the_drawings_in_the_docstring_show_what_they_say(rule: Rule) -> None:
    bad, good = (Junction(plan_from_drawing(text)) for text in rule.examples())
    assert list(rule.findings(bad)), draw(bad.layout)
    assert not list(rule.findings(good)), draw(good.layout)
    assert len(good.plan.pieces) > 0
