"""What changes for readers and travellers from one plan of a network to the next."""

from __future__ import annotations

from collections import Counter

import msgspec

from model.edits.words import counted
from model.network.network import Network
from model.network.result import NetworkPlan, Planned, TripPlan
from model.wording import tr


class ReaderChange(msgspec.Struct, frozen=True):
    """A reader whose sign must be written anew."""

    reader: str
    """``Mill/East``"""
    before: Planned | None
    """``None``: it was not there."""
    after: Planned | None
    """``None``: it is there no longer."""


class TripChange(msgspec.Struct, frozen=True):
    """A trip for which travellers must take other waybills."""

    start: str
    end: str
    before: tuple[str, ...] | None
    """``None``: the trip was not there, or no way led there."""
    after: tuple[str, ...] | None
    """``None``: the trip is there no longer, or no way leads there."""


class PlanChanges(msgspec.Struct, frozen=True):
    """All that changes."""

    readers: tuple[ReaderChange, ...]
    """In the order of the later plan; those that are gone at the end."""
    trips: tuple[TripChange, ...]
    """In the same order."""

    @property
    def label(self) -> str:
        """``3 readers change, 1 trip takes other waybills``; ``nothing changes``."""
        said = (
            _said(len(self.readers), "reader", "changes", "change"),
            _said(len(self.trips), "trip", tr("takes other waybills"), tr("take other waybills")),
        )
        return ", ".join(filter(None, said)) or tr("nothing changes")


def _said(number: int, noun: str, one: str, many: str) -> str:
    return f"{counted(number, noun)} {one if number == 1 else many}" if number else ""


def plan_changes(before: NetworkPlan, after: NetworkPlan) -> PlanChanges:
    """What is new, gone, or otherwise. Names are compared as they stand: see ``with_names_of``."""
    readers = tuple(
        ReaderChange(key, before.readers.get(key), after.readers.get(key))
        for key in {**after.readers, **before.readers}
        if before.readers.get(key) != after.readers.get(key)
    )
    old, new = _waybills(before), _waybills(after)
    trips = tuple(
        TripChange(*ends, old.get(ends), new.get(ends))
        for ends in {**new, **old}
        if old.get(ends) != new.get(ends)
    )
    return PlanChanges(readers, trips)


def with_names_of(before: NetworkPlan, network: Network, after: NetworkPlan) -> NetworkPlan:
    """The later plan with its waybills renamed so that as many readers as can be keep the name they had.

    A plan is as good under any other names, as long as those that differ go on to differ. Names that are
    pinned in the network, which is that of the later plan, stay as they are.
    """
    renamed = _renamed(before, after, {pin.name for pin in network.pins if pin.name is not None})
    readers = {
        key: msgspec.structs.replace(planned, name=renamed.get(planned.name)) if planned.name else planned
        for key, planned in after.readers.items()
    }
    trips = tuple(_trip(trip, renamed) for trip in after.trips)
    return msgspec.structs.replace(after, readers=readers, trips=trips)


def _trip(trip: TripPlan, renamed: dict[str, str]) -> TripPlan:
    return msgspec.structs.replace(trip, waybills=tuple(renamed[name] for name in trip.waybills))


def _renamed(before: NetworkPlan, after: NetworkPlan, pinned: set[str]) -> dict[str, str]:
    """By name in the later plan, the name that it gets; no two get one."""
    names = list(dict.fromkeys(_names(after)))
    fixed = {name: name for name in names if name in pinned}
    free = [name for name in names if name not in pinned]
    old = [name for name in dict.fromkeys(_names(before)) if name not in pinned]
    found = fixed | _best(free, old, _shared(before, after))
    # A name that nothing is known of keeps its word, or takes one that another one gave up.
    left = dict.fromkeys(name for name in (*free, *old) if name not in found.values())
    unknown = [name for name in free if name not in found]
    for name in sorted(unknown, key=lambda name: name not in left):
        found[name] = name if name in left else next(iter(left))
        del left[found[name]]
    return found


def _best(free: list[str], old: list[str], shared: Counter[tuple[str, str]]) -> dict[str, str]:
    """Pairs of names in the later and the earlier plan with the most readers under both."""
    if not free or not old:
        return {}
    # Both are slow to import, and only this needs them.
    import numpy as np
    from scipy.optimize import linear_sum_assignment

    # Of two that share as many readers, a name that stays as it is comes first.
    size = len(free) * len(old) + 1
    weights = np.array([[shared[new, was] * size + (new == was) for was in old] for new in free])
    rows, columns = linear_sum_assignment(weights, maximize=True)
    pairs = ((free[row], old[column]) for row, column in zip(rows, columns, strict=True))
    return {new: was for new, was in pairs if shared[new, was]}


def _shared(before: NetworkPlan, after: NetworkPlan) -> Counter[tuple[str, str]]:
    """How many readers bear a name in the later plan and one in the earlier, and keep their default.

    A reader whose default changes has its sign written anew in any case.
    """
    found: Counter[tuple[str, str]] = Counter()
    for key, planned in after.readers.items():
        was = before.readers.get(key)
        if was and was.name and planned.name and was.default == planned.default:
            found[planned.name, was.name] += 1
    return found


def _names(plan: NetworkPlan) -> list[str]:
    return [planned.name for planned in plan.readers.values() if planned.name is not None]


def _waybills(plan: NetworkPlan) -> dict[tuple[str, str], tuple[str, ...]]:
    """By the ends of a trip, what to take; of several with the same ends the first."""
    found: dict[tuple[str, str], tuple[str, ...]] = {}
    for trip in plan.trips:
        if trip.length is not None:
            found.setdefault((trip.start, trip.end), trip.waybills)
    return found
