"""A switch that must be powered while no reader holds."""

from __future__ import annotations

from collections.abc import Iterator

from model.edits import turn_plan
from model.plan import Change
from model.routing.junction import Junction
from model.routing.orientations import orientations
from model.rules.rule import Finding, Found, Rule, Severity
from model.wording import tr


def find(junction: Junction) -> Iterator[Found]:
    """The switch is powered at idle, so its line must be turned round.

    Bad::

        level 64 on blocks
        │·
        │─
        │·
        order
        ··
        1·
        ··
        arm Quay: in 0 64 2 north
        arm Mill: out 0 64 0 north
        arm Fen: out 1 64 1 east
        route Quay: idle Mill, called Fen

    Good::

        level 64 on blocks
        │·
        │─
        │·
        order
        ··
        1·
        ··
        arm Quay: in 0 64 2 north
        arm Mill: out 0 64 0 north
        arm Fen: out 1 64 1 east
        route Quay: idle Fen, called Mill
    """
    for switch in junction.switches:
        if switch.inverter:
            yield Found(
                tr("{switch} needs an inverter: it is powered while no reader holds.", switch=switch.name),
                (switch.at,),
            )


def fix(junction: Junction, finding: Finding) -> Change | None:
    """The plan turned to the first orientation in which no switch needs one; ``None`` where there is none."""
    del finding  # turning mends all of them together
    free = (o.turn for o in orientations(junction) if o.buildable and o.inverters == 0)
    turn = next(free, None)
    return None if turn is None else turn_plan(junction.plan, turn)


RULE = Rule(
    id="inverter-needed",
    severity=Severity.NOTE,
    title="An inverter is needed",
    why="An inverter is one more part in the line, and one more that can be built wrongly.",
    remedy="Turn the junction to an orientation that needs none, or build the inverter that the sheet shows.",
    find=find,
    fix=fix,
)
