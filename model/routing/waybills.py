"""The waybill that a reader takes."""

from __future__ import annotations

from model.routing.control import WantedRoute
from model.routing.junction import Junction


def waybill_of(junction: Junction, route: WantedRoute) -> str | None:
    """What a cart carries on a wanted route: nothing on an idle one.

    Where a called route names no waybill it is called after its arm.
    """
    if not route.called:
        return None
    named = (wanted.waybill for wanted in junction.plan.routes if wanted.start == route.start)
    return next(named, None) or route.start
