"""Edits of wanted routes: one an arm."""

from __future__ import annotations

import msgspec

from model.edits.changes import detailed
from model.edits.refusals import EditRefused, check_name, check_routes
from model.plan import Change, Plan, Route
from model.wording import tr


def set_route(plan: Plan, route: Route) -> Change:
    """The wanted route from an arm, in the place of the one that it had, or after the others.

    Raises EditRefused for names that no arm or waybill can have, and for a route too many.
    """
    for name in (route.start, route.idle, route.called, route.waybill):
        if name is not None:
            check_name(name)
    routes = list(plan.routes)
    at = next((at for at, old in enumerate(routes) if old.start == route.start), len(routes))
    routes[at : at + 1] = [route]
    check_routes(len(routes))
    return detailed(
        plan, tr("Set route from {start}", start=route.start), plan.details.replace(routes=tuple(routes))
    )


def start_route_at(plan: Plan, start: str, new_start: str) -> Change:
    """The wanted route from the arm ``start`` comes from another arm, and stays in its place.

    Raises KeyError when there is none, EditRefused where another route comes from ``new_start`` already.
    """
    check_name(new_start)
    if all(route.start != start for route in plan.routes):
        raise KeyError(start)
    if any(route.start == new_start for route in plan.routes):
        raise EditRefused(
            tr("A route from {new_start} stands in the table already; one route an arm.", new_start=new_start)
        )
    routes = tuple(
        msgspec.structs.replace(route, start=new_start) if route.start == start else route
        for route in plan.routes
    )
    return detailed(
        plan, tr("Start a route at {new_start}", new_start=new_start), plan.details.replace(routes=routes)
    )


def remove_route(plan: Plan, start: str) -> Change:
    """The wanted route from the arm ``start`` goes; empty when there is none."""
    routes = tuple(route for route in plan.routes if route.start != start)
    return detailed(plan, tr("Remove route from {start}", start=start), plan.details.replace(routes=routes))
