"""Finding rules: one small pure function a file, each with why it matters and what to do.

Add a rule: a module like ``running_side`` with ``find`` and ``RULE``, and its name in ``registry``.
"""

from model.rules.check import Check, check
from model.rules.registry import RULES, find_all, fix
from model.rules.rule import Examples, Finding, Found, Rule, Severity
from model.rules.waivers import stale_waivers, waiver_for, with_waivers

__all__ = [
    "RULES",
    "Check",
    "Examples",
    "Finding",
    "Found",
    "Rule",
    "Severity",
    "check",
    "find_all",
    "fix",
    "stale_waivers",
    "waiver_for",
    "with_waivers",
]
