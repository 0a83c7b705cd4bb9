"""All finding rules of networks, and what they find together."""

from __future__ import annotations

from typing import Final

from msgspec.structs import replace

from model.network.network import Network, NetworkWaiver
from model.network.result import NetworkPlan
from model.network.rules import (
    arm_doubled,
    arm_not_entered,
    arm_without_link,
    empty_loop,
    name_doubled,
    one_way_trap,
    pin_against_plan,
    pin_not_kept,
    plan_unread,
    routes_contradict,
    station_unreached,
    takes_anothers,
    too_many_waybills,
    trip_without_way,
    unknown_end,
    unlike_sides,
    waybill_differs,
)
from model.network.rules.rule import Found, NetworkFinding, NetworkRule
from model.network.rules.sight import Sight

__all__ = ["NETWORK_RULES", "Found", "NetworkFinding", "NetworkRule", "findings", "waiver_for"]

NETWORK_RULES: Final[dict[str, NetworkRule]] = {
    module.RULE.id: module.RULE
    for module in (
        plan_unread,
        name_doubled,
        unknown_end,
        arm_doubled,
        trip_without_way,
        takes_anothers,
        too_many_waybills,
        routes_contradict,
        station_unreached,
        one_way_trap,
        empty_loop,
        unlike_sides,
        arm_without_link,
        pin_not_kept,
        pin_against_plan,
        arm_not_entered,
        waybill_differs,
    )
}
"""By id, in the order in which help pages list them."""


def waiver_for(finding: NetworkFinding, reason: str) -> NetworkWaiver:
    """The waiver that sets a finding aside."""
    return NetworkWaiver(finding.rule, finding.names, reason)


def findings(network: Network, plan: NetworkPlan | None) -> tuple[NetworkFinding, ...]:
    """What all rules find, the gravest first, then rule by rule; without a plan, what can be said without.

    ``plan``: of this network. What is set aside stays in the list.
    """
    sight = Sight(network, plan)
    reasons = {waiver.key: waiver.reason for waiver in network.waivers}
    found = (
        replace(finding, waived=True, reason=reasons[finding.key]) if finding.key in reasons else finding
        for rule in NETWORK_RULES.values()
        for finding in rule.findings(sight)
    )
    return tuple(sorted(found, key=lambda finding: finding.severity.rank))
