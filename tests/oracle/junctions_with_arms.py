"""Random junctions as an automatic cart network has them, each with wanted routes that are served.

``junction_with_arms(seed)`` gives a plan of the model, with blocks under all rails, torches at the boosters,
and rails in an order in which every wanted route is reached. To look at one:
``python -m tests.oracle.junctions_with_arms SEED``.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from itertools import islice
from random import Random

from model.edits import set_build_order, turn_plan
from model.grid import ALL_TURNS
from model.ordering import best_order
from model.plan import Plan, Route, Side
from model.routing.junction import Junction
from model.rules.check import check
from model.text_drawing import draw
from model.track.layout import Layout
from tests.oracle.adapter import plan_from
from tests.oracle.carts import ArmSpec
from tests.oracle.junction_cores import CORES, Sketch
from tests.oracle.shapes import STEP, Place, Rail

STEPS = 40
"""Steps of the planner at most; time would make the same seed give other plans on other machines."""
WAYBILLS = ("Salt", "Reed", "Eel", "Apple", "Lamp oil", "Peat", "Malt")


def junction_with_arms(seed: int) -> Plan:
    """The junction of that seed; two of one seed are equal.

    The core is drawn first and kept, so that cores that are hard to serve come as often as easy ones.
    """
    random = Random(seed)
    core = random.choices(tuple(CORES), tuple(CORES.values()))[0]
    plan = None
    while plan is None:
        plan = served(random, sketched(random, core))
    return plan


def served(random: Random, plan: Plan) -> Plan | None:
    """The plan with its rails in an order that serves all routes: mostly the best that is found soon."""
    orders = []
    for order in islice(best_order(plan, seconds=1e9), STEPS):
        orders += [order] if order.served else []
        if order.proved:
            break
    if not orders:
        return None
    order = orders[-1] if random.random() < 0.7 else random.choice(orders)
    ordered = set_build_order(plan, order.rails).applied(plan)
    return None if check(ordered).has_errors or crosses_itself(ordered) else ordered


def crosses_itself(plan: Plan) -> bool:
    """Whether a cart passes a rail twice on a wanted route: there the carts of one train could meet."""
    return any(len(set(way.path)) < len(way.path) for way in Junction(plan).ways.values())


def sketched(random: Random, core: Callable[[Sketch], None]) -> Plan:
    """A junction in any of the eight turns, its rails in no order worth keeping."""
    sketch = Sketch(random)
    core(sketch)
    boosters = place_boosters(sketch)
    if random.random() < 0.12:
        sketch.bridge()
    carried = {below(at) for at in sketch.rails} | {below(at) for at in boosters.values()}
    carried |= {below(at) for at in carried & set(boosters.values())}
    carried -= set(boosters.values())
    pieces: list[Rail] = [("solid-block", at, "north") for at in sorted(carried, key=lambda at: at[::-1])]
    pieces += [("booster-rail" if at in boosters else "rail", at, "north") for at in sketch.rails]
    pieces += [("torch", at, "up") for at in boosters.values()]
    plan = plan_from(pieces, sketch.arms)
    details = plan.details.replace(
        title=core.__name__.replace("_", " "),
        running_side=Side.LEFT if any(map(is_double, sketch.arms)) else None,
        routes=routes_of(sketch),
    )
    plan = Plan(plan.pieces, details)
    return turn_plan(plan, random.choice(ALL_TURNS)).applied(plan)


def place_boosters(sketch: Sketch) -> dict[Place, Place]:
    """Rails of arms that become boosters, each with the cell of its torch: beside it, or under its block."""
    random = sketch.random
    taken = {(x, z): y for x, y, z in sketch.rails}
    boosters: dict[Place, Place] = {}
    for line in sketch.lines:
        x, y, z = random.choice(line[2:-1])
        beside = [(x + dx, z + dz) for dx, dz in STEP.values()]
        level = all(taken.get(spot, y) == y for spot in beside)
        free = [spot for spot in beside if spot not in taken and far_from_track(spot, (x, z), taken)]
        if not level or random.random() < 0.3:
            continue
        if free and random.random() < 0.7:
            spot = random.choice(free)
            boosters[x, y, z] = (spot[0], y, spot[1])
            taken[spot] = y
        else:
            boosters[x, y, z] = (x, y - 2, z)
    return boosters


def far_from_track(
    spot: tuple[int, int], booster: tuple[int, int], taken: dict[tuple[int, int], int]
) -> bool:
    """Whether a torch there has no rail beside it but the booster, nor a torch's block."""
    beside = [(spot[0] + dx, spot[1] + dz) for dx, dz in STEP.values()]
    return all(cell == booster or cell not in taken for cell in beside)


def routes_of(sketch: Sketch) -> tuple[Route, ...]:
    """From each arm an idle route and mostly a called one; at least one is called."""
    random = sketch.random
    waybills = iter(random.sample(WAYBILLS, len(WAYBILLS)))
    routes = []
    for start, ends in sketch.goals:
        idle, *others = random.sample(ends, len(ends))
        if others and (random.random() < 0.85 or not routes):
            routes.append(Route(start, idle, others[0], next(waybills)))
        else:
            routes.append(Route(start, idle))
    return tuple(routes)


def is_double(arm: ArmSpec) -> bool:
    """Whether carts come in and go out on two tracks."""
    return arm.way_in is not None and arm.way_out is not None and arm.way_in[0] != arm.way_out[0]


def below(at: Place) -> Place:
    return (at[0], at[1] - 1, at[2])


if __name__ == "__main__":
    print(draw(Layout(junction_with_arms(int(sys.argv[1])))))
