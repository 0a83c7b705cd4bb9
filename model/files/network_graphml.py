"""A network as GraphML, for programs that draw and reckon with graphs."""

from __future__ import annotations

import io
import re
from typing import Any, Final

import msgspec
import networkx as nx

from model.network.network import JunctionSpec, Network, Spot, end_of, junction_and_arm
from model.network.result import NetworkPlan

_NOT_IN_XML: Final = re.compile("[^\t\n -\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""XML 1.0, clause 2.2: Char; a carriage return would be read back as a line feed."""


def graphml_bytes(network: Network, plan: NetworkPlan | None = None) -> bytes:
    """The bytes of a GraphML file: see ``graph_of``."""
    stream = io.BytesIO()
    nx.write_graphml_xml(graph_of(network, plan), stream)
    return stream.getvalue()


def graph_of(network: Network, plan: NetworkPlan | None = None) -> nx.MultiDiGraph[str]:
    """A node for each station and junction, and an edge for each link, under its place in the network.

    A node is called by its name, a junction that shares a station's name ``Mill/2``. With a plan, junctions
    tell the default and the waybill of each reader, and links the carts a week. What a link names and is not
    there is a node of the kind ``missing``.
    """
    graph: nx.MultiDiGraph[str] = nx.MultiDiGraph(title=_text(network.title))
    stations: dict[str, str] = {}
    junctions: dict[str, str] = {}
    for station in network.stations:
        node = _add(graph, station.name, "station", station.at)
        stations.setdefault(station.name, node)
    for junction in network.junctions:
        node = _add(graph, junction.name, "junction", junction.at, **_of_junction(junction, plan))
        junctions.setdefault(junction.name, node)
    carts = _carts(network, plan)
    for place, link in enumerate(network.links):
        start, end = (_node(graph, each, stations, junctions) for each in (link.start, link.end))
        loads = {} if plan is None else {"carts_per_week": carts[place]}
        words = {"from": _text(link.start), "to": _text(link.end)}
        graph.add_edge(start, end, key=place, length=link.length, **words, **loads)
    return graph


def _add(graph: nx.MultiDiGraph[str], name: str, kind: str, at: Spot | None = None, **more: str) -> str:
    """A node of its own; gives what it is called."""
    node, number = _text(name), 1
    while node in graph:
        number += 1
        node = f"{_text(name)}/{number}"
    spot = {} if at is None else {"x": float(at[0]), "y": float(at[1])}
    graph.add_node(node, kind=kind, name=_text(name), **spot, **more)
    return node


def _of_junction(junction: JunctionSpec, plan: NetworkPlan | None) -> dict[str, str]:
    """Its plan and what becomes of carts that enter it, as JSON."""
    readers = [
        {"from": reader.start, "ways": reader.ways, **_planned(end_of(junction.name, reader.start), plan)}
        for reader in junction.readers
    ]
    told = {"readers": _text(msgspec.json.encode(readers).decode())}
    return told if junction.plan is None else {**told, "plan": _text(junction.plan)}


def _planned(reader: str, plan: NetworkPlan | None) -> dict[str, Any]:
    planned = None if plan is None else plan.readers.get(reader)
    return {} if planned is None else {"default": planned.default, "name": planned.name}


def _node(graph: nx.MultiDiGraph[str], end: str, stations: dict[str, str], junctions: dict[str, str]) -> str:
    place = junction_and_arm(end)
    named, name = (stations, end) if place is None else (junctions, place[0])
    if name not in named:
        named[name] = _add(graph, name, "missing")
    return named[name]


def _carts(network: Network, plan: NetworkPlan | None) -> list[float]:
    """By link, the carts a week that the plan sends over it."""
    carts = [0.0] * len(network.links)
    for trip, planned in zip(network.trips, () if plan is None else plan.trips, strict=False):
        for link in planned.links:
            carts[link] += trip.per_week
    return carts


def _text(text: str) -> str:
    return _NOT_IN_XML.sub("\N{REPLACEMENT CHARACTER}", text)
