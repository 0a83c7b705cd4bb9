"""The plan of a network: what each reader does with empty carts, what it takes, what travellers carry."""

from __future__ import annotations

from collections.abc import Mapping

import msgspec

from model.network.network import ReaderPin, WayPin


class Planned(msgspec.Struct, frozen=True):
    """What to write on the sign of a reader."""

    default: str
    """The arm by which empty carts leave."""
    name: str | None
    """The waybill that it takes; ``None``: no trip calls it, and it takes nothing."""


class TripPlan(msgspec.Struct, frozen=True):
    """How a traveller comes from one station to another."""

    start: str
    end: str
    via: tuple[str, ...] = ()
    """The readers on the way, those passed by the default too: ``Mill/East``, in order."""
    waybills: tuple[str, ...] = ()
    """What to carry, in the order in which it is taken; a name comes as often as it is taken."""
    length: int | None = 0
    """Cells; ``None``: no way leads there."""
    links: tuple[int, ...] = ()
    """The way: places in ``Network.links``."""


class Price(msgspec.Struct, frozen=True):
    """What a pin costs: what would be saved if this one alone were taken away."""

    pin: ReaderPin | WayPin
    waybills_per_week: int | float
    names: int
    length: int = 0
    """Cells, over one trip (pinned ways)."""


class NetworkPlan(msgspec.Struct, frozen=True):
    """The result of planning."""

    waybills_per_week: int | float
    names_bound: int
    """No plan with as few waybills has fewer names than this: a proof stands behind it."""
    proved: bool
    """Whether nothing better exists: neither fewer waybills nor, with as few, fewer names."""
    readers: Mapping[str, Planned]
    """By key (``Mill/East``), in file order: all that have two ways."""
    trips: tuple[TripPlan, ...]
    """In the order of the file."""
    prices: tuple[Price, ...] = ()
    """Of the pins that are kept, as far as there was time to work them out."""
    waybills_bound: int | float = 0
    """No plan has fewer waybills a week than this: a proof stands behind it."""
    unkept: tuple[ReaderPin | WayPin, ...] = ()
    """Pins that no plan can keep, or for which none was found in time. The plan is as if they were absent."""

    @property
    def distinct_names(self) -> int:
        """How many different waybills there are."""
        return len({planned.name for planned in self.readers.values() if planned.name is not None})
