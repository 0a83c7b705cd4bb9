"""A junction as its plan has it: what a network needs to know of a plan."""

from __future__ import annotations

from msgspec.structs import replace

from model.network.network import ArmSpec, JunctionSpec, ReaderSpec
from model.plan import Plan, Route


def with_plan(junction: JunctionSpec, plan: Plan) -> JunctionSpec:
    """The junction with the wanted routes of its plan as readers, the idle ones as defaults, and its arms."""
    side = plan.details.running_side
    arms = tuple(
        ArmSpec(arm.name, arm.enter is not None, arm.leave is not None, side or arm.side) for arm in plan.arms
    )
    return replace(
        junction, readers=tuple(map(_reader, plan.routes)), arms=arms, running_side=None, unread=""
    )


def _reader(route: Route) -> ReaderSpec:
    """A route that is called to where it goes anyway needs no reader."""
    ways = dict.fromkeys(way for way in (route.idle, route.called) if way is not None)
    return ReaderSpec(route.start, tuple(ways), route.idle, route.waybill)
