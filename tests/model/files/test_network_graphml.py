"""GraphML that is written is read back unchanged.

Outside check: networkx's own reader of GraphML.
"""

from __future__ import annotations

import io
import json
from pathlib import Path
from typing import Any

import networkx as nx
import pytest
from hypothesis import given, settings
from networkx.utils import nodes_equal

from model.files.network_file import read_network
from model.files.network_graphml import graph_of, graphml_bytes
from model.network.network import Network
from tests.model.network.notation import Notation
from tests.model.network.strategies import NETWORKS

BRINEPAN = Path(__file__).parents[3] / "resources" / "examples" / "brinepan.network.json"


def _read(data: bytes, **options: Any) -> nx.MultiDiGraph:
    return nx.read_graphml(io.BytesIO(data), edge_key_type=int, **options)


def _same(one: nx.MultiDiGraph, other: nx.MultiDiGraph) -> bool:
    # In networkx below 3.6 edges_equal takes an edge and the one back for the same.
    edges = ({edge[:3]: edge[3] for edge in graph.edges(keys=True, data=True)} for graph in (one, other))
    return (
        one.graph.get("title") == other.graph.get("title")
        and nodes_equal(one.nodes(data=True), other.nodes(data=True))
        and next(edges) == next(edges)
    )


def test_the_example_is_read_back_unchanged() -> None:
    network = read_network(BRINEPAN)
    back = _read(graphml_bytes(network), force_multigraph=True)
    assert _same(back, graph_of(network))
    assert back.number_of_nodes() == 14
    assert back.number_of_edges() == 28
    assert back.nodes["Tithe Barn"] == {"kind": "station", "name": "Tithe Barn", "x": 800.0, "y": 160.0}
    assert back.nodes["Fen Ring"]["plan"] == "fen-ring.plan.json"
    assert back.edges["Quay", "Quay Gate", 0] == {"length": 64, "from": "Quay", "to": "Quay Gate/Town"}


def test_read_plainly_it_has_the_same_nodes_and_links() -> None:
    network = read_network(BRINEPAN)
    back = _read(graphml_bytes(network))
    assert set(back) == {*(each.name for each in (*network.stations, *network.junctions))}
    assert nx.dijkstra_path_length(back, "Quay", "Quay Gate", "length") == 64
    assert back.number_of_edges() == len(network.links)


def test_with_a_plan_it_tells_readers_and_carts() -> None:
    said = Notation("""
        stations Quay, Fen, Mill
        Mill: East → West* or South takes Salt; North → West
        Quay → Mill/East 5
        Mill/West → Fen
        Mill/South → Mill
        trip Quay → Mill 30
        trip Quay → Fen 12
        """)
    back = _read(graphml_bytes(said.network, said.plan), force_multigraph=True)
    assert _same(back, graph_of(said.network, said.plan))
    assert json.loads(back.nodes["Mill/2"]["readers"]) == [
        {"from": "East", "ways": ["West", "South"], "default": "West", "name": "Salt"},
        {"from": "North", "ways": ["West"]},
    ]
    carts = {(start, end): data["carts_per_week"] for start, end, data in back.edges(data=True)}
    assert carts == {("Quay", "Mill/2"): 42, ("Mill/2", "Fen"): 12, ("Mill/2", "Mill"): 30}


def test_what_is_not_there_is_a_node_of_its_own_kind() -> None:
    graph = graph_of(Notation("stations Quay\nQuay → Mill/East\nQuay → Fen").network)
    assert {node: data["kind"] for node, data in graph.nodes(data=True)} == {
        "Quay": "station",
        "Mill": "missing",
        "Fen": "missing",
    }


@pytest.mark.parametrize("text", ["\x00", "\uffff", "a\rb", "\x1b[31m"])
def test_what_xml_cannot_hold_gives_way_to_a_mark(text: str) -> None:
    back = _read(graphml_bytes(Network(title=text)))
    assert "\N{REPLACEMENT CHARACTER}" in back.graph["title"]


@settings(max_examples=60, deadline=None)
@given(NETWORKS)
def test_any_network_is_read_back_unchanged(network: Network) -> None:
    assert _same(_read(graphml_bytes(network), force_multigraph=True), graph_of(network))
