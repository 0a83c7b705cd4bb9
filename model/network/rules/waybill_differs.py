"""A reader that takes another waybill than the plan of its junction says."""

from __future__ import annotations

from collections.abc import Iterator

from model.network.rules.rule import Found, NetworkRule
from model.network.rules.sight import Sight
from model.severity import Severity
from model.wording import tr


def find(sight: Sight) -> Iterator[Found]:
    """The waybill of a reader is the one that the plan of its junction names.

    Bad::

        stations Quay, Fen
        Mill: East → West* or South takes Reed
        Mill plan East takes Salt, West, South

    Good::

        stations Quay, Fen
        Mill: East → West* or South takes Salt
        Mill plan East takes Salt, West, South
    """
    for end, planned in sight.planned.items():
        reader, at = sight.readers.get(end), sight.junction_at(end)
        if reader is None or at is None or planned.name is None or reader.waybill in (None, planned.name):
            continue
        said = tr(
            "The reader {end} takes {waybill} in the plan of its junction, {planned} here.",
            end=end,
            waybill=reader.waybill,
            planned=planned.name,
        )
        yield Found(said, (end,), junctions=(at,))


RULE = NetworkRule(
    id="waybill-differs",
    severity=Severity.NOTE,
    title="A reader is called otherwise in the plan of its junction",
    why="Who builds from the plan fills the reader with a waybill that no traveller carries.",
    remedy="Fill the reader as the network has it, or change the waybill in the plan.",
    find=find,
)
