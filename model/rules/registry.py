"""All finding rules, and what they find together."""

from __future__ import annotations

from typing import Final

from model.grid import Cell
from model.pauses import with_pauses
from model.plan import Change
from model.routing.junction import Junction
from model.rules import (
    arm_off_track,
    booster_far,
    booster_unpowered,
    built_not_resting,
    cannot_curve,
    conflict,
    constant_signal,
    detector_arm,
    four_way,
    head_on,
    inverter_needed,
    loose_end,
    misled_while_held,
    name_doubled,
    order_dependent,
    route_not_reached,
    running_side,
    throw_bends_rail,
    unknown_arm,
    unreached,
    unsupported,
    wiring_beside,
)
from model.rules.rule import Finding, Rule
from model.rules.waivers import with_waivers

RULES: Final[dict[str, Rule]] = {
    module.RULE.id: module.RULE
    for module in (
        route_not_reached,
        conflict,
        order_dependent,
        unsupported,
        arm_off_track,
        unknown_arm,
        name_doubled,
        constant_signal,
        throw_bends_rail,
        four_way,
        cannot_curve,
        loose_end,
        wiring_beside,
        detector_arm,
        running_side,
        head_on,
        booster_unpowered,
        booster_far,
        misled_while_held,
        inverter_needed,
        built_not_resting,
        unreached,
    )
}
"""By id, in the order in which help pages list them."""


def find_all(junction: Junction) -> list[Finding]:
    """What all rules find, waived findings marked: the gravest first, then by place."""
    found = (finding for rule in RULES.values() for finding in with_pauses(rule.findings(junction)))
    return sorted(with_waivers(junction.plan, found), key=severity_then_place)


def fix(junction: Junction, finding: Finding) -> Change | None:
    """The change that mends a finding of the junction, or ``None`` where none can be computed."""
    mend = RULES[finding.rule].fix
    return None if mend is None else mend(junction, finding)


def severity_then_place(finding: Finding) -> tuple[int, tuple[Cell, ...], str, tuple[str, ...], str]:
    """Findings without a place come first; level by level would tear a track on a slope apart."""
    return finding.severity.rank, finding.cells[:1], finding.rule, finding.arms, finding.message
