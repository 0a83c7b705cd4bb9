"""A link where the wanted routes of the junction have nothing to do."""

from __future__ import annotations

from collections.abc import Iterator

from model.network.network import ArmSpec, JunctionSpec, junction_and_arm
from model.network.rules.rule import Found, NetworkRule
from model.network.rules.sight import Sight
from model.severity import Severity
from model.wording import QT_TR_NOOP, tr


def find(sight: Sight) -> Iterator[Found]:
    """Where a link begins at an arm some cart must leave by it; where one ends, carts need a way on.

    Bad::

        stations Quay, Fen
        Mill: East → West
        Quay → Mill/West
        Mill/East → Fen

    Good::

        stations Quay, Fen
        Mill: East → West
        Quay → Mill/East
        Mill/West → Fen
    """
    for place, link in enumerate(sight.network.links):
        if link.start in sight.arms and link.start not in sight.left_by:
            yield _found(sight, place, link.start, leaves=True)
        if link.end in sight.arms and link.end not in sight.readers:
            yield _found(sight, place, link.end, leaves=False)


def _found(sight: Sight, link: int, end: str, *, leaves: bool) -> Found:
    place = junction_and_arm(end)
    assert place is not None
    at = sight.junctions[place[0]]
    why = _why(sight.network.junctions[at], place[1], leaves=leaves)
    said = (
        QT_TR_NOOP("A link begins at {end}, but {why}.")
        if leaves
        else QT_TR_NOOP("A link ends at {end}, but {why}.")
    )
    return Found(
        tr(said, end=end, why=why),
        (end,),
        junctions=(at,),
        links=(link,),
    )


def _why(junction: JunctionSpec, name: str, *, leaves: bool) -> str:
    arm = next((arm for arm in junction.arms if arm.name == name), None)
    if arm is not None and _is_shut(arm, leaves=leaves):
        if leaves:
            return tr("carts only come in by that arm of its plan")
        return tr("carts only leave by that arm of its plan")
    if leaves:
        said = (
            tr("no wanted route of its plan leads there")
            if junction.plan
            else tr("no way of its readers leads there")
        )
    else:
        said = (
            tr("no wanted route of its plan begins there")
            if junction.plan
            else tr("no way leads on from there")
        )
    return said


def _is_shut(arm: ArmSpec, *, leaves: bool) -> bool:
    return not (arm.leaves if leaves else arm.enters)


RULE = NetworkRule(
    id="routes-contradict",
    severity=Severity.WARNING,
    title="A junction's wanted routes contradict the network",
    why="No cart ever comes to the link, or nobody knows where carts go that come by it.",
    remedy="Give the junction the missing route, or join the link to another arm.",
    find=find,
)
