"""Pages of the help: the finding rules of plans and of networks, each from the rule itself."""

from __future__ import annotations

from inspect import cleandoc

from app.help.entries import Drawing, Entry, Line, Page
from app.translation import tr
from model.network.findings import NETWORK_RULES
from model.network.rules.rule import NetworkRule
from model.rules import RULES
from model.rules.rule import Rule


def rules_page() -> Page:
    """What can be found in a plan, the gravest first."""
    about = tr("What can stand in the way of a plan. Each finding in the list leads to its entry here.")
    rules = sorted(RULES.values(), key=lambda rule: rule.severity.rank)
    return Page(tr("Findings"), about, tuple(rule_entry(rule) for rule in rules))


def network_rules_page() -> Page:
    """What can be found in a network, the gravest first."""
    about = tr("What can stand in the way of people who ride the network.")
    rules = sorted(NETWORK_RULES.values(), key=lambda rule: rule.severity.rank)
    entries = tuple(
        Entry(network_key(rule.id), tr(rule.title), _lines(rule), rule.severity) for rule in rules
    )
    return Page(tr("Findings of networks"), about, entries)


def rule_entry(rule: Rule) -> Entry:
    """What the help says of a rule, with the drawings of its docstring."""
    bad, good = rule.examples()
    drawn = ((tr("Found"), bad), (tr("Not found"), good))
    drawings = tuple(Drawing(caption, text) for caption, text in drawn if text)
    return Entry(rule_key(rule.id), tr(rule.title), _lines(rule), rule.severity, drawings=drawings)


def rule_key(rule: str) -> str:
    """The key of the entry of a rule."""
    return f"rule {rule}"


def network_key(rule: str) -> str:
    """The key of the entry of a rule of networks."""
    return f"network rule {rule}"


def _lines(rule: Rule | NetworkRule) -> tuple[Line, ...]:
    return (
        Line("", tr(said_of(rule))),
        Line(tr("Why"), tr(rule.why)),
        Line(tr("Do"), tr(rule.remedy)),
        Line(tr("Weight"), tr(rule.severity.value)),
    )


def said_of(rule: Rule | NetworkRule) -> str:
    """What a rule finds, in the first words of its docstring."""
    return cleandoc(rule.find.__doc__ or "").partition("\n\n")[0].replace("\n", " ")
