"""A usual mistake: the junction stands mirrored or turned, its wiring carried along from the drawing."""

from __future__ import annotations

from collections.abc import Sequence

from model.collector import collector_paused
from model.commissioning.commissioning import Commissioning
from model.commissioning.runs import STAYS, Observed
from model.commissioning.simulation import Simulation
from model.edits import turn_plan
from model.grid import ALL_TURNS, Turn
from model.track.layout import Layout


def turns_that_fit(commissioning: Commissioning, observed: Sequence[Observed]) -> tuple[Turn, ...]:
    """The turns, in the order of their numbers, after which a faultless junction does all that was seen.

    The pieces are placed in the same order and wired at the same switches, with the same inverters and lines.
    """
    return tuple(turn for turn in ALL_TURNS if turn != Turn() and _fits(commissioning, observed, turn))


def _fits(commissioning: Commissioning, observed: Sequence[Observed], turn: Turn) -> bool:
    plan = commissioning.junction.plan
    with collector_paused():
        turned = turn_plan(plan, turn).applied(plan)
        layout = Layout(turned)
    simulation = Simulation(layout, [turn.cell(cell) for cell in commissioning.trials.wired])
    for each in observed:
        arm = turned.details.arm(each.run.start)
        assert arm is not None
        way = simulation.way(arm, commissioning.trials.powered(each.run))
        if (way.arm or STAYS) != each.saw:
            return False
    return True
