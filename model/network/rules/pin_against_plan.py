"""A pinned default that is not the idle way of the junction's plan."""

from __future__ import annotations

from collections.abc import Iterator

from model.network.rules.rule import Found, NetworkRule
from model.network.rules.sight import Sight
from model.severity import Severity
from model.wording import tr


def find(sight: Sight) -> Iterator[Found]:
    """The default of a junction with a plan is the idle route of the plan.

    Bad::

        stations Quay, Fen, Orchard
        Mill: East → West* or South
        Mill plan East, West, South
        pin Mill/East default South

    Good::

        stations Quay, Fen, Orchard
        Mill: East → West* or South
        Mill plan East, West, South
        pin Mill/East default West
    """
    for pin in sight.network.pins:
        reader, at = sight.readers.get(pin.reader), sight.junction_at(pin.reader)
        if reader is None or at is None or sight.network.junctions[at].plan is None:
            continue
        if pin.default in reader.ways and pin.default != reader.default:
            said = tr(
                "An empty cart from {reader} leaves by {default} in the plan of its junction",
                reader=pin.reader,
                default=reader.default,
            )
            yield Found(
                tr("{said}, by {default} here.", said=said, default=pin.default),
                (pin.reader,),
                junctions=(at,),
            )


RULE = NetworkRule(
    id="pin-against-plan",
    severity=Severity.WARNING,
    title="A pinned default is not that of the junction's plan",
    why="Carts will run as the junction is built, not as it is planned here.",
    remedy="Change over the idle and the called route in the plan, or take the pin away.",
    find=find,
)
