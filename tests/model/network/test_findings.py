"""Every rule of networks flags the networks that it must, at the names where it must, and no others."""

from __future__ import annotations

from inspect import cleandoc

import pytest
from hypothesis import given, settings

from model.network.findings import NETWORK_RULES, NetworkRule, findings
from model.network.network import Network
from model.network.rules.sight import Sight
from model.severity import Severity
from tests.model.network.cases import CASES, Case, cases_of
from tests.model.network.notation import Notation
from tests.model.network.strategies import NETWORKS

ALL = [case for rule in NETWORK_RULES for case in cases_of(rule)]


def _sight(text: str) -> Sight:
    said = Notation(text)
    return Sight(said.network, said.plan)


@pytest.mark.parametrize("case", ALL, ids=lambda case: f"{case.rule}: {case.shows}")
def test_a_network_is_flagged_where_it_must_be(case: Case) -> None:
    found = list(NETWORK_RULES[case.rule].findings(_sight(case.text)))
    names = [finding.names[0] for finding in found]
    assert sorted(names) == sorted(case.names), [finding.message for finding in found]


@pytest.mark.parametrize("rule", NETWORK_RULES)
def test_each_rule_has_five_networks_that_must_flag_and_five_that_must_not(rule: str) -> None:
    bad = {case.text for case in cases_of(rule) if case.names}
    good = {case.text for case in cases_of(rule) if not case.names}
    assert len(bad) >= 5
    assert len(good) >= 5


def test_no_cases_lie_unused() -> None:
    assert {path.stem for path in CASES.iterdir()} == set(NETWORK_RULES)


@pytest.mark.parametrize("rule", NETWORK_RULES.values(), ids=lambda rule: rule.id)
def test_the_networks_in_the_docstring_show_what_they_say(rule: NetworkRule) -> None:
    _, _, after = cleandoc(rule.find.__doc__ or "").partition("\nBad::\n")
    bad, _, good = after.partition("\nGood::\n")
    assert list(rule.findings(_sight(bad)))
    assert not list(rule.findings(_sight(good)))
    assert good.strip()


@pytest.mark.parametrize("rule", NETWORK_RULES.values(), ids=lambda rule: rule.id)
def test_a_rule_says_what_it_is_why_it_matters_and_what_to_do(rule: NetworkRule) -> None:
    assert rule.title[0].isupper()
    assert not rule.title.endswith(".")
    for sentence in (rule.why, rule.remedy):
        assert sentence[0].isupper()
        assert sentence.endswith(".")
        assert ". " not in sentence
    assert len({rule.title, rule.why, rule.remedy}) == 3
    assert NETWORK_RULES[rule.id] is rule


def test_titles_tell_the_rules_apart() -> None:
    assert len({rule.title for rule in NETWORK_RULES.values()}) == len(NETWORK_RULES)


@pytest.mark.parametrize("rule", NETWORK_RULES)
def test_messages_are_sentences_that_name_what_they_are_about(rule: str) -> None:
    for case in cases_of(rule):
        for finding in NETWORK_RULES[rule].findings(_sight(case.text)):
            assert finding.message.endswith(".")
            assert any(name in finding.message for name in finding.names)
            found = finding.found
            leads = found.stations or found.junctions or found.links or found.trips
            assert leads or finding.message == "The pin on Beacon/East is not kept: there is no such reader."


def test_the_gravest_come_first_and_then_go_rule_by_rule() -> None:
    said = Notation("""
        stations Quay, Fen, Fen
        Mill: East → West or South; North → West
        Quay → Mill/East
        Mill/West → Orchard
        trip Fen → Quay
        """)
    found = [(str(finding.severity), finding.rule) for finding in findings(said.network, said.plan)]
    assert found == [
        ("error", "name-doubled"),
        ("error", "unknown-end"),
        ("error", "trip-without-way"),
        ("warning", "station-unreached"),
        ("warning", "station-unreached"),
        ("warning", "arm-without-link"),
        ("note", "arm-not-entered"),
    ]


def test_without_a_plan_there_are_the_findings_that_need_none() -> None:
    for case in ALL:
        said = Notation(case.text)
        with_plan = {finding.rule for finding in findings(said.network, said.plan)}
        assert {finding.rule for finding in findings(said.network, None)} <= with_plan


@settings(max_examples=60, deadline=None)
@given(NETWORKS)
def test_findings_of_any_network_lead_to_things_that_are_there(network: Network) -> None:
    for finding in findings(network, None):
        found = finding.found
        assert all(place < len(network.stations) for place in found.stations)
        assert all(place < len(network.junctions) for place in found.junctions)
        assert all(place < len(network.links) for place in found.links)
        assert all(place < len(network.trips) for place in found.trips)
        assert finding.severity in Severity
