"""The ways through junctions, as the map draws them inside their rings."""

from __future__ import annotations

from typing import NamedTuple

from app.network.items import Item, Kind
from app.network.picture import Joint, Picture
from model.network.network import JunctionSpec, ReaderSpec, end_of
from model.network.result import NetworkPlan


class Through(NamedTuple):
    """A way through a junction."""

    enter: Joint
    leave: Joint
    kind: str
    """As in the symbol: ``default``, ``other``, ``idle``, ``unknown``."""


def passages(picture: Picture, plan: NetworkPlan | None) -> dict[Item, list[Through]]:
    """The ways through each junction; those to which no link leads are left out."""
    return {
        item: _through(picture, plan, item, junction)
        for at, junction in enumerate(picture.network.junctions)
        if (item := Item(Kind.JUNCTION, at)) in picture.spots
    }


def _through(picture: Picture, plan: NetworkPlan | None, item: Item, junction: JunctionSpec) -> list[Through]:
    found = []
    for reader in junction.readers:
        into = picture.link_into(end_of(junction.name, reader.start))
        for way in reader.ways:
            out = picture.link_out_of(end_of(junction.name, way))
            if into is not None and out is not None:
                kind = kind_of(junction, reader, way, plan)
                found.append(Through(picture.joint_in(item, into), picture.joint_out(item, out), kind))
    return found


def kind_of(junction: JunctionSpec, reader: ReaderSpec, way: str, plan: NetworkPlan | None) -> str:
    """What a way is to its reader, by the plan where there is one."""
    if not reader.chooses:
        return "default"
    planned = plan.readers.get(end_of(junction.name, reader.start)) if plan else None
    default = planned.default if planned else reader.default
    if default is None:
        return "unknown"
    if way == default:
        return "default"
    return "idle" if planned is not None and planned.name is None else "other"
