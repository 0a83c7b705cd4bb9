"""Edits of arms; wanted routes and waivers name arms and follow a new name."""

from __future__ import annotations

import msgspec

from model.edits.changes import detailed
from model.edits.refusals import EditRefused, check_arm, check_arm_count
from model.plan import Arm, Change, Details, Plan, Route, Waiver
from model.wording import tr


def add_arm(plan: Plan, arm: Arm) -> Change:
    """A new arm after the others. Raises EditRefused for a name in use or an arm that a plan cannot have."""
    check_arm(arm)
    _check_free(plan.details, arm.name)
    check_arm_count(len(plan.arms) + 1)
    return detailed(plan, tr("Add arm {arm}", arm=arm.name), plan.details.replace(arms=(*plan.arms, arm)))


def set_arm(plan: Plan, old_name: str, arm: Arm) -> Change:
    """The first arm called ``old_name`` becomes ``arm``; routes and waivers follow a new name.

    Raises KeyError when there is no such arm, EditRefused for a new name that another arm or its wanted route
    has, since the two could not be told apart again, and for an arm that a plan cannot have.
    """
    check_arm(arm)
    details = plan.details
    old = details.arm(old_name)
    if old is None:
        raise KeyError(old_name)
    at = details.arms.index(old)
    changed = details.replace(arms=(*details.arms[:at], arm, *details.arms[at + 1 :]))
    if arm.name == old_name:
        return detailed(plan, tr("Set arm {old_name}", old_name=old_name), changed)
    _check_free(details, arm.name)
    _check_route_free(details, old_name, arm.name)
    return detailed(
        plan,
        tr("Rename arm {old_name} to {arm}", old_name=old_name, arm=arm.name),
        _renamed(changed, old_name, arm.name),
    )


def remove_arm(plan: Plan, name: str) -> Change:
    """The first arm of that name goes, and with it the wanted route from it.

    Routes that lead to it stay, for they want another end; a finding names them. Raises KeyError when there
    is no such arm.
    """
    details = plan.details
    arm = details.arm(name)
    if arm is None:
        raise KeyError(name)
    at = details.arms.index(arm)
    arms = details.arms[:at] + details.arms[at + 1 :]
    routes = tuple(route for route in details.routes if route.start != name)
    return detailed(plan, tr("Remove arm {name}", name=name), details.replace(arms=arms, routes=routes))


def _check_free(details: Details, name: str) -> None:
    if details.arm(name) is not None:
        raise EditRefused(tr("There is already an arm {name}.", name=name))


def _check_route_free(details: Details, old: str, new: str) -> None:
    """There is one route an arm; one from an unknown arm may have been left over."""
    if {old, new} <= {route.start for route in details.routes}:
        raise EditRefused(tr("There is already a wanted route from {new}; remove it first.", new=new))


def _renamed(details: Details, old: str, new: str) -> Details:
    def name(used: str) -> str:
        return new if used == old else used

    def route(wanted: Route) -> Route:
        called = None if wanted.called is None else name(wanted.called)
        start, idle = name(wanted.start), name(wanted.idle)
        return msgspec.structs.replace(wanted, start=start, idle=idle, called=called)

    def waiver(aside: Waiver) -> Waiver:
        return msgspec.structs.replace(aside, arms=tuple(map(name, aside.arms)))

    return details.replace(
        routes=tuple(map(route, details.routes)), waivers=tuple(map(waiver, details.waivers))
    )
